import type { Car, Linkage, Mount } from "../../src/car/car.ts";
import { wheelCentreOf } from "../../src/car/wheel-centre.ts";
import { distance, type Vec3 } from "../../src/geometry/vec3.ts";
import { kindOf } from "../../src/linkage/kinds.ts";

/**
 * Every distance that one adjuster must leave alone, m: within the spindle; within each arm but to the screwed end; and of
 * every link but the screwed one. Written apart from the engine's own residual, from what is welded to what.
 */
export function keptDistances(car: Car, touched: string): readonly number[] {
  const kind = kindOf<Linkage>(car.linkage);
  const pivots = kind.pivots(car.linkage);
  const mounts: readonly Mount[] = [car.shock, car.strap, car.bumpStop].flatMap((part) =>
    part === undefined ? [] : "upper" in part ? [part.upper, part.lower] : [part.base, part.strikes],
  );
  const on = (body: string): Vec3[] => mounts.filter((mount) => mount.on === body).map(({ point }) => point);
  const spindle = [
    car.wheel.hubFace,
    wheelCentreOf(car.wheel),
    ...(car.driveshaft ? [car.driveshaft.outer.centre] : []),
    ...on("spindle"),
    // An A-arm's ball is the arm's and the spindle's; screwing it moves it in the arm, not in the spindle.
    ...pivots.filter(({ boltSide }) => boltSide === "spindle").map(({ point }) => point),
  ];
  const arms = kind
    .arms(car.linkage)
    .map(({ body }) => [
      ...on(body),
      ...pivots.filter(({ id, shank }) => shank.body === body && id !== touched).map(({ point }) => point),
      ...(car.linkage.kind === "trailing-arm" ? [car.linkage.trailingArm.hub, car.wheel.hubFace] : []),
    ]);
  const links = kind
    .members(car.linkage)
    .filter(({ id, body }) => body === "link" && id !== touched)
    .map(({ from, to }) => distance(from.point, to.point));
  return [...[spindle, ...arms].flatMap(pairwise), ...links];
}

const pairwise = (points: readonly Vec3[]): number[] =>
  points.flatMap((a, i) => points.slice(0, i).map((b) => distance(a, b)));
