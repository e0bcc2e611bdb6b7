import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import type { Spring, SpringSet } from "../../src/car/car.ts";
import {
  crossoverFromGap,
  gapFromCrossover,
  makeSpringStack,
  type SpringStack,
  seriesRate,
  springStackAt,
} from "../../src/springs/spring-stack.ts";
import { INCH, POUND_FORCE, POUND_FORCE_INCH, POUND_FORCE_PER_INCH } from "../../src/units/convert.ts";

const LONGEST = 30 * INCH;
const RATE = POUND_FORCE_PER_INCH;

const spring = (rate: number, freeLength: number, solidLength: number): Spring => ({
  rate: rate * RATE,
  freeLength: freeLength * INCH,
  solidLength: solidLength * INCH,
});
const set = (main: Spring, tender?: Spring, more: Partial<SpringSet> = {}): SpringSet => ({
  main,
  ...(tender && { tender }),
  preload: 0,
  collarPitch: INCH / 12,
  ...more,
});
/** Force in lb, rate in lb/in, energy in lb·in at so many inches of compression. */
const at = (stack: SpringStack, inches: number) => {
  const { force, rate, energy } = springStackAt(stack, LONGEST - inches * INCH);
  return { force: force / POUND_FORCE, rate: rate / RATE, energy: energy / POUND_FORCE_INCH };
};

describe("against closed forms", () => {
  test("S10 two in series, 250 and 400 lb/in: 153.8462 lb/in (k1·k2/(k1 + k2))", () => {
    expect(Math.abs(seriesRate(250, 400) / 153.8462 - 1)).toBeLessThan(1e-6);
  });

  test("by arithmetic: 200 and 300 lb/in give 120", () => {
    expect(seriesRate(200, 300)).toBeCloseTo(120, 12);
  });

  test("common practice, no source: a 250 over a 300 lb/in spring, each 14 in long, is 136 lb/in", () => {
    const stack = makeSpringStack(set(spring(300, 14, 5.5), spring(250, 14, 5.5)), LONGEST);
    expect(at(stack, 3).rate).toBeCloseTo(136.36, 2);
  });

  // S11: independent model, energy by integration there.
  describe("S11 the softer one, 250 lb/in, locks at 3 in; the other is 400; no preload", () => {
    const main = spring(400, 14, 4);
    const tender = spring(250, 12, 4);
    const crossing = LONGEST - 4.875 * INCH;
    const stack = makeSpringStack(set(main, tender, { crossoverAt: crossing }), LONGEST);

    it("crosses over at 4.875 in and 750 lb", () => {
      expect(stack.crossover?.by).toBe("stop");
      expect((LONGEST - stack.crossover!.shockLength) / INCH).toBeCloseTo(4.875, 9);
      expect(stack.crossover!.force / POUND_FORCE).toBeCloseTo(750, 6);
    });

    it("is 400 lb/in after; at 7 in 1600 lb and 4325 lb·in", () => {
      expect(at(stack, 5).rate).toBeCloseTo(400, 9);
      expect(Math.abs(at(stack, 7).force / 1600 - 1)).toBeLessThan(1e-6);
      expect(Math.abs(at(stack, 7).energy / 4325 - 1)).toBeLessThan(1e-6);
    });

    it("comes to the same by a tender that is solid after 3 in", () => {
      const solid = makeSpringStack(set(main, spring(250, 12, 9)), LONGEST);
      expect(solid.crossover?.by).toBe("tender-solid");
      expect(at(solid, 7).energy).toBeCloseTo(at(stack, 7).energy, 6);
    });

    it("has its stop 3 in from the slider with the shock open", () => {
      expect(gapFromCrossover(LONGEST, crossing, 400, 250) / INCH).toBeCloseTo(3, 12);
      expect(crossoverFromGap(LONGEST, 3 * INCH, 400, 250)).toBeCloseTo(crossing, 12);
    });
  });

  test("by arithmetic: a 200 over a 300 lb/in spring, slider moves 0.6 in for each inch of shock", () => {
    expect(gapFromCrossover(10, 9, 300, 200)).toBeCloseTo(0.6, 12);
  });

  test("by arithmetic: free length less ride length times rate, (14 − 9.75)·150 = 637 lb", () => {
    expect(at(makeSpringStack(set(spring(150, 14, 5)), LONGEST), 14 - 9.75).force).toBeCloseTo(637.5, 9);
  });

  test("by arithmetic: 8 in at 250 lb/in is 2000 lb, at 200 1600", () => {
    expect(at(makeSpringStack(set(spring(250, 14, 5)), LONGEST), 8).force).toBeCloseTo(2000, 9);
    expect(at(makeSpringStack(set(spring(200, 14, 5)), LONGEST), 8).force).toBeCloseTo(1600, 9);
  });
});

it("tells loose springs, and gives them no force", () => {
  const stack = makeSpringStack(set(spring(250, 12, 5), undefined, { preload: -0.75 * INCH }), LONGEST);
  const open = springStackAt(stack, LONGEST);
  expect([open.force, open.rate, open.energy]).toEqual([0, 0, 0]);
  expect(open.loose / INCH).toBeCloseTo(0.75, 12);
  expect(springStackAt(stack, LONGEST - INCH).force / POUND_FORCE).toBeCloseTo(62.5, 9);
});

it("goes on with the tender where the main spring is solid first", () => {
  const stack = makeSpringStack(set(spring(400, 8, 7), spring(250, 14, 4)), LONGEST);
  // The main one is solid at 400 lb, when the tender has taken 1.6 in.
  expect(at(stack, 2.6).force).toBeCloseTo(400, 9);
  expect(at(stack, 3.6).force).toBeCloseTo(650, 9);
  expect(stack.crossover).toBeNull();
});

// Random stacks, lengths in m, rates in N/m.
const length = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anySpring: fc.Arbitrary<Spring> = fc
  .record({ rate: length(10_000, 100_000), freeLength: length(0.15, 0.45), share: length(0.25, 0.6) })
  .map(({ rate, freeLength, share }) => ({ rate, freeLength, solidLength: share * freeLength }));
const anyStack: fc.Arbitrary<SpringStack> = fc
  .record({
    main: anySpring,
    tender: fc.option(anySpring, { nil: undefined }),
    crossover: fc.option(length(0.05, 0.2), { nil: undefined }),
    preload: length(-0.03, 0.08),
  })
  .map(({ main, tender, crossover, preload }) =>
    makeSpringStack(
      {
        main,
        ...(tender && { tender }),
        ...(tender && crossover !== undefined && { crossoverAt: LONGEST - crossover }),
        preload,
        collarPitch: 0.002,
      },
      LONGEST,
    ),
  );

/** The shock lengths at which rate jumps, m. */
const kinksOf = ({ stretches, longest, preload }: SpringStack) => stretches.map(({ from }) => longest + preload - from);

describe("any stack", () => {
  it("stores the integral of its force", () => {
    fc.assert(
      fc.property(anyStack, length(0.01, 0.3), (stack, way) => {
        // The trapezium is exact where force is linear: cut at the kinks.
        const end = LONGEST - way;
        const cuts = [LONGEST, ...kinksOf(stack).filter((l) => l > end && l < LONGEST), end].sort((a, b) => b - a);
        let sum = springStackAt(stack, LONGEST).energy;
        for (let i = 1; i < cuts.length; i += 1) {
          const mean = (springStackAt(stack, cuts[i - 1]!).force + springStackAt(stack, cuts[i]!).force) / 2;
          sum += mean * (cuts[i - 1]! - cuts[i]!);
        }
        const { energy } = springStackAt(stack, end);
        expect(Math.abs(energy - sum)).toBeLessThanOrEqual(1e-9 * Math.max(1, energy));
      }),
    );
  });

  it("has the derivative of its force as rate, away from its kinks", () => {
    const STEP = 1e-6;
    fc.assert(
      fc.property(anyStack, length(0, 0.3), (stack, way) => {
        const l = LONGEST - way;
        fc.pre(kinksOf(stack).every((kink) => Math.abs(kink - l) > 2 * STEP));
        const slope = (springStackAt(stack, l - STEP).force - springStackAt(stack, l + STEP).force) / (2 * STEP);
        const { rate } = springStackAt(stack, l);
        // Rounding of the difference: 1e-16 of some 1e4 N over 1e-6 m.
        expect(Math.abs(slope - rate)).toBeLessThan(1e-5 * Math.max(rate, 1000));
      }),
    );
  });

  it("shares its compression out among its springs, each by the one force, until solid", () => {
    fc.assert(
      fc.property(anyStack, length(0, 0.3), (stack, way) => {
        const { members, force, loose, isSolid } = springStackAt(stack, LONGEST - way);
        const sum = members.reduce((total, { compression }) => total + compression, 0);
        if (!isSolid) expect(Math.abs(sum - Math.max(0, stack.preload + way))).toBeLessThan(1e-12);
        if (loose > 0) expect(force).toBe(0);
        for (const { compression, leftToSolid, length: now } of members) {
          expect(compression).toBeGreaterThanOrEqual(0);
          expect(leftToSolid).toBeGreaterThanOrEqual(-1e-12);
          expect(now).toBeGreaterThan(0);
        }
      }),
    );
  });
});
