import type { Corner } from "../cycle/corner.ts";
import type { CornerModel } from "./corner-model.ts";
import { OUT } from "./corner-rates.ts";
import { suspensionEnergy, tyreEnergy } from "./landing-energy.ts";
import { AT } from "./model-places.ts";
import { type Road, roadAt } from "./road.ts";
import { STEP, STEP_SIZE } from "./run-corner.ts";

/** One corner's landing: how it went over time, and the worst of it. SI. */
export interface Landing {
  readonly history: LandingHistory;
  readonly peaks: LandingPeaks;
  /** Farthest travels, m from the design position. */
  readonly travel: { readonly bump: number; readonly droop: number };
  /** Times that the bump stop went solid, or the shock met its own end where it came first. */
  readonly bottomings: number;
  readonly stopTouches: number;
  readonly strapSnatches: number;
  /** Times that the tyre left the ground, and for how long in all, s. */
  readonly flights: number;
  readonly airTime: number;
  /** How far the tyre was pressed in at most, m. */
  readonly tyrePressed: number;
  readonly damper: {
    /** J, over the whole event, and W on average. */
    readonly work: number;
    readonly meanPower: number;
  };
  readonly energy: EnergyBalance;
}

export interface LandingHistory {
  /** s; the solver's own steps, none longer than 2 ms. */
  readonly time: Float64Array;
  readonly travel: Float64Array;
  readonly bodyHeight: Float64Array;
  readonly wheelHeight: Float64Array;
  readonly wheelLoad: Float64Array;
  /** Springs, gas and damper together, compression positive. */
  readonly shockForce: Float64Array;
  /** Positive going in. */
  readonly shockSpeed: Float64Array;
  readonly stopForce: Float64Array;
  readonly strapForce: Float64Array;
  /** Of the body over the wheel, up positive, gravity not counted. */
  readonly bodyAcceleration: Float64Array;
}

export interface Peak {
  readonly value: number;
  /** s */
  readonly time: number;
  /** Where the wheel is then, m. */
  readonly travel: number;
}

export interface LandingPeaks {
  readonly wheelLoad: Peak;
  readonly shockForce: Peak;
  readonly shockSpeedIn: Peak;
  readonly shockSpeedOut: Peak;
  readonly stopForce: Peak;
  readonly strapForce: Peak;
  readonly bodyAcceleration: Peak;
}

export interface EnergyBalance {
  /** Kinetic, height and stored energy at the start less that at the end, J. */
  readonly given: number;
  /** Into damper and tyre, less what a moving road put in, J. */
  readonly taken: number;
  /** Largest mismatch on the way as a share of the largest energy that moved; null where the wheel left the linkage's range. */
  readonly off: number | null;
}

const COUNTED_FORCE = 1;

/** Reads a corner's path as a landing. */
export function readLanding(
  corner: Corner,
  model: CornerModel,
  road: Road | null,
  path: Float64Array,
  steps: number,
): Landing {
  const column = (place: number): Float64Array =>
    Float64Array.from({ length: steps }, (_, i) => path[i * STEP_SIZE + place]!);
  const out = (place: number): Float64Array => column(STEP.out + place);
  const time = column(STEP.time);
  const body = column(STEP.body);
  const wheel = column(STEP.wheel);
  const travel = wheel.map((w, i) => w - body[i]!);
  const spring = out(OUT.springForce);
  const damper = out(OUT.damperForce);
  const history: LandingHistory = {
    time,
    travel,
    bodyHeight: body,
    wheelHeight: wheel,
    wheelLoad: out(OUT.tyreForce),
    shockForce: spring.map((force, i) => force + damper[i]!),
    shockSpeed: out(OUT.shockSpeed),
    stopForce: out(OUT.stopForce),
    strapForce: out(OUT.strapForce),
    bodyAcceleration: out(OUT.body),
  };
  const squeeze = out(OUT.stopSqueeze);
  const pastEnd = out(OUT.pastEnd);
  const stroke = model.stopLaw?.stroke ?? Number.POSITIVE_INFINITY;
  const load = history.wheelLoad;
  const span = time[steps - 1]! - time[0]!;
  const work = path[(steps - 1) * STEP_SIZE + STEP.damperWork]!;
  return {
    history,
    peaks: peaksOf(history),
    travel: { bump: travel.reduce((a, b) => Math.max(a, b)), droop: travel.reduce((a, b) => Math.min(a, b)) },
    bottomings: bottomingsIn(time, (i) => squeeze[i]! >= stroke || pastEnd[i]! > 0),
    stopTouches: begins(steps, (i) => history.stopForce[i]! > COUNTED_FORCE),
    strapSnatches: begins(steps, (i) => history.strapForce[i]! > COUNTED_FORCE),
    flights: begins(steps, (i) => load[i]! === 0),
    airTime: time.reduce((sum, t, i) => (i > 0 && load[i]! === 0 ? sum + t - time[i - 1]! : sum), 0),
    tyrePressed: mostPressed(road, time, wheel, load),
    damper: { work, meanPower: span > 0 ? work / span : 0 },
    energy: balanceOf(corner, model, road, path, steps),
  };
}

function peaksOf(history: LandingHistory): LandingPeaks {
  const peak = (values: Float64Array, sign = 1): Peak => {
    let at = 0;
    for (let i = 1; i < values.length; i += 1) if (sign * values[i]! > sign * values[at]!) at = i;
    return { value: Math.max(0, sign * values[at]!), time: history.time[at]!, travel: history.travel[at]! };
  };
  return {
    wheelLoad: peak(history.wheelLoad),
    shockForce: peak(history.shockForce),
    shockSpeedIn: peak(history.shockSpeed),
    shockSpeedOut: peak(history.shockSpeed, -1),
    stopForce: peak(history.stopForce),
    strapForce: peak(history.strapForce),
    bodyAcceleration: peak(history.bodyAcceleration),
  };
}

/** How many times something begins to hold. What holds at the start counts. */
function begins(steps: number, holds: (step: number) => boolean): number {
  let count = 0;
  for (let i = 0; i < steps; i += 1) if (holds(i) && (i === 0 || !holds(i - 1))) count += 1;
  return count;
}

/** Solid again within this time is the same blow, s. */
const SAME_BLOW = 0.05;

function bottomingsIn(time: Float64Array, isSolid: (step: number) => boolean): number {
  let count = 0;
  let last = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < time.length; i += 1) {
    if (!isSolid(i)) continue;
    if (time[i]! - last > SAME_BLOW) count += 1;
    last = time[i]!;
  }
  return count;
}

function mostPressed(road: Road | null, time: Float64Array, wheel: Float64Array, load: Float64Array): number {
  const ground = new Float64Array(2);
  let most = 0;
  for (let i = 0; i < time.length; i += 1) {
    if (road) roadAt(road, time[i]!, ground);
    if (load[i]! > 0) most = Math.max(most, ground[0]! - wheel[i]!);
  }
  return most;
}

/** So many places on the way are looked at. */
const LOOKS = 60;

function balanceOf(
  corner: Corner,
  model: CornerModel,
  road: Road | null,
  path: Float64Array,
  steps: number,
): EnergyBalance {
  const ground = new Float64Array(2);
  const { sprungMass, unsprungMass } = model;
  const g = model.constants[AT.gravity]!;
  const at = (i: number) => {
    const [time, body, bodySpeed, wheel, wheelSpeed, damperWork, tyreWork] = path.subarray(i * STEP_SIZE);
    if (road) roadAt(road, time!, ground);
    const stored = suspensionEnergy(corner, model, wheel! - body!);
    if (stored === null) return null;
    const kinetic = (sprungMass * bodySpeed! ** 2 + unsprungMass * wheelSpeed! ** 2) / 2;
    const height = g * (sprungMass * body! + unsprungMass * wheel!);
    return {
      energy: kinetic + height + stored + tyreEnergy(model, ground[0]! - wheel!),
      taken: damperWork! + tyreWork!,
      kinetic,
    };
  };
  const first = at(0);
  const last = at(steps - 1);
  if (!first || !last) return { given: 0, taken: path[(steps - 1) * STEP_SIZE + STEP.damperWork]!, off: null };
  let worst = 0;
  let moved = 0;
  for (let k = 1; k <= LOOKS; k += 1) {
    const here = at(Math.round(((steps - 1) * k) / LOOKS));
    if (!here) return { given: first.energy - last.energy, taken: last.taken, off: null };
    moved = Math.max(moved, here.kinetic, Math.abs(here.taken));
    worst = Math.max(worst, Math.abs(first.energy - here.energy - here.taken));
  }
  return { given: first.energy - last.energy, taken: last.taken, off: moved > 0 ? worst / moved : 0 };
}
