import { upperAt } from "./grid.ts";
import { loadPathOf } from "./load-path.ts";
import { KILL as KILLS, REQUIREMENTS } from "./request.ts";
import { found, insideOf } from "./row-interval.ts";
import type { Search } from "./search.ts";
import { MEASURED, makeTrial, type Trial, tryUpper } from "./trial.ts";

const KILL = KILLS;
const AT = MEASURED;

/** Where a scan puts what it finds; one entry a feasible candidate in each list. */
export interface Sink {
  tested: number;
  readonly killed: Float64Array;
  /** By the obstacle that was met first, in the order of search.obstacles. */
  readonly inTheWay: Float64Array;
  readonly shock: number[];
  readonly lower: number[];
  readonly upper: number[];
  readonly scores: number[];
}

/** Numbers of each feasible candidate in Sink.scores. */
export const SCORES = [
  "strokeUsed",
  "motionRatio",
  "ratioRise",
  "lean",
  "offSquare",
  "lengthAtRide",
  "loadPath",
] as const;

export const makeSink = (search: Search): Sink => ({
  tested: 0,
  killed: new Float64Array(REQUIREMENTS.length),
  inTheWay: new Float64Array(search.obstacles.length),
  shock: [],
  lower: [],
  upper: [],
  scores: [],
});

/** Tries every upper mount with one lower mount and one shock; true where it stopped at the first that fits. */
export function scanLower(
  search: Search,
  shockIndex: number,
  lowerIndex: number,
  sink: Sink,
  stopAtFirst = false,
): boolean {
  const { upper } = search;
  const trial = makeTrial(search, search.request.shocks[shockIndex]!, search.paths[lowerIndex]!);
  const { at } = trial.path;
  const { x, y, z, rows, perRow: n } = upper;
  const { x: wx, y: wy, z: wz } = upper.along;
  const c = wx * wx + wy * wy + wz * wz;
  const b = 3 * trial.last;
  const [px, py, pz] = [at[0]!, at[1]!, at[2]!];
  const [qx, qy, qz] = [at[b]!, at[b + 1]!, at[b + 2]!];
  const most2 = trial.most * trial.most;
  const least2 = trial.least * trial.least;
  // What fits at either end but cannot use enough of the stroke: a hair outside, so that rounding kills nothing.
  const usedLeast = trial.request.requirements.strokeUsed.least * trial.stroke;
  const droopLeast2 = (trial.least + usedLeast) ** 2 * (1 - 1e-12);
  const bumpMost2 = Math.max(0, trial.most - usedLeast) ** 2 * (1 + 1e-12);
  const { killed } = sink;
  sink.tested += rows * n;
  for (let row = 0; row < rows; row += 1) {
    const base = row * n;
    const x0 = x[base]!;
    const y0 = y[base]!;
    const z0 = z[base]!;
    const dx = x0 - px;
    const dy = y0 - py;
    const dz = z0 - pz;
    const ad = dx * dx + dy * dy + dz * dz;
    const bd = dx * wx + dy * wy + dz * wz;
    insideOf(ad, bd, c, n, most2);
    let lo = found.lo;
    let hi = found.hi;
    while (lo <= hi && away2(x[base + lo]! - px, y[base + lo]! - py, z[base + lo]! - pz) > most2) lo += 1;
    while (lo <= hi && away2(x[base + hi]! - px, y[base + hi]! - py, z[base + hi]! - pz) > most2) hi -= 1;
    killed[KILL.tooLong]! += n - (hi - lo + 1);
    if (lo > hi) continue;
    const ex = x0 - qx;
    const ey = y0 - qy;
    const ez = z0 - qz;
    const ab = ex * ex + ey * ey + ez * ez;
    const bb = ex * wx + ey * wy + ez * wz;
    insideOf(ab, bb, c, n, least2);
    let shortLo = Math.max(lo, found.lo);
    let shortHi = Math.min(hi, found.hi);
    while (
      shortLo <= shortHi &&
      away2(x[base + shortLo]! - qx, y[base + shortLo]! - qy, z[base + shortLo]! - qz) >= least2
    )
      shortLo += 1;
    while (
      shortLo <= shortHi &&
      away2(x[base + shortHi]! - qx, y[base + shortHi]! - qy, z[base + shortHi]! - qz) >= least2
    )
      shortHi -= 1;
    const short = shortHi < shortLo ? 0 : shortHi - shortLo + 1;
    killed[KILL.tooShort]! += short;
    const left = hi - lo + 1 - short;
    if (left === 0) continue;
    insideOf(ab, bb, c, n, bumpMost2);
    lo = Math.max(lo, found.lo);
    hi = Math.min(hi, found.hi);
    insideOf(ad, bd, c, n, droopLeast2);
    // One place inside, because the interval is right to rounding only.
    const slackLo = found.lo + (found.lo > 0 ? 1 : 0);
    const slackHi = found.hi - (found.hi < n - 1 ? 1 : 0);
    let seen = 0;
    for (let k = lo; k <= hi; k += 1) {
      if (k >= shortLo && k <= shortHi) {
        k = shortHi;
        continue;
      }
      if (k >= slackLo && k <= slackHi) {
        k = slackHi;
        continue;
      }
      seen += 1;
      const killer = tryUpper(trial, x[base + k]!, y[base + k]!, z[base + k]!);
      if (killer >= 0) {
        killed[killer]! += 1;
        if (killer === KILL.clearance) countObstacle(search, trial, sink);
        continue;
      }
      keep(search, trial, shockIndex, lowerIndex, base + k, sink);
      if (stopAtFirst) return true;
    }
    killed[KILL.strokeUsed]! += left - seen;
  }
  return false;
}

const away2 = (x: number, y: number, z: number): number => x * x + y * y + z * z;

function countObstacle(search: Search, { obstacles, measured }: Trial, sink: Sink): void {
  const met = obstacles[measured[AT.inTheWay]!]!;
  const index = search.obstacles.indexOf(met);
  sink.inTheWay[index]! += 1;
}

function keep(
  { frame, upper: grid }: Search,
  { measured: m }: Trial,
  shock: number,
  lower: number,
  upper: number,
  sink: Sink,
): void {
  sink.shock.push(shock);
  sink.lower.push(lower);
  sink.upper.push(upper);
  sink.scores.push(
    m[AT.strokeUsed]!,
    m[AT.ratioRide]!,
    m[AT.ratioBump]! - m[AT.ratioRide]!,
    Math.acos(Math.min(1, m[AT.cosLean]!)),
    Math.asin(Math.min(1, m[AT.sinOff]!)),
    m[AT.atRide]!,
    frame.length === 0 ? 0 : loadPathOf(frame, upperAt(grid, upper))!.length,
  );
}
