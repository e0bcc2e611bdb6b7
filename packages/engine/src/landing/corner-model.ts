import type { Car } from "../car/car.ts";
import { carriedPoint, carryMotion } from "../cycle/carried.ts";
import type { Corner } from "../cycle/corner.ts";
import type { TravelReport } from "../limits/travel-report.ts";
import { designState, type MotionState } from "../linkage/motion-state.ts";
import { criticalDamping, USUAL_RATIOS } from "../springs/damping.ts";
import { FAST, type GasSpring, gasAt, gasAtRest } from "../springs/gas-force.ts";
import { USUAL_TYRE_RATE } from "../springs/road-heat.ts";
import { type SpringNeed, type SpringStudy, springNeed, studySprings } from "../springs/spring-study.ts";
import { type BumpStopLaw, bumpStopAt, SOLID_RATE } from "../stops/bump-stop-law.ts";
import { lawOf } from "../stops/law-of.ts";
import { stretchOf } from "../stops/strap-stretch.ts";
import { STANDARD_GRAVITY } from "../units/convert.ts";
import { type CurvePoint, curveOf, type DamperEntry } from "./damper-curve.ts";
import { AT, NODE_SIZE, STOP_PIECES } from "./model-places.ts";

/** One corner ready for a landing: constants in a flat array, and what they were made from. */
export interface CornerModel {
  /** See `model-places.ts`. */
  readonly constants: Float64Array;
  readonly springs: SpringStudy;
  /** Gas as the car has rested with it; null without. */
  readonly gas: GasSpring | null;
  readonly stopLaw: BumpStopLaw | null;
  readonly sprungMass: number;
  readonly unsprungMass: number;
  readonly tyreRate: number;
  readonly tyreDamping: number;
  readonly damper: { readonly bump: readonly CurvePoint[]; readonly rebound: readonly CurvePoint[] };
  /** Travel where the car rests, and the two stops, m. */
  readonly rest: number;
  readonly stops: { readonly droop: number; readonly bump: number };
  /** What was put in because the document does not say it. */
  readonly assumed: readonly LandingAssumption[];
}

export interface LandingAssumption {
  readonly what: "tyre-rate" | "tyre-damping" | "damper" | "bump-stop" | "strap";
  /** N/m, N·s/m, or a share of critical; null where a whole law was put in. */
  readonly value: number | null;
}

/** From memory, no source: a tyre damps its wheel by about this share of critical. */
export const USUAL_TYRE_DAMPING = 0.05;
/** Travel between nodes of the geometry table, m. */
const NODE_STEP = 0.004;
/** So far past the stops the table goes on, where the linkage does, m: straps stretch. */
const PAST_STOPS = 0.08;
const NONE = -1;

export type LandingNeed = SpringNeed | "not-carried";

/** The model of a corner, or the first thing that is missing for one. */
export function cornerModel(of: {
  readonly car: Car;
  readonly corner: Corner;
  readonly travel: TravelReport;
}): { readonly ok: true; readonly model: CornerModel } | { readonly ok: false; readonly need: LandingNeed } {
  const need = springNeed(of.car);
  if (need) return { ok: false, need };
  const springs = studySprings(of);
  // On the bump stop or held at the strap by too stiff springs there is no rest to set out from.
  if (springs?.rest.on !== "springs") return { ok: false, need: "not-carried" };
  return { ok: true, model: makeModel(of.car, of.corner, springs) };
}

function makeModel(car: Car, corner: Corner, springs: SpringStudy): CornerModel {
  const { rest, stops, shockSpring, sprungMass } = springs;
  const unsprungMass = car.chassis.unsprungMass!;
  const assumed: LandingAssumption[] = [];
  const tyreRate = car.wheel.tyreRate ?? USUAL_TYRE_RATE;
  if (car.wheel.tyreRate === undefined) assumed.push({ what: "tyre-rate", value: tyreRate });
  const tyreDamping = 2 * USUAL_TYRE_DAMPING * Math.sqrt(tyreRate * unsprungMass);
  assumed.push({ what: "tyre-damping", value: tyreDamping });
  const damper = damperOf(car.damper, springs, assumed);
  const gas = shockSpring.gas ? gasAtRest(shockSpring.gas, shockSpring.longest - rest.state.shockLength) : null;
  const stopLaw = car.bumpStop ? lawOf(car.bumpStop) : null;
  if (car.bumpStop && !car.bumpStop.law) assumed.push({ what: "bump-stop", value: null });
  if (car.strap && !car.strap.stretch) assumed.push({ what: "strap", value: null });
  const made = {
    springs,
    gas,
    stopLaw,
    sprungMass,
    unsprungMass,
    tyreRate,
    tyreDamping,
    damper,
    rest: rest.travel,
    stops,
    assumed,
  };
  return { ...made, constants: flatten(car, corner, made) };
}

/** Shares of critical count where the car rests. */
function damperOf(entry: DamperEntry | undefined, springs: SpringStudy, assumed: LandingAssumption[]) {
  const { wheelRate, motionRatio } = springs.positions[1]!.state;
  const critical = criticalDamping(wheelRate, springs.sprungMass, motionRatio)?.atShock ?? 0;
  if (!entry) assumed.push({ what: "damper", value: null });
  const { bump, rebound } = entry ?? {
    bump: { by: "ratio", ratio: USUAL_RATIOS.bump },
    rebound: { by: "ratio", ratio: USUAL_RATIOS.rebound },
  };
  return { bump: curveOf(bump, critical), rebound: curveOf(rebound, critical) };
}

function flatten(car: Car, corner: Corner, made: Omit<CornerModel, "constants">): Float64Array {
  const { springs, gas, stopLaw, damper, stops } = made;
  const { stack, longest } = springs.shockSpring;
  const geometry = geometryTable(car, corner, stops, gas && { gas, longest });
  const numbers: number[] = new Array<number>(AT.head).fill(0);
  const put = (values: Iterable<number>): number => {
    const place = numbers.length;
    for (const value of values) numbers.push(value);
    return place;
  };
  numbers[AT.sprung] = made.sprungMass;
  numbers[AT.unsprung] = made.unsprungMass;
  numbers[AT.gravity] = STANDARD_GRAVITY;
  numbers[AT.tyreRate] = made.tyreRate;
  numbers[AT.tyreDamping] = made.tyreDamping;
  numbers[AT.first] = geometry.first;
  numbers[AT.perMetre] = 1 / geometry.step;
  numbers[AT.nodes] = geometry.nodes;
  numbers[AT.table] = put(geometry.table);
  numbers[AT.seat] = stack.preload + longest;
  for (let i = 0; i < 3; i += 1) {
    const stretch = stack.stretches[i];
    const isSolid = i === stack.stretches.length - 1;
    numbers[AT.stretches + 3 * i] = stretch?.from ?? Number.MAX_VALUE;
    numbers[AT.stretches + 3 * i + 1] = stretch?.force ?? 0;
    // Coil on coil it goes on as a solid stop does.
    numbers[AT.stretches + 3 * i + 2] = isSolid ? SOLID_RATE : (stretch?.rate ?? 0);
  }
  const curve = (points: readonly CurvePoint[]) => points.flatMap(({ speed, force }) => [speed, force]);
  numbers[AT.bumpPoints] = damper.bump.length;
  numbers[AT.bumpCurve] = put(curve(damper.bump));
  numbers[AT.reboundPoints] = damper.rebound.length;
  numbers[AT.reboundCurve] = put(curve(damper.rebound));
  numbers[AT.stopReach] = NONE;
  if (stopLaw && car.bumpStop) {
    const { stroke } = stopLaw;
    numbers[AT.stopReach] = car.bumpStop.reach;
    numbers[AT.stopStroke] = stroke;
    numbers[AT.stopPerMetre] = STOP_PIECES / stroke;
    numbers[AT.stopTable] = put(
      // A gas stop has its charge at the first touch: the table begins just after it.
      Array.from(
        { length: STOP_PIECES + 1 },
        (_, i) => bumpStopAt(stopLaw, Math.max((stroke * i) / STOP_PIECES, stroke * 1e-9)).force,
      ),
    );
    numbers[AT.stopSolid] = bumpStopAt(stopLaw, stroke).force;
    numbers[AT.stopSolidRate] = SOLID_RATE;
  }
  numbers[AT.strapLength] = NONE;
  if (car.strap) {
    const { length } = car.strap;
    const points = stretchOf(car.strap);
    numbers[AT.strapLength] = length;
    numbers[AT.strapPoints] = points.length;
    numbers[AT.strapCurve] = put(points.flatMap(({ at, force }) => [at * length, force]));
  }
  numbers[AT.shortest] = car.shock!.shortest;
  numbers[AT.longest] = longest;
  numbers[AT.endRate] = SOLID_RATE;
  return Float64Array.from(numbers);
}

/** Lengths and gas force with their exact slopes at even travels: between nodes a cubic, smooth across them. */
function geometryTable(
  car: Car,
  corner: Corner,
  stops: CornerModel["stops"],
  charged: { readonly gas: GasSpring; readonly longest: number } | null,
) {
  const { mechanism, arms, wheelCentre } = corner;
  const low = Math.max(stops.droop - PAST_STOPS, mechanism.range.droop.travel + NODE_STEP / 4);
  const high = Math.min(stops.bump + PAST_STOPS, mechanism.range.bump.travel - NODE_STEP / 4);
  const nodes = Math.max(8, Math.ceil((high - low) / NODE_STEP) + 1);
  const step = (high - low) / (nodes - 1);
  const carry = (mount: Parameters<typeof carriedPoint>[0]) => carriedPoint(mount, arms, wheelCentre);
  const pairs = [car.shock, car.strap, car.bumpStop && { upper: car.bumpStop.base, lower: car.bumpStop.strikes }].map(
    (part) => part && ([carry(part.upper), carry(part.lower)] as const),
  );
  const table = new Float64Array(nodes * NODE_SIZE);
  const state = designState();
  for (let i = 0; i < nodes; i += 1) {
    mechanism.solve(low + i * step, state);
    pairs.forEach((pair, k) => {
      if (pair) writeLength(pair, state, table, i * NODE_SIZE + 2 * k);
    });
    if (charged) {
      const at = i * NODE_SIZE;
      const { force, rate } = gasAt(charged.gas, charged.longest - table[at]!, FAST);
      table[at + 6] = force;
      table[at + 7] = -rate * table[at + 1]!;
    }
  }
  return { first: low, step, nodes, table };
}

const a = new Float64Array(9);
const b = new Float64Array(9);

type Pair = readonly [ReturnType<typeof carriedPoint>, ReturnType<typeof carriedPoint>];

function writeLength([upper, lower]: Pair, state: MotionState, out: Float64Array, at: number): void {
  carryMotion(upper, state, a);
  carryMotion(lower, state, b);
  const dx = a[0]! - b[0]!;
  const dy = a[1]! - b[1]!;
  const dz = a[2]! - b[2]!;
  const length = Math.sqrt(dx * dx + dy * dy + dz * dz);
  out[at] = length;
  out[at + 1] = (dx * (a[3]! - b[3]!) + dy * (a[4]! - b[4]!) + dz * (a[5]! - b[5]!)) / length;
}
