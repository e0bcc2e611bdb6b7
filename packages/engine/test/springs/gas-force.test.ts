import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { FAST, type GasSpring, gasAt, gasAtRest, gasSpringOf, SLOW } from "../../src/springs/gas-force.ts";
import { PSI } from "../../src/units/convert.ts";

const near = (ours: number, theirs: number, relative: number) =>
  expect(Math.abs(ours / theirs - 1)).toBeLessThan(relative);

// OpenStax, University Physics Vol. 2, §3.6: 240 to 40 cm³ from 1e5 Pa, γ 1.4; prints 1.23e6 Pa and −63 J (recomputed).
test("A1 adiabatic compression: 1.22860e6 Pa and 62.860 J done on the gas", () => {
  const gas: GasSpring = { pressure: 1e5, volume: 240e-6, area: 1e-3, outside: 0, from: 0 };
  const { pressure, energy } = gasAt(gas, 0.2, FAST);
  near(pressure, 1.2286e6, 1e-4);
  near(energy, 62.86, 1e-4);
});

// A2: closed form k = γ·p·A²/V.
describe("A2 gas strut, 1.5 MPa on 0.002 m², 0.6 l", () => {
  const gas: GasSpring = { pressure: 1.5e6, volume: 0.6e-3, area: 0.002, outside: 0, from: 0 };
  test.each([
    ["free", 0, FAST, 3000, 14_000],
    ["50 mm in, fast", 0.05, FAST, 3872.35, 21_685.2],
    ["50 mm in, slow", 0.05, SLOW, 3600, 14_400],
  ])("%s", (_, s, exponent, force, rate) => {
    near(gasAt(gas, s, exponent).force, force, 1e-5);
    near(gasAt(gas, s, exponent).rate, exponent === SLOW ? (1.8e6 * 0.002 ** 2) / 0.5e-3 : rate, 1e-5);
  });
});

it("pushes with the gauge's pressure on the rod", () => {
  const gas = gasSpringOf({ kind: "reservoir", pressure: 200 * PSI, rodDiameter: 0.0254, volume: 4e-4 });
  // By arithmetic: 200 psi on a rod of 1 in, π/4 square inches, is 157.08 lb.
  expect(gasAt(gas, 0, SLOW).force / 4.4482216152605).toBeCloseTo(50 * Math.PI, 8);
});

const anyGas = fc.record({
  pressure: fc.double({ min: 2e5, max: 3e6, noNaN: true }),
  volume: fc.double({ min: 2e-4, max: 1e-3, noNaN: true }),
  area: fc.double({ min: 2e-4, max: 5e-4, noNaN: true }),
  outside: fc.constant(101_325),
  from: fc.constant(0),
});
const anyWay = fc.double({ min: 0, max: 0.25, noNaN: true });

describe("any gas, slow and fast", () => {
  const STEP = 1e-6;
  it.each([SLOW, FAST])("n = %d: rate is the slope of force, force the slope of energy", (exponent) => {
    fc.assert(
      fc.property(anyGas, anyWay, (gas, s) => {
        const before = gasAt(gas, s - STEP, exponent);
        const after = gasAt(gas, s + STEP, exponent);
        const { force, rate } = gasAt(gas, s, exponent);
        // Second differences and rounding of energies up to 1e3 J over 1e-6 m.
        expect(Math.abs((after.force - before.force) / (2 * STEP) - rate)).toBeLessThan(1e-4 * rate + 1e-2);
        expect(Math.abs((after.energy - before.energy) / (2 * STEP) - force)).toBeLessThan(
          1e-5 * Math.abs(force) + 1e-2,
        );
      }),
    );
  });

  it("after a rest sets out from where the slow one was, stiffer by 1.4", () => {
    fc.assert(
      fc.property(anyGas, anyWay, (gas, s) => {
        const slow = gasAt(gas, s, SLOW);
        const fast = gasAt(gasAtRest(gas, s), s, FAST);
        near(fast.force, slow.force, 1e-9);
        near(fast.rate, 1.4 * slow.rate, 1e-9);
      }),
    );
  });
});
