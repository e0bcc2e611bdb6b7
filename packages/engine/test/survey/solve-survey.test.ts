import { Matrix, solve } from "ml-matrix";
import { describe, expect, it } from "vitest";
import { distance, type Vec3, vec } from "../../src/geometry/vec3.ts";
import { componentsOf } from "../../src/survey/equations.ts";
import { nextReadings } from "../../src/survey/next-reading.ts";
import { solvePositive } from "../../src/survey/solve-positive.ts";
import { solveSurvey } from "../../src/survey/solve-survey.ts";
import type { Survey, SurveyPoint, SurveyReading } from "../../src/survey/survey.ts";
import { INCH, randomFrom, SD, simulatedSurvey, withSlip } from "./simulated-surveys.ts";

const inches = (x: number, y: number, z: number): Vec3 => vec(x * INCH, y * INCH, z * INCH);
const fixed = (name: string, at: Vec3): SurveyPoint => ({ name, fixed: at, rough: {} });
const free = (name: string, more: Partial<SurveyPoint> = {}): SurveyPoint => ({ name, fixed: {}, rough: {}, ...more });
const blank = { reads: 0, add: 0, isDeferred: false };
const tape = (from: number, to: number): SurveyReading => ({ kind: "tape", from, to, ...blank });

/** A survey whose readings are exactly what the true places make them. */
function exactly(points: readonly SurveyPoint[], readings: readonly SurveyReading[], truth: readonly Vec3[]): Survey {
  const survey: Survey = { points, readings, uncertainty: SD, adjustment: "constrained" };
  return {
    ...survey,
    readings: readings.map((reading) =>
      "reads" in reading ? { ...reading, reads: componentsOf(survey, reading, truth)[0]!.computed } : reading,
    ),
  };
}

const A = inches(0, 10, 12);
const B = inches(30, 10, 12);
const C = inches(10, 30, 12);
const D = inches(12, 18, 30);

describe("every kind of reading", () => {
  const truth = [A, B, C, D, vec(A.x, -A.y, A.z), inches(15, 10, 12)];
  const points = [fixed("a", A), fixed("b", B), free("c"), free("d"), free("a, right"), free("between")];
  const readings: readonly SurveyReading[] = [
    { kind: "height", point: 2, ...blank },
    { kind: "out", point: 2, ...blank },
    { kind: "along", point: 2, from: 0, ...blank },
    { kind: "level", from: 0, to: 3, reads: 0, isDeferred: false },
    tape(3, 0),
    tape(3, 1),
    tape(3, 2),
    { kind: "mirror", left: 0, right: 4, isDeferred: false },
    { kind: "in-line", point: 5, from: 0, to: 1, isDeferred: false },
    tape(5, 0),
    tape(5, 1),
  ];
  const survey = exactly(points, readings, truth);

  it("comes back to the true places without a start being given", () => {
    const { result } = solveSurvey(survey);
    expect(result.status).toBe("solved");
    for (const [i, { at }] of result.points.entries()) expect(distance(at, truth[i]!)).toBeLessThan(1e-6);
  });

  it("has the slopes that small moves show", () => {
    const random = randomFrom(7);
    const at = truth.map(({ x, y, z }) => vec(x + 0.01 * random(), y + 0.01 * random(), z + 0.01 * random()));
    const offset: SurveyReading = { kind: "offset", from: 0, to: 3, by: { x: 1, z: 2 }, isDeferred: false };
    for (const reading of [...survey.readings, offset]) {
      if (reading.kind === "in-line") continue; // its directions are held while it turns: exact only on the line
      for (const [k, component] of componentsOf(survey, reading, at).entries()) {
        for (const [point, by] of component.gradient) {
          for (const axis of ["x", "y", "z"] as const) {
            const h = 1e-6;
            const moved = (d: number) => at.map((p, i) => (i === point ? { ...p, [axis]: p[axis] + d } : p));
            const slope =
              (componentsOf(survey, reading, moved(h))[k]!.computed -
                componentsOf(survey, reading, moved(-h))[k]!.computed) /
              (2 * h);
            expect(Math.abs(slope - by[axis])).toBeLessThan(1e-6);
          }
        }
      }
    }
  });
});

describe("what readings leave open", () => {
  const truth = [A, B, C, D];
  const known = [fixed("a", A), fixed("b", B), fixed("c", C)];

  it("three tapes leave a mirrored place, which one height settles", () => {
    const survey = exactly([...known, free("d")], [tape(3, 0), tape(3, 1), tape(3, 2)], truth);
    const { mirrored } = solveSurvey(survey).result;
    expect(mirrored).toHaveLength(1);
    expect(mirrored[0]!.points.map(({ point }) => point)).toEqual([3]);
    const { settledBy } = mirrored[0]!;
    expect(settledBy.kind === "reading" && settledBy.reading.kind).toBe("height");
    const rough = exactly([...known, free("d", { rough: { z: 0.7 } })], survey.readings, truth);
    const settled = solveSurvey(rough).result;
    expect(settled.mirrored).toEqual([]);
    expect(distance(settled.points[3]!.at, D)).toBeLessThan(1e-6);
  });

  it("a stated side settles left against right", () => {
    const on = [inches(0, 0, 10), inches(30, 0, 12), inches(10, 0, 30)];
    const places = [...on, D];
    const readings = [tape(3, 0), tape(3, 1), tape(3, 2)];
    const points = on.map((at, i) => fixed(`p${i}`, at));
    const open = solveSurvey(exactly([...points, free("d")], readings, places)).result;
    expect(open.mirrored[0]!.settledBy).toEqual({ kind: "side", point: 3 });
    const left = solveSurvey(exactly([...points, free("d", { side: "left" })], readings, places)).result;
    expect(left.mirrored).toEqual([]);
    expect(distance(left.points[3]!.at, D)).toBeLessThan(1e-6);
    const right = solveSurvey(exactly([...points, free("d", { side: "right" })], readings, places)).result;
    expect(right.points[3]!.at.y).toBeCloseTo(-D.y, 6);
  });

  it("what no reading tells is named by direction, with a reading that tells it", () => {
    const readings: readonly SurveyReading[] = [
      { kind: "height", point: 3, ...blank },
      { kind: "out", point: 3, ...blank },
    ];
    const survey = exactly([...known, free("d")], readings, truth);
    const { undetermined, points } = solveSurvey(survey).result;
    expect(points[3]!.isUndetermined).toBe(true);
    expect(undetermined).toHaveLength(1);
    expect(undetermined[0]).toMatchObject({ point: 3, axis: "x", isAlongAxis: true });
    const remedy = undetermined[0]!.remedy!;
    const fixedNow = solveSurvey(
      exactly([...known, free("d")], [...readings, { ...remedy, isDeferred: false }], truth),
    );
    expect(fixedNow.result.undetermined).toEqual([]);
  });
});

describe("next reading", () => {
  it("narrows as foretold when it is taken, and none of the others does better", () => {
    const { survey } = simulatedSurvey(11);
    const solved = solveSurvey(survey, { falseAlarmRate: 1e-12 });
    const wish = { kind: "points", points: survey.points.map((_, i) => i) } as const;
    const offers = nextReadings(survey, solved, wish, 10_000);
    expect(offers.length).toBeGreaterThan(20);
    const spreadWith = (reading: SurveyReading, reads: number): number => {
      const taken = { ...reading, reads, isDeferred: false } as SurveyReading;
      const { result } = solveSurvey({ ...survey, readings: [...survey.readings, taken] }, { falseAlarmRate: 1e-12 });
      return Math.sqrt(result.covariance.reduce((sum, row, i) => sum + row[i]!, 0));
    };
    const [best, ...rest] = offers;
    const after = spreadWith(best!.reading, best!.expected);
    expect(Math.abs(after / best!.after - 1)).toBeLessThan(1e-4);
    for (const other of rest.filter((_, i) => i % 17 === 0)) {
      expect(spreadWith(other.reading, other.expected)).toBeGreaterThan(after - 1e-9);
    }
  });
});

describe("blunders", () => {
  it("two at once are set aside and no third", () => {
    const { survey } = simulatedSurvey(23);
    const sound = solveSurvey(survey).result;
    const tapes = survey.readings.flatMap(({ kind }, i) =>
      kind === "tape" && (sound.readings[i]!.numbers[0]!.redundancy ?? 0) > 0.4 ? [i] : [],
    );
    const wrong = [tapes[0]!, tapes.at(-1)!];
    const { suspicions } = solveSurvey(withSlip(withSlip(survey, wrong[0]!, INCH), wrong[1]!, -12 * INCH)).result;
    expect(suspicions.map(({ reading }) => reading).sort((a, b) => a - b)).toEqual([...wrong].sort((a, b) => a - b));
    const foot = suspicions.find(({ reading }) => reading === wrong[1])!;
    expect(foot.causes.some(({ kind }) => kind === "wrong-end")).toBe(true);
  });

  it("the same survey gives the same result, to the last bit", () => {
    const { survey } = simulatedSurvey(5);
    expect(JSON.stringify(solveSurvey(survey).result)).toBe(JSON.stringify(solveSurvey(survey).result));
  });
});

it("the flat Cholesky solve agrees with ml-matrix", () => {
  const random = randomFrom(3);
  const n = 24;
  const half = Array.from({ length: n + 5 }, () => Array.from({ length: n }, () => random() - 0.5));
  const square = new Matrix(half).transpose().mmul(new Matrix(half));
  const right = Array.from({ length: n }, () => random());
  const ours = solvePositive(Float64Array.from(square.to1DArray()), Float64Array.from(right));
  const theirs = solve(square, Matrix.columnVector(right)).to1DArray();
  for (const [i, value] of theirs.entries())
    expect(Math.abs(ours[i]! - value)).toBeLessThan(1e-8 * (1 + Math.abs(value)));
});
