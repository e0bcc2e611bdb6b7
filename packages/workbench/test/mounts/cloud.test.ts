import { defaultRequest, findMounts, ownShock, regionOf } from "@armwright/engine";
import { expect, test } from "vitest";
import { cloudsOf, thinned } from "../../src/mounts/cloud.ts";
import { dotsOf, inView } from "../../src/mounts/dots.ts";
import { exampleCar, INCH } from "./car.ts";

const { car, corner } = exampleCar("saltbush");
const own = ownShock(car);
if (!own) throw new Error("the demo has a shock");
const { search, feasible } = findMounts(corner, { ...defaultRequest(corner, [own], INCH), shortList: 0 });
const clouds = cloudsOf(regionOf(search, feasible), search.lower);

test("every place that fits is in the cloud of either mount, on the body that carries it", () => {
  expect(clouds.upper.points).toHaveLength(new Set(feasible.upper).size);
  expect(clouds.lower.points).toHaveLength(new Set(feasible.lower).size);
  expect(new Set(clouds.lower.on)).toEqual(new Set(["lower-arm"]));
  expect(Math.max(...clouds.upper.shares)).toBe(1);
  expect(Math.min(...clouds.upper.shares)).toBeGreaterThan(0);
});

test("a thinned cloud has one place a cube, and none that was not there", () => {
  const { points, shares } = thinned(clouds.upper, 3 * INCH);
  expect(points.length).toBeLessThan(clouds.upper.points.length / 2);
  expect(points.every((point) => clouds.upper.points.includes(point))).toBe(true);
  expect(Math.max(...shares)).toBe(1);
});

test("in a view each place is one dot, the fullest among the largest", () => {
  const place = (point: { x: number; y: number; z: number }) => {
    const { across, up } = inView("rear", point);
    return { x: across * 1000, y: up * 1000 };
  };
  const { paths } = dotsOf(clouds.upper.points, clouds.upper.shares, place);
  const dots = paths.map((path) => path.split("M").length - 1);
  const spots = new Set(clouds.upper.points.map((p) => `${(p.y * 1000).toFixed(1)} ${(p.z * 1000).toFixed(1)}`));
  expect(dots.reduce((sum, each) => sum + each, 0)).toBe(spots.size);
  expect(dots.at(-1)).toBeGreaterThan(0);
});
