import { describe, expect, it } from "vitest";
import { ROAD_BAND, randomRoad, roughnessOf } from "../../src/landing/random-road.ts";
import { roadAt } from "../../src/landing/road.ts";

describe("random road of a class", () => {
  it("roughness by class (ISO 8608, table C.2)", () => {
    expect(roughnessOf("A")).toBe(16e-6);
    expect(roughnessOf("C")).toBe(256e-6);
    expect(roughnessOf("H")).toBeCloseTo(262_144e-6, 15);
  });

  it("root mean square over the whole band (√(G_d·n0²·(1/n1 − 1/n2)), own evaluation): A 3.806, C 15.226, E 60.903 mm", () => {
    const { heights } = randomRoad("A", 10, 40_000, 7, 0.15);
    const mean = heights.reduce((sum, z) => sum + z * z, 0) / heights.length;
    // A finite length does not hold whole waves of each of 400 bands: one in a hundred.
    expect(Math.abs((Math.sqrt(mean) * 1000) / 3.806 - 1)).toBeLessThan(0.01);
    // Another class is the same road times 4 for every two classes: 15.226 and 60.903.
    const one = randomRoad("A", 10, 200, 7).heights;
    for (const [roadClass, times] of [
      ["C", 4],
      ["E", 16],
    ] as const) {
      const other = randomRoad(roadClass, 10, 200, 7).heights;
      expect(other.every((z, i) => Math.abs(z - times * one[i]!) < 1e-12)).toBe(true);
    }
  });

  it("the spectrum comes back from the heights: third-octave bands from 0.012 to 0.06 cycles/m, by direct Fourier sums", () => {
    const step = 0.1;
    const length = 20_000;
    const { heights } = randomRoad("C", 10, length, 3, step);
    const count = Math.round(length / step);
    /** Power of the band from `low` to `high`, m²: sum of the squared amplitudes at whole numbers of waves in the length. */
    const power = (low: number, high: number): number => {
      let sum = 0;
      for (let waves = Math.ceil(low * length); waves < high * length; waves += 1) {
        const turn = (2 * Math.PI * waves) / count;
        // Goertzel's recurrence.
        const factor = 2 * Math.cos(turn);
        let a = 0;
        let b = 0;
        for (let i = 0; i < count; i += 1) [a, b] = [heights[i]! + factor * a - b, a];
        sum += (2 * (a * a + b * b - factor * a * b)) / count ** 2;
      }
      return sum;
    };
    // Low bands only: the number of sums grows with the frequency.
    for (let low = 0.012; low < 0.05; low *= 2 ** (1 / 3) * 1.3) {
      const high = low * 2 ** (1 / 3);
      const theory = 256e-6 * 0.1 ** 2 * (1 / low - 1 / high);
      expect(Math.abs(power(low, high) / theory - 1)).toBeLessThan(0.1);
    }
  }, 60_000);

  it("holds the whole band, is the same for the same seed, and another for another", () => {
    expect(ROAD_BAND).toEqual({ from: 0.011, to: 2.83 });
    expect(randomRoad("D", 10, 100, 5)).toEqual(randomRoad("D", 10, 100, 5));
    expect(randomRoad("D", 10, 100, 5)).not.toEqual(randomRoad("D", 10, 100, 6));
  });

  it("rate is the slope times the speed", () => {
    const road = randomRoad("E", 12, 200, 2);
    const [a, b, c] = [new Float64Array(2), new Float64Array(2), new Float64Array(2)];
    for (const time of [1.003, 5.2171, 11.1111]) {
      const d = 1e-5;
      roadAt(road, time - d, a);
      roadAt(road, time, b);
      roadAt(road, time + d, c);
      expect(Math.abs((c[0]! - a[0]!) / (2 * d) - b[1]!)).toBeLessThan(1e-5);
    }
  });
});
