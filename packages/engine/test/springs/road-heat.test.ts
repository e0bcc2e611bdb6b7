import { describe, expect, it } from "vitest";
import { solveLinear } from "../../src/geometry/solve-linear.ts";
import { damperPower, groundSpeedDensity, meanSquareSpeed, roadHeat } from "../../src/springs/road-heat.ts";
import { exampleCar } from "../example-documents.ts";

/** An invented quarter car on a road of ISO 8608 class C at 10 m/s; its answers by the Lyapunov equation, no publication. */
const QUARTER = { ms: 250, mu: 40, ks: 16_000, kt: 160_000, c: 1000 };
const DENSITY = groundSpeedDensity("C", 10);

/** Mean square of the relative speed by the Lyapunov equation A·P + P·Aᵀ + W·b·bᵀ = 0 (two-sided W = S0/2), as 16 equations. */
function lyapunovSpeed({ ms, mu, ks, kt, c }: typeof QUARTER, density: number): number {
  // States: body − wheel, body speed, wheel − ground, wheel speed.
  const a = [
    [0, 1, 0, -1],
    [-ks / ms, -c / ms, 0, c / ms],
    [0, 0, 0, 1],
    [ks / mu, c / mu, -kt / mu, -c / mu],
  ];
  const b = [0, 0, -1, 0];
  const rows: number[][] = [];
  const right: number[] = [];
  for (let i = 0; i < 4; i += 1) {
    for (let j = 0; j < 4; j += 1) {
      const row = new Array<number>(16).fill(0);
      for (let k = 0; k < 4; k += 1) {
        row[k * 4 + j] = row[k * 4 + j]! + a[i]![k]!;
        row[i * 4 + k] = row[i * 4 + k]! + a[j]![k]!;
      }
      rows.push(row);
      right.push((-density / 2) * b[i]! * b[j]!);
    }
  }
  const p = solveLinear(rows, right);
  if (!p) throw new Error("singular");
  return p[5]! + p[15]! - p[7]! - p[13]!;
}

describe("energy of a rough road", () => {
  it("rests on the density of a class C road's speed ((2π·n0)²·G_d(n0), ISO 8608 table C.2's 256e-6 m³: 1.01065e-4 m at 1 m/s)", () => {
    expect(groundSpeedDensity("C", 1)).toBeCloseTo(1.01065e-4, 8);
  });

  it("agrees with the Lyapunov equation of the quarter car, whatever the damping", () => {
    for (const c of [300, 1000, 3000]) {
      const exact = lyapunovSpeed({ ...QUARTER, c }, DENSITY);
      expect(meanSquareSpeed(DENSITY, QUARTER.kt, c) / exact).toBeCloseTo(1, 9);
      expect((c * exact) / damperPower(DENSITY, QUARTER.kt)).toBeCloseTo(1, 9);
    }
  });

  it("gives the same energy a metre at every speed, and four times as much a class up", () => {
    const { shock } = exampleCar("saltbush");
    if (!shock) throw new Error("no shock");
    const slow = roadHeat(shock, 200_000, "C", 5);
    expect(roadHeat(shock, 200_000, "C", 20).perMetre / slow.perMetre).toBeCloseTo(1, 12);
    expect(roadHeat(shock, 200_000, "D", 5).perMetre / slow.perMetre).toBeCloseTo(4, 12);
    expect(slow.power / slow.perMetre).toBeCloseTo(5, 12);
  });

  it("common practice, no source: on a bad road at speed a reservoir is preferred to an emulsion shock, on a good one not", () => {
    const { shock } = exampleCar("saltbush");
    if (!shock) throw new Error("no shock");
    expect(roadHeat(shock, 200_000, "B", 15).verdict).toBe("emulsion-enough");
    expect(roadHeat(shock, 200_000, "D", 15).verdict).toBe("reservoir-worth-it");
  });
});
