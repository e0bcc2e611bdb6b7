import { distance, type Vec3, vec } from "../../src/geometry/vec3.ts";
import { componentsOf } from "../../src/survey/equations.ts";
import type { Survey, SurveyPoint, SurveyReading } from "../../src/survey/survey.ts";

export const INCH = 0.0254;
export const SD = {
  tape: INCH / 32,
  height: INCH / 32,
  out: INCH / 16,
  along: INCH / 16,
  level: (0.1 * Math.PI) / 180,
  "in-line": INCH / 16,
  offset: INCH / 64,
  mirror: INCH / 16,
} as const;

/** Mulberry32: the same numbers from the same seed. */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

export const normalFrom = (random: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

export interface Simulated {
  readonly survey: Survey;
  readonly truth: readonly Vec3[];
}

/**
 * One corner of a car as somebody alone tapes it: three spots plumbed from floor, centreline and mark, eight to twelve more
 * of which most have a height, some one plumbed coordinate, and each tapes to three or four others. Noise is normal, with
 * the stated spread, and not rounded to the tape's marks.
 */
export function simulatedSurvey(seed: number): Simulated {
  const random = randomFrom(seed);
  const within = (from: number, to: number): number => (from + (to - from) * random()) * INCH;
  const count = 8 + Math.floor(5 * random());
  const truth: Vec3[] = [
    vec(within(14, 22), within(8, 12), within(9, 13)),
    vec(within(-20, -10), within(8, 12), within(9, 13)),
    vec(within(-4, 4), within(10, 16), within(24, 34)),
  ];
  while (truth.length < 3 + count) {
    const place = vec(within(-14, 14), within(8, 38), within(9, 34));
    if (truth.every((other) => distance(other, place) > 4 * INCH)) truth.push(place);
  }
  const points: SurveyPoint[] = truth.map((_, i) => ({ name: `point ${i + 1}`, side: "left", fixed: {}, rough: {} }));
  const exact: SurveyReading[] = [];
  const length = { reads: 0, add: 0, isDeferred: false };
  for (let i = 0; i < 3; i += 1) {
    for (const kind of ["height", "out", "along"] as const) exact.push({ kind, point: i, ...length });
  }
  for (let i = 3; i < truth.length; i += 1) {
    if (random() < 0.85) exact.push({ kind: "height", point: i, ...length });
    if (random() < 0.5) exact.push({ kind: random() < 0.5 ? "out" : "along", point: i, ...length });
    const partners = new Set<number>();
    const wanted = 3 + Math.floor(2 * random());
    while (partners.size < Math.min(wanted, i)) partners.add(Math.floor(random() * i));
    for (const to of partners) exact.push({ kind: "tape", from: i, to, ...length });
    if (random() < 0.2) exact.push({ kind: "level", from: 3, to: i === 3 ? 0 : i, reads: 0, isDeferred: false });
  }
  const plain: Survey = { points, readings: exact, uncertainty: SD, adjustment: "constrained" };
  const readings = exact.map((reading): SurveyReading => {
    if (!("reads" in reading)) return reading;
    const true_ = componentsOf(plain, reading, truth)[0]!.computed;
    return { ...reading, reads: true_ + SD[reading.kind] * normalFrom(random) };
  });
  return { survey: { ...plain, readings }, truth };
}

/** The survey with one tape read an inch wrong. */
export const withSlip = (survey: Survey, index: number, by: number): Survey => ({
  ...survey,
  readings: survey.readings.map((reading, i) =>
    i === index && "reads" in reading ? { ...reading, reads: reading.reads + by } : reading,
  ),
});
