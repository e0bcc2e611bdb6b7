import { describe, expect, it } from "vitest";
import { findMounts, mergeParts } from "../../src/mounts/find-mounts.ts";
import { upperAt } from "../../src/mounts/grid.ts";
import { demerit, meritsAt } from "../../src/mounts/rank.ts";
import { regionMap, regionOf } from "../../src/mounts/region.ts";
import { countCandidates, quickRequest, startSearch } from "../../src/mounts/run-search.ts";
import { smallRequest } from "./request-for.ts";

const { corner, request } = smallRequest("saltbush");
const found = findMounts(corner, request);

describe("a search in slices", () => {
  it("finds the same however it is cut, and tells how far it is", () => {
    const { search: _, ...whole } = found;
    for (const parts of [1, 2, 5]) {
      const runs = Array.from({ length: parts }, (__, part) => startSearch(corner, request, part, parts));
      // One slice of each in turn, as workers would.
      let more = true;
      while (more) more = runs.map((run) => run.next()).includes(true);
      for (const run of runs) {
        expect(run.done()).toBe(run.slices);
        expect(run.next()).toBe(false);
      }
      const { search: __, ...merged } = mergeParts(
        corner,
        request,
        runs.map((run) => run.part()),
      );
      expect(merged).toEqual(whole);
    }
  });

  it("shows on the way what the whole begins with", () => {
    const run = startSearch(corner, request);
    let before = 0;
    while (run.next()) {
      const { feasible, tested } = run.part();
      expect(feasible.count).toBeGreaterThanOrEqual(before);
      expect([...feasible.upper]).toEqual([...found.feasible.upper.subarray(0, feasible.count)]);
      expect(tested).toBe((found.tested * run.done()) / run.slices);
      before = feasible.count;
    }
    expect(before).toBe(found.feasible.count);
  });

  it("counts candidates before they are made", () => {
    for (const name of ["saltbush", "greasewood", "rabbitbrush", "catclaw"]) {
      const asked = smallRequest(name);
      expect(countCandidates(asked.corner, asked.request)).toBe(findMounts(asked.corner, asked.request).tested);
    }
    const tube = {
      ...request,
      upper: { kind: "tube", keepOut: "cage upright", standoff: { x: 0, y: 0.03, z: 0 } } as const,
    };
    expect(countCandidates(corner, tube)).toBe(findMounts(corner, tube).tested);
  });

  it("has a quick form on a grid no finer than asked, without a short list", () => {
    const fine = { ...request, step: request.step / 8 };
    const quick = quickRequest(corner, fine, 200_000);
    expect(countCandidates(corner, quick)).toBeLessThanOrEqual(200_000);
    expect(countCandidates(corner, { ...quick, step: quick.step / 1.5 })).toBeGreaterThan(200_000);
    const region = findMounts(corner, quick);
    expect(region.best).toEqual([]);
    expect(region.feasible.count).toBeGreaterThan(0);
    expect(quickRequest(corner, request).step).toBe(request.step);
  });
});

describe("the feasible region", () => {
  const { search, feasible } = found;
  const region = regionOf(search, feasible, true);

  it("holds each candidate once on either side, with the best behind each place", () => {
    for (const key of ["upper", "lower"] as const) {
      const side = region[key];
      expect(side.counts.reduce((a, b) => a + b, 0)).toBe(feasible.count);
      side.places.forEach((place, n) => {
        const behind = [...feasible[key].keys()].filter((i) => feasible[key][i] === place);
        const costs = behind.map((i) => demerit(request.requirements, meritsAt(feasible, i)));
        expect(side.counts[n]).toBe(behind.length);
        expect(side.demerits[n]).toBe(Math.min(...costs));
        expect(behind).toContain(side.entries[n]);
        const point = key === "upper" ? upperAt(search.upper, place) : search.lower[place]!.point;
        expect(side.points[n]).toEqual(point);
        expect(side.slacks[n]).toBeGreaterThanOrEqual(0);
      });
    }
  });

  it("maps it from the side and from the rear, no candidate lost", () => {
    for (const view of ["side", "rear", "top"] as const)
      for (const cell of [request.step, 2.7 * request.step]) {
        const map = regionMap(region.upper, view, cell);
        expect(map.counts.length).toBe(map.columns * map.rows);
        expect(map.counts.reduce((a, b) => a + b, 0)).toBe(feasible.count);
        expect(Math.min(...map.demerits)).toBe(Math.min(...region.upper.demerits));
        expect(Math.max(...map.slacks)).toBe(Math.max(...region.upper.slacks));
        region.upper.points.forEach(({ x, y, z }) => {
          const [a, b] = view === "side" ? [x, z] : view === "rear" ? [y, z] : [x, y];
          const column = Math.floor((a - map.across) / cell + 1e-9);
          const row = Math.floor((b - map.up) / cell + 1e-9);
          expect(map.counts[row * map.columns + column]).toBeGreaterThan(0);
        });
      }
  });

  it("is empty where nothing fits", () => {
    const none = { ...request, requirements: { ...request.requirements, motionRatio: { least: 2, most: 3 } } };
    const empty = findMounts(corner, none);
    const { upper } = regionOf(empty.search, empty.feasible);
    expect(upper.points).toEqual([]);
    expect(regionMap(upper, "side", 0.01)).toMatchObject({ columns: 0, rows: 0 });
  });
});
