import { describe, expect, test } from "vitest";
import {
  coilRate,
  coilStress,
  coilsForRate,
  directShearFactor,
  solidLengthOf,
  wireForRate,
  wireForStress,
} from "../../src/springs/coil-rate.ts";

// Inputs and answers as worked in the named books, recomputed; lengths in the book's own unit, since the formulas keep any.
/** Bhandari, Design of Machine Elements, problems 10.1 to 10.6 and 10.19: shear modulus, N/mm². */
const G = 81_370;
const near = (ours: number, theirs: number, relative: number) =>
  expect(Math.abs(ours / theirs - 1)).toBeLessThan(relative);

test("S1 Shigley, Mechanical Engineering Design, Ex. 10-1 (from memory, recomputed): 4.1311 lb/in, solid 0.4995 in, 1.5637 in", () => {
  const k = coilRate({ wire: 0.037, meanDiameter: 0.4, activeCoils: 10.5, shearModulus: 11.85e6 });
  near(k, 4.1311, 1e-4);
  near(solidLengthOf(0.037, 12.5, "plain"), 0.4995, 1e-9);
  near(6.46 / k, 1.5637, 1e-4);
});

describe("S2 Bhandari 10.19: two springs, the second after a gap of 15 mm, 1000 N", () => {
  const a = { wire: 6, meanDiameter: 36, activeCoils: 10, shearModulus: G };
  const b = { wire: 5, meanDiameter: 30, activeCoils: 8, shearModulus: G };
  const [ka, kb] = [coilRate(a), coilRate(b)];
  test("rates", () => {
    near(ka, 28.25347, 1e-5);
    near(kb, 29.4307, 1e-5);
  });
  test("shares, deflection and stress", () => {
    const deflection = (1000 + kb * 15) / (ka + kb);
    near(deflection, 24.988839, 1e-5);
    near(ka * deflection, 706.021, 1e-5);
    near(kb * (deflection - 15), 293.979, 1e-5);
    near(coilStress(a, ka * deflection), 375.305, 1e-5);
    near(coilStress(b, kb * (deflection - 15)), 225.032, 1e-5);
  });
});

test("S3 Bhandari 10.1: wire for 1250 N, C 6, half of 1090 N/mm²; coils for 30 mm with a 7 mm wire", () => {
  near(wireForStress(1250, 6, 545), 6.625083, 1e-5);
  const coil = { wire: 7, meanDiameter: 42, shearModulus: G };
  near(coilsForRate(coil, 1250 / 30), 7.911, 1e-4);
  near(1250 / coilRate({ ...coil, activeCoils: 8 }), 30.3376, 1e-5);
});

test("S4 Bhandari 10.3: 7.814775 coils for 75 N/mm", () => {
  near(coilsForRate({ wire: 21, meanDiameter: 150, shearModulus: G }, 75), 7.814775, 1e-6);
});

test("S5 Bhandari 10.4: 6.278549 coils for 30 N/mm", () => {
  near(coilsForRate({ wire: 4, meanDiameter: 24, shearModulus: G }, 30), 6.278549, 1e-5);
});

test("S6 Bhandari 10.5: wire, coils and actual rate", () => {
  near(wireForStress(1500, 6, 680), 6.497192, 1e-5);
  const coil = { wire: 7, meanDiameter: 42, shearModulus: G };
  near(coilsForRate(coil, 15), 21.974923, 1e-5);
  near(coilRate({ ...coil, activeCoils: 22 }), 14.982902, 1e-5);
});

test("S7 Bhandari 10.6: energy into two springs, 75 N/mm each", () => {
  // ½·1500·1.5² J into two springs over 150 mm.
  const k = (0.5 * 1500 * 1.5 ** 2) / 0.15 ** 2 / 1000;
  near(k, 75, 1e-12);
  near(wireForStress(75 * 150, 6, 625), 18.559694, 1e-5);
  const coil = { wire: 20, meanDiameter: 120, shearModulus: G };
  near(coilsForRate(coil, 75), 12.557099, 1e-5);
  near(coilRate({ ...coil, activeCoils: 13 }), 72.444801, 1e-5);
});

test("S8 Wentzell, Machine Design, 8.2: 12.792 coils in all, two of them inactive", () => {
  const active = coilsForRate({ wire: 0.105, meanDiameter: 0.62, shearModulus: 11.85e6 }, 35 / 0.5);
  expect(Math.abs(active + 2 - 12.792)).toBeLessThan(0.005);
});

test("S9 Jindal, Machine Design, 8-6: 41.09 N and 30.457 mm by direct shear, solid 15.2375 mm", () => {
  const wire = 1.219;
  const meanDiameter = 12.5 - wire;
  const stress = (0.4 * 1783) / wire ** 0.19;
  expect(Math.abs(stress - 686.86)).toBeLessThan(0.05);
  const force = stress / coilStress({ wire, meanDiameter }, 1, directShearFactor(meanDiameter / wire));
  expect(Math.abs(force - 41.09)).toBeLessThan(0.05);
  const k = coilRate({ wire, meanDiameter, activeCoils: 11.5, shearModulus: 80_700 });
  expect(Math.abs(force / k - 30.457)).toBeLessThan(0.005);
  near(solidLengthOf(wire, 12.5, "squared"), 15.2375, 1e-9);
});

test("wire for a rate turns the formula about", () => {
  const coil = { wire: 0.012, meanDiameter: 0.07, activeCoils: 9, shearModulus: 79e9 };
  near(wireForRate(coil, coilRate(coil)), 0.012, 1e-12);
});
