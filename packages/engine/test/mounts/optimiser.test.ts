import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { makeCorner } from "../../src/cycle/corner.ts";
import { addScaled, subtract, vec } from "../../src/geometry/vec3.ts";
import { type Judged, judgeMounts } from "../../src/mounts/candidate.ts";
import { findMounts } from "../../src/mounts/find-mounts.ts";
import { tubeLine } from "../../src/mounts/grid.ts";
import { demerit } from "../../src/mounts/rank.ts";
import type { MountRequest } from "../../src/mounts/request.ts";
import { makeSearch } from "../../src/mounts/search.ts";
import { exampleCar } from "./request-for.ts";

interface Optimum {
  readonly name: string;
  readonly demerit: number;
  /** Which of the request's lower zones, and in it: upper mount, m, and share of the lower zone's line. */
  readonly zone: number;
  readonly at: readonly [x: number, y: number, z: number, share: number];
}

const here = new URL("../../../../reference/mounts/", import.meta.url);
const optima: readonly Optimum[] = JSON.parse(readFileSync(new URL("optima.json", here), "utf8"));

/** Both judges reckon the same number at the same place to this. */
const SAME_NUMBER = 1e-9;
/** The finder refines to a millimetre, which at the bottom of the valley is worth less than this. */
const BOUNDS = 0.001;

const demeritOf = ({ requirements }: MountRequest, judged: Judged): number =>
  demerit(requirements, { ...judged, ratioRise: judged.motionRatioAtBump - judged.motionRatio, loadPath: 0 });

describe.each(optima)("a general optimiser on $name", ({ name, demerit: theirs, zone, at: [x, y, z, share] }) => {
  const car = exampleCar(name);
  const corner = makeCorner(car);
  const requested = async (): Promise<MountRequest> =>
    (await import(new URL("request.mjs", here).href)).requestOf(car, corner);

  it("judges its own best place as the finder does", async () => {
    const request = await requested();
    const tube = request.lower[zone]!;
    if (tube.kind !== "tube") throw new Error("the small problems have tubes");
    const { from, to, on } = tubeLine(corner, tube);
    const lower = { point: addScaled(from, subtract(to, from), share), on, zone };
    const judged = judgeMounts(makeSearch(corner, request), request.shocks[0]!, vec(x, y, z), lower);
    expect(judged.fails).toBeNull();
    expect(Math.abs(demeritOf(request, judged) - theirs)).toBeLessThan(SAME_NUMBER);
  });

  it("finds nothing better, and the finder nothing that it would not find", async () => {
    const request = await requested();
    const ours = Math.min(...findMounts(corner, request).best.map((place) => demeritOf(request, place)));
    expect(Math.abs(ours - theirs)).toBeLessThan(BOUNDS);
  });
});
