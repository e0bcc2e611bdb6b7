import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { solveSurvey } from "../../src/survey/solve-survey.ts";
import type { Survey, SurveyReading } from "../../src/survey/survey.ts";

// Published trilateration nets, as collected in F. Krumm, Geodetic Network Adjustment Examples, Rev. 3.5 (2020); the
// book that each is from stands beside it. Coordinates and spreads were computed again for more figures than are printed.
interface Net {
  readonly name: string;
  readonly source: string;
  readonly dim: 2 | 3;
  readonly free: boolean;
  readonly points: Readonly<Record<string, readonly number[]>>;
  readonly fixed: readonly string[];
  readonly readings: readonly (readonly [a: string, b: string, d: number, sd: number])[];
  readonly expected: {
    readonly points: Readonly<Record<string, readonly number[]>>;
    readonly sdHundredths: Readonly<Record<string, readonly number[]>>;
    readonly scatter: number;
    readonly freedom: number;
    readonly residuals: readonly number[];
    readonly tests: readonly number[];
    readonly redundancy: readonly number[];
  };
}

const nets = JSON.parse(
  readFileSync(new URL("../../../../reference/survey/networks.json", import.meta.url), "utf8"),
) as readonly Net[];

const SD = { tape: 1, height: 1, out: 1, along: 1, level: 1, "in-line": 1, offset: 1, mirror: 1 };

/** A net as a survey; rough places only where asked for, as all else is to be found without a guess. */
function surveyOf(net: Net, rough: boolean): Survey {
  const names = Object.keys(net.points);
  const flat = net.dim === 2 ? { z: 0 } : {};
  return {
    points: names.map((name) => {
      const [x, y, z] = net.points[name]!;
      const at = net.dim === 2 ? { x: x!, y: y! } : { x: x!, y: y!, z: z! };
      return {
        name,
        fixed: net.fixed.includes(name) ? { ...at, ...flat } : flat,
        rough: rough || net.free ? at : {},
      };
    }),
    readings: net.readings.map(
      ([a, b, reads, sd]): SurveyReading => ({
        kind: "tape",
        from: names.indexOf(a),
        to: names.indexOf(b),
        reads,
        add: 0,
        sd,
        isDeferred: false,
      }),
    ),
    uncertainty: SD,
    adjustment: "constrained",
  };
}

const NO_SNOOPING = { falseAlarmRate: 1e-300 };

/** Coordinates agree with those computed again to this. */
const PLACE: Readonly<Record<string, number>> = {
  "Ghilani 14.5": 1e-3,
  "Höpke 35.5, free": 1.1e-4,
  "Weiss et al": 1.1e-4,
};
const SPREAD: Readonly<Record<string, number>> = {
  "Ghilani 14.5": 0.01,
  "Blankenbach and Willert, two blunders": 0.01,
};

describe("published nets", () => {
  it.each(nets.map((net) => [net.name, net] as const))("%s: places, spreads, tests", (name, net) => {
    // Two of the nets have a mirrored solution that fits as well: the book's approximate places choose.
    const { result } = solveSurvey(surveyOf(net, true), NO_SNOOPING);
    const { expected } = net;
    expect(result.status).toBe("solved");
    expect(result.degreesOfFreedom).toBe(expected.freedom);
    expect(Math.abs(result.scatter! / expected.scatter - 1)).toBeLessThan(2e-4);
    for (const point of result.points) {
      const place = expected.points[point.name];
      if (!place) continue;
      const spread = expected.sdHundredths[point.name]!;
      for (const [k, axis] of (["x", "y", "z"] as const).slice(0, net.dim).entries()) {
        expect(Math.abs(point.at[axis] - place[k]!), `${point.name} ${axis}`).toBeLessThan(PLACE[name] ?? 6e-5);
        const sd = point.sd[axis] * result.scatter! * 100;
        expect(Math.abs(sd - spread[k]!), `sd of ${point.name} ${axis}`).toBeLessThan(SPREAD[name] ?? 2e-3);
      }
    }
    for (const [i, { numbers }] of result.readings.entries()) {
      const [number] = numbers;
      expect(Math.abs(number!.residual - expected.residuals[i]!)).toBeLessThan(
        net.dim === 2 && name.startsWith("Ghil") ? 1e-3 : 1e-4,
      );
      expect(Math.abs(number!.redundancy! - expected.redundancy[i]!)).toBeLessThan(1e-4);
      expect(Math.abs(number!.test! - expected.tests[i]!)).toBeLessThan(0.02);
    }
  });
});

export { nets, surveyOf };
