import type { Vec3 } from "../geometry/vec3.ts";
import { MEASURED as AT, findSpare, type Trial, tryUpper } from "./trial.ts";

/** Slack is told up to this, m. */
const FARTHEST = 0.1;
const HALVINGS = 30;

/**
 * How far both mounts may be off at once, each in any direction, before a requirement can break, m; 0 where one is broken
 * already. Every bound is on the safe side: the true figure is never less.
 * With both off by e the line between the eyes changes by at most 2e = d in every position (the lower mount is carried
 * rigidly), so a length by d; a difference of lengths by d·|u − u′| and what is of second order; the line's direction by
 * 2d/(2L − d) (as a chord) and asin(d/L); the lower mount's velocity by turning·e.
 */
export function slackOf(trial: Trial, upper: Vec3): number {
  if (tryUpper(trial, upper.x, upper.y, upper.z) >= 0) return 0;
  const { x, y, z } = upper;
  const { wrench } = trial;
  // Tabs and bolt are off with their mount: the socket is moved by as much, the wrench's room less by as much.
  const wrenchSpare = wrench ? Math.min(wrench.lower, wrench.upperRoom(x, y, z)) : Number.POSITIVE_INFINITY;
  const spare = Math.min(findSpare(trial, x, y, z).least, wrenchSpare);
  let holds = 0;
  let breaks = FARTHEST;
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = 0.5 * (holds + breaks);
    if (holdsAt(trial, upper, spare, middle)) holds = middle;
    else breaks = middle;
  }
  return holds;
}

function holdsAt(trial: Trial, upper: Vec3, spare: number, e: number): boolean {
  const { measured: m, path, request, least, most, stroke } = trial;
  const { requirements } = request;
  const d = 2 * e;
  const lengths = [m[AT.atDroop]!, m[AT.atRide]!, m[AT.atBump]!];
  const shortest = lengths[2]! - d;
  if (shortest <= d || spare < e) return false;
  if (lengths[0]! + d > most || shortest < least) return false;

  const used = m[AT.strokeUsed]!;
  const change = strokeChange(trial, upper, e) / stroke;
  if (used - change < requirements.strokeUsed.least || used + change > requirements.strokeUsed.most) return false;

  const ratioChange = (end: number): number => {
    const chord = (2 * d) / (2 * lengths[end]! - d);
    const speed = Math.hypot(path.velocity[3 * end]!, path.velocity[3 * end + 1]!, path.velocity[3 * end + 2]!);
    const more = path.turning[end]! * e;
    return chord * (speed + more) + more;
  };
  const [droop, ride, bump] = [ratioChange(0), ratioChange(1), ratioChange(2)];
  if (m[AT.ratioDroop]! <= droop || m[AT.ratioBump]! <= bump) return false;
  if (!path.isExact && !staysFalling(trial, upper, d)) return false;
  const ratio = m[AT.ratioRide]!;
  if (ratio - ride < requirements.motionRatio.least || ratio + ride > requirements.motionRatio.most) return false;
  if (m[AT.ratioBump]! - bump < ratio + ride - requirements.mayFall) return false;

  const turn = Math.asin(Math.min(1, d / shortest));
  if (Math.acos(Math.min(1, m[AT.cosLean]!)) + turn > requirements.lean) return false;
  if (trial.sinEye <= 1 && Math.asin(Math.min(1, m[AT.sinEye]!)) + turn > Math.asin(trial.sinEye)) return false;
  if (trial.sinOff <= 1) {
    // The line out to the mount turns too; on the spindle the path does.
    const out = path.square ? squareReach(trial) : Math.hypot(...path.velocity.subarray(6, 9));
    const other = Math.asin(Math.min(1, (path.square ? e : path.turning[2]! * e) / out));
    if (Math.asin(Math.min(1, m[AT.sinOff]!)) + turn + other > Math.asin(trial.sinOff)) return false;
  }
  return true;
}

/** Arm's length from hinge line to mount: speed over turning. */
const squareReach = ({ path }: Trial): number =>
  Math.hypot(path.velocity[6]!, path.velocity[7]!, path.velocity[8]!) / path.turning[2]!;

/** Bound of how much the stroke used changes, m. */
function strokeChange({ path, measured: m, last }: Trial, upper: Vec3, e: number): number {
  const { at } = path;
  const line = (k: number, length: number): readonly [number, number, number] => [
    (upper.x - at[3 * k]!) / length,
    (upper.y - at[3 * k + 1]!) / length,
    (upper.z - at[3 * k + 2]!) / length,
  ];
  const u = line(0, m[AT.atDroop]!);
  const w = line(last, m[AT.atBump]!);
  const between = Math.hypot(u[0] - w[0], u[1] - w[1], u[2] - w[2]);
  // The body that carries the lower mount has turned from droop to bump: its error is seen from it.
  const lower = Math.min(2, between + path.swing);
  const d = 2 * e;
  return e * between + e * lower + (d * d) / (2 * (m[AT.atBump]! - d));
}

function staysFalling({ path: { at }, last }: Trial, upper: Vec3, d: number): boolean {
  const length = (k: number): number =>
    Math.hypot(upper.x - at[3 * k]!, upper.y - at[3 * k + 1]!, upper.z - at[3 * k + 2]!);
  for (let k = 1; k <= last; k += 1) if (length(k - 1) - length(k) <= 2 * d) return false;
  return true;
}
