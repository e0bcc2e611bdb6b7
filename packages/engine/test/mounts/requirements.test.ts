import { describe, expect, it } from "vitest";
import { makeCorner } from "../../src/cycle/corner.ts";
import { add, distance, scale, unit, vec } from "../../src/geometry/vec3.ts";
import { trialOf } from "../../src/mounts/candidate.ts";
import { eyeLimit } from "../../src/mounts/eye-limit.ts";
import { findMounts } from "../../src/mounts/find-mounts.ts";
import { upperAt } from "../../src/mounts/grid.ts";
import { frameTubes, loadPathOf } from "../../src/mounts/load-path.ts";
import { mountLoadOf } from "../../src/mounts/mount-load.ts";
import { COMMON_WRENCH, type MountRequest, REQUIREMENTS, type RequirementCode } from "../../src/mounts/request.ts";
import { tryUpper } from "../../src/mounts/trial.ts";
import { judgePlainly } from "./plain-judge.ts";
import { exampleCar, INCH, ownShock, smallRequest } from "./request-for.ts";

const ROUNDING = 1e-7;
const DEGREE = Math.PI / 180;

/** Requests in which bolts, tabs, squareness and wrench rule places out. */
function strictRequest(name: string, bolts: NonNullable<MountRequest["bolts"]>) {
  const { corner, request } = smallRequest(name, 1.25 * INCH);
  const shock = { ...request.shocks[0]!, eyeWidth: 1.5 * INCH, eyeDiameter: 1.75 * INCH, tabGap: 2 * INCH };
  const wrench = { ...COMMON_WRENCH, length: 7 * INCH, radius: 1.5 * INCH, at: "ride" as const };
  const requirements = { ...request.requirements, offSquareAtBump: 22 * DEGREE, wrench };
  return { corner, request: { ...request, shocks: [shock], bolts, requirements } };
}

const CASES = [
  ["saltbush", {}],
  ["saltbush", { upper: unit(vec(1, 0.12, 0.05)), lower: unit(vec(0.95, -0.1, 0.05)) }],
  ["greasewood", { upper: unit(vec(1, -0.1, 0.05)) }],
  ["catclaw", { lower: unit(vec(0.9, 0.2, -0.1)) }],
] as const;
const NEW: readonly RequirementCode[] = ["eye-misalignment", "off-square", "wrench"];
const ruledOut = new Set<RequirementCode>();

describe.each(CASES)("bolts, tabs, squareness and wrench on %s with bolts %j", (name, bolts) => {
  const { corner, request } = strictRequest(name, bolts);
  const found = findMounts(corner, request);
  const { search } = found;
  const travels = [...search.movement.travels];

  it("agree candidate by candidate with the plain route", () => {
    const fits = new Set(Array.from(found.feasible.upper, (u, i) => `${found.feasible.lower[i]} ${u}`));
    const looked = new Map<string, number>();
    let fitting = 0;
    search.lower.forEach((lower, j) => {
      const trial = trialOf(search, request.shocks[0]!, lower);
      for (let i = 0; i < search.upper.x.length; i += 1) {
        const killer = tryUpper(trial, search.upper.x[i]!, search.upper.y[i]!, search.upper.z[i]!);
        expect(killer < 0).toBe(fits.has(`${j} ${i}`));
        const code = killer < 0 ? "fits" : REQUIREMENTS[killer]!;
        if (killer < 0) fitting += 1;
        const before = looked.get(code) ?? 0;
        looked.set(code, before + 1);
        // Every one that fits or that a new requirement rules out, up to a number; some of the rest.
        const isNew = killer < 0 || NEW.includes(REQUIREMENTS[killer]!);
        if (before >= (isNew ? 120 : 8)) continue;
        const upper = upperAt(search.upper, i);
        const plain = judgePlainly(corner, request, request.shocks[0]!, upper, lower, travels);
        const bend = trial.shock.longest - request.reserve.droop - trial.most;
        const dips = trial.obstacles.map(
          ({ id, radius, wanted }, n) => (plain.gaps.get(id) ?? 0) - (trial.needs[n]! - trial.radius - radius - wanted),
        );
        if (killer < 0) expect(Math.min(plain.margin, ...dips)).toBeGreaterThan(-ROUNDING);
        else if (isNew) {
          expect(plain.margin).toBeLessThan(ROUNDING);
          ruledOut.add(REQUIREMENTS[killer]!);
        } else expect(Math.min(plain.margin, ...dips)).toBeLessThan(Math.max(bend, 0) + ROUNDING);
      }
    });
    expect(fitting).toBe(found.feasible.count);
  });

  it("leave a slack within which they hold", () => {
    let seed = 5;
    const random = (): number => {
      seed = (seed * 48271) % 2147483647;
      return seed / 2147483647;
    };
    const some = () => unit(vec(random() - 0.5, random() - 0.5, random() - 0.5));
    for (const best of found.best)
      for (let n = 0; n < 15; n += 1) {
        const lower = { ...best.lower, point: add(best.lower.point, scale(some(), best.slack)) };
        const upper = add(best.upper, scale(some(), best.slack));
        const { margin, gaps } = judgePlainly(corner, request, best.shock, upper, lower, travels);
        expect(Math.min(margin, ...gaps.values())).toBeGreaterThan(-ROUNDING);
      }
  });
});

it("each of them has ruled something out above", () => {
  expect([...ruledOut].sort()).toEqual([...NEW].sort());
});

describe("an eye between its tabs", () => {
  const shock = { name: "", shortest: 0.4, longest: 0.6, bodyDiameter: 0.05, springDiameter: 0 };

  it("tilts until its rim is as wide as the gap", () => {
    const sizes = { eyeWidth: 0.038, eyeDiameter: 0.045, tabGap: 0.05 };
    const tilt = eyeLimit({ ...shock, ...sizes })!;
    expect(0.038 * Math.cos(tilt) + 0.045 * Math.sin(tilt)).toBeCloseTo(0.05, 12);
    expect(eyeLimit({ ...shock, ...sizes, misalignmentLimit: 0.1 })).toBe(0.1);
    expect(eyeLimit({ ...shock, ...sizes, misalignmentLimit: 1.2 })).toBe(tilt);
  });

  it("is not limited where nothing is said, or where the tabs are never met", () => {
    expect(eyeLimit(shock)).toBeNull();
    expect(eyeLimit({ ...shock, eyeWidth: 0.03, eyeDiameter: 0.04, tabGap: 0.051 })).toBeNull();
    expect(eyeLimit({ ...shock, eyeWidth: 0.03, eyeDiameter: 0.04, tabGap: 0.03 })).toBe(0);
  });
});

describe("what a place costs besides", () => {
  const { corner, request } = smallRequest("saltbush");

  it("has a load at ride height that holds the sprung weight by virtual work", () => {
    const bare = makeCorner({ ...corner.car, shock: { ...corner.car.shock!, longest: 1 } });
    const best = findMounts(bare, request).best[0]!;
    const load = mountLoadOf(bare.car, best)!;
    const { cornerMass, unsprungMass } = bare.car.chassis;
    expect(load.from).toBe("ride-frequency");
    expect(load.atRide * best.motionRatio).toBeCloseTo((cornerMass! - unsprungMass!) * 9.80665, 9);
    // The ride frequency out of the rate that the rise implies.
    const rate = ((load.atBump - load.atRide) / (best.atRide - best.atBump)) * best.motionRatio ** 2;
    expect(Math.sqrt(rate / (cornerMass! - unsprungMass!)) / (2 * Math.PI)).toBeCloseTo(load.frequency!, 9);
  });

  it("takes the car's own springs where the shock is the car's own", () => {
    const best = findMounts(corner, request).best[0]!;
    const load = mountLoadOf(corner.car, best)!;
    expect(load.from).toBe("springs");
    expect(load.atBump).toBeGreaterThan(load.atRide);
    const heavier = mountLoadOf(
      { ...corner.car, shock: { ...corner.car.shock!, springs: { ...corner.car.shock!.springs!, preload: 0.05 } } },
      best,
    )!;
    expect(heavier.atRide).toBeGreaterThan(load.atRide);
  });

  it("has no load where the car gives no weights", () => {
    const { shock: _, chassis, ...rest } = corner.car;
    const { cornerMass: __, ...noScale } = chassis;
    const best = findMounts(corner, request).best[0]!;
    expect(mountLoadOf({ ...rest, chassis: noScale }, best)).toBeNull();
  });

  it("measures the way to the frame's tubes that are named, or that the car marks", () => {
    const named = frameTubes(corner, { upper: request.upper, frame: ["cage upright"] });
    const upright = corner.car.keepOuts.find(({ name }) => name === "cage upright")!;
    if (upright.shape !== "tube") throw new Error("the upright is a tube");
    const out = vec(0.1, 0, 0);
    const middle = scale(add(upright.from, upright.to), 0.5);
    const square = loadPathOf(named, add(middle, out))!;
    expect(square.tube).toBe("cage upright");
    expect(square.length).toBeLessThan(0.1 - upright.diameter / 2 + 1e-12);
    expect(square.length).toBeGreaterThan(0.09 - upright.diameter / 2);
    expect(loadPathOf(named, middle)!.length).toBe(0);
    const along = { kind: "tube", keepOut: "nerf bar", standoff: vec(0, 0, 0.03) } as const;
    expect(frameTubes(corner, { upper: along }).map(({ name }) => name)).toContain("nerf bar");
    expect(loadPathOf([], middle)).toBeNull();
  });

  it("gives tape readings that find the mounts again", () => {
    const { best, search } = findMounts(corner, request);
    for (const { upper, lower, tape, tapeTo } of best) {
      expect(tape.upper).toEqual({ forward: upper.x, out: upper.y, up: upper.z });
      for (const [point, readings] of [
        [upper, tapeTo.upper],
        [lower.point, tapeTo.lower],
      ] as const) {
        expect(readings.length).toBe(3);
        for (const { pivot, distance: reads } of readings) {
          const at = search.corner.pivots.find(({ id }) => id === pivot)!;
          expect(distance(point, at.point)).toBe(reads);
        }
      }
    }
  });
});

describe("common practice, no source", () => {
  it("the first trial place: fully compressed and square to the arm at full bump, is among those that fit", () => {
    const { corner, request } = smallRequest("saltbush");
    const asked = { ...request, requirements: { ...request.requirements, offSquareAtBump: 10 * DEGREE } };
    const { best } = findMounts(corner, asked);
    expect(best.length).toBeGreaterThan(0);
    for (const each of best) {
      expect(each.offSquare).toBeLessThanOrEqual(10 * DEGREE);
      // Square to the arm, the ratio at bump is the most that this mount can have: the wheel moves, the shock follows.
      expect(each.progression).toBeGreaterThan(-request.requirements.mayFall);
    }
  });

  it("a 14 in shock that uses a little over 12 in of its stroke is well placed, maxed out at neither end", () => {
    const { strokeUsed } = smallRequest("saltbush").request.requirements;
    const used = 12.25 / 14;
    expect(used).toBeGreaterThan(strokeUsed.least);
    expect(used).toBeLessThan(strokeUsed.most);
    // What is left of it is more than the reserves at both ends.
    const { reserve } = smallRequest("saltbush").request;
    expect(14 * INCH * (1 - used)).toBeGreaterThan(reserve.droop + reserve.bump);
  });

  it("the demo car's own shock off its mounts finds its own place again", () => {
    const car = exampleCar("saltbush");
    const { corner, request } = smallRequest("saltbush", INCH / 2);
    const { best } = findMounts(corner, { ...request, shocks: [ownShock(car)], shortList: 20, spread: INCH });
    const own = car.shock!;
    const nearest = Math.min(
      ...best.map(({ upper, lower }) => distance(upper, own.upper.point) + distance(lower.point, own.lower.point)),
    );
    expect(nearest).toBeLessThan(8 * INCH);
  });
});
