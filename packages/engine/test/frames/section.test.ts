import { describe, expect, it } from "vitest";
import { rectangleTorsion } from "../../src/frames/rectangle-torsion.ts";
import { isSoundSection, type Section, sectionProperties } from "../../src/frames/section.ts";
import { type SectionForce, sectionStress } from "../../src/frames/section-stress.ts";

const NONE: SectionForce = { tension: 0, shearY: 0, shearZ: 0, torque: 0, bendingY: 0, bendingZ: 0 };
const tube = (diameter: number, wall: number): Section => ({ shape: "round-tube", diameter, wall });
const solid = (diameter: number): Section => tube(diameter, diameter / 2);
const near = (got: number, expected: number, tolerance: number): void =>
  expect(Math.abs(got - expected)).toBeLessThanOrEqual(tolerance);

describe("section properties", () => {
  // EN 10219-2 / EN 10210-2 tables, from memory; half of the last digit printed: A cm², I cm⁴, It cm⁴.
  it.each([
    [48.3, 3.2, 4.53, 11.6, 23.2, 4.8, 1.6],
    [60.3, 5, 8.69, 33.5, 67.0, 11.1, 1.96],
    [33.7, 3.2, 3.07, 3.6, 7.21, 2.14, 1.08],
  ])("round tube %f × %f mm", (diameter, wall, area, inertia, torsion, modulus, radius) => {
    const p = sectionProperties(tube(diameter / 10, wall / 10));
    near(p.area, area, 0.005);
    near(p.iy, inertia, inertia < 10 ? 0.005 : 0.05);
    near(p.torsion, torsion, torsion < 10 ? 0.005 : 0.05);
    near(p.iz / (diameter / 20), modulus, modulus < 10 ? 0.005 : 0.05);
    near(Math.sqrt(p.iz / p.area), radius, 0.005);
  });

  it("HSS 3.000 × .203, at its design wall of .189 (AISC table, read second-hand)", () => {
    const p = sectionProperties(tube(3, 0.189));
    near(p.area, 1.67, 0.005);
    near(p.iy, 1.66, 0.005);
    near(p.torsion, 3.31, 0.005);
    near(p.iy / 1.5, 1.1, 0.005);
  });

  it("Cowper: thin round tube 2(1+ν)/(4+3ν), solid circle 6(1+ν)/(7+6ν), square box 20(1+ν)/(48+39ν)", () => {
    const nu = 0.3;
    const coefficient = (section: Section) => {
      const p = sectionProperties(section, nu);
      return p.shearAreaY / p.area;
    };
    near(coefficient(tube(1, 1e-6)), (2 * (1 + nu)) / (4 + 3 * nu), 1e-5);
    near(coefficient(solid(1)), (6 * (1 + nu)) / (7 + 6 * nu), 1e-12);
    near(
      coefficient({ shape: "rectangular-tube", width: 1, depth: 1, wall: 1e-6 }),
      (20 * (1 + nu)) / (48 + 39 * nu),
      1e-5,
    );
  });

  it("a boxed plate of equal thickness is a rectangular tube", () => {
    const box = sectionProperties({
      shape: "boxed-plate",
      width: 2,
      depth: 3,
      sideThickness: 0.1,
      coverThickness: 0.1,
    });
    const rectangular = sectionProperties({ shape: "rectangular-tube", width: 2, depth: 3, wall: 0.1 });
    for (const key of ["area", "iy", "iz", "torsion", "shearAreaY", "shearAreaZ"] as const) {
      near(box[key], rectangular[key], 1e-12 * rectangular[key]);
    }
  });

  it("torsion of rectangles: Timoshenko and Goodier, Theory of Elasticity, table of art. 109 (from memory)", () => {
    // long / short: constant ÷ (long short³), and τ = T / (k2 long short²).
    for (const [ratio, k1, k2] of [
      [1, 0.1406, 0.208],
      [1.5, 0.196, 0.231],
      [2, 0.229, 0.246],
      [3, 0.263, 0.267],
      [5, 0.291, 0.291],
      [10, 0.312, 0.312],
    ] as const) {
      const { constant, atLongSide } = rectangleTorsion(ratio, 1);
      near(constant / ratio, k1, 6e-4);
      near(1 / (atLongSide * ratio), k2, 6e-4);
    }
    const square = rectangleTorsion(1, 1);
    near(square.atShortSide, square.atLongSide, 1e-5);
  });

  it("knows a wall that does not fit its tube", () => {
    expect(isSoundSection(tube(1, 0.6))).toBe(false);
    expect(isSoundSection(solid(1))).toBe(true);
    expect(isSoundSection({ shape: "flat-bar", width: 0, depth: 1 })).toBe(false);
  });
});

describe("section stress", () => {
  it("hollow shaft 80/60 mm, 4 kN·m: 58.205 MPa (Gere and Timoshenko, Mechanics of Materials, worked solution 3.6)", () => {
    const { shear } = sectionStress(tube(0.08, 0.01), { ...NONE, torque: 4000 });
    near(shear / 1e6, 58.205, 0.01);
  });

  it("solid shaft 1.5 in, 250 lb·ft: 4527.1 psi (Gere and Timoshenko 3.1); .5 in, 360 lb·in: 14 667.7 psi (Wentzell 3.4)", () => {
    near(sectionStress(solid(1.5), { ...NONE, torque: 3000 }).shear, 4527.1, 0.5);
    near(sectionStress(solid(0.5), { ...NONE, torque: 360 }).shear, 14667.7, 0.1);
  });

  it("tube 2.000 × .120, 12 000 lb·in: J .628797 in⁴, 19 084 psi (closed form)", () => {
    near(sectionProperties(tube(2, 0.12)).torsion, 0.628797, 1e-5);
    near(sectionStress(tube(2, 0.12), { ...NONE, torque: 12000 }).shear, 19084, 2);
  });

  it("bending with torsion: 13 142.28 psi greatest principal stress (Wentzell 4.4)", () => {
    // σ/2 + √((σ/2)² + τ²) at the same place.
    const { normal } = sectionStress(solid(1.25), { ...NONE, bendingY: 1890 });
    const { shear } = sectionStress(solid(1.25), { ...NONE, torque: 2520 });
    near(normal / 2 + Math.hypot(normal / 2, shear), 13142.28, 0.01);
    near(
      sectionStress(solid(1.25), { ...NONE, bendingY: 1890, torque: 2520 }).combined,
      Math.hypot(normal, Math.sqrt(3) * shear),
      1e-6,
    );
  });

  it("bar 2 × 2 in, 3000 lb in the middle of 36 in: 20 250 psi (Wentzell 3.2)", () => {
    const bar: Section = { shape: "flat-bar", width: 2, depth: 2 };
    near(Math.abs(sectionStress(bar, { ...NONE, bendingY: 27000 }).normal), 20250, 1);
  });

  it("shear of a solid bar is 4/3, of a thin tube 2, of a rectangle 3/2 of the mean", () => {
    const mean = (section: Section) => 1 / sectionProperties(section).area;
    near(sectionStress(solid(1), { ...NONE, shearY: 1 }).shear / mean(solid(1)), 4 / 3, 1e-9);
    near(sectionStress(tube(1, 1e-5), { ...NONE, shearZ: 1 }).shear / mean(tube(1, 1e-5)), 2, 1e-4);
    const bar: Section = { shape: "flat-bar", width: 1, depth: 3 };
    near(sectionStress(bar, { ...NONE, shearZ: 1 }).shear / mean(bar), 1.5, 1e-9);
  });

  it("a round tube bends alike in every direction", () => {
    const of = (angle: number) =>
      sectionStress(tube(1.5, 0.12), { ...NONE, bendingY: Math.cos(angle), bendingZ: Math.sin(angle), tension: 0.3 });
    const straight = of(0).combined;
    for (let angle = 0; angle < 7; angle += 0.37) near(of(angle).combined, straight, 1e-9 * straight);
  });
});
