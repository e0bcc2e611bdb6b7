import { STOP_PIECES as PIECES, AT as PLACES, NODE_SIZE as SIZE } from "./model-places.ts";

// Local copies: numbers are then constants to the compiler, where an imported object is looked up at run time.
const AT = PLACES;
const NODE_SIZE = SIZE;
const STOP_PIECES = PIECES;

/** What `suspensionForces` and `cornerRates` write. */
export const OUT = {
  /** Accelerations of body and wheel, m/s². */
  body: 0,
  wheel: 1,
  /** Turned into heat in the damper, and in the tyre less what the road puts in, W. */
  damperPower: 2,
  tyrePower: 3,
  /** N */
  tyreForce: 4,
  /** Along the shock: springs and gas, and the damper; compression positive, N. */
  springForce: 5,
  damperForce: 6,
  stopForce: 7,
  strapForce: 8,
  /** Up on the body at the wheel, N: everything between the two. */
  atWheel: 9,
  /** m, and m/s, positive when it is going in. */
  shockLength: 10,
  shockSpeed: 11,
  /** How far the stop is squeezed, m; past its stroke when solid. */
  stopSqueeze: 12,
  /** How far the shock is past one of its own ends, m: in positive, out negative. */
  pastEnd: 13,
} as const;
const O = OUT;

/** Numbers that come out. */
export const OUT_SIZE = 14;

/**
 * Places of what goes in, after those that come out: a function that is called so often takes its numbers from an array,
 * since each number handed over by name may cost an allocation.
 */
export const IN = {
  travel: 14,
  rate: 15,
  body: 16,
  bodySpeed: 17,
  wheel: 18,
  wheelSpeed: 19,
  road: 20,
  roadRate: 21,
  /** Only the road asks for it, s. */
  time: 22,
} as const;
const I = IN;

/** Numbers of both, in one array. */
export const WORK_SIZE = 23;

/** `writeForces` with its two numbers by name: travel m, rate m/s. */
export function suspensionForces(P: Float64Array, travel: number, rate: number, work: Float64Array): void {
  work[I.travel] = travel;
  work[I.rate] = rate;
  writeForces(P, work);
}

/**
 * Everything between wheel and body at a travel z (m) and its rate (m/s), by virtual work: each force times the change of
 * its own length by travel. `| 0` keeps places whole numbers to the compiler. Lengths from cubics between the table's nodes, straight on past its ends.
 */
export function writeForces(P: Float64Array, out: Float64Array): void {
  const z = out[I.travel]!;
  const rate = out[I.rate]!;
  const nodes = P[AT.nodes]! | 0;
  const perMetre = P[AT.perMetre]!;
  const u = (z - P[AT.first]!) * perMetre;
  let index = Math.floor(u) | 0;
  if (index < 0) index = 0;
  if (index > nodes - 2) index = nodes - 2;
  let s = u - index;
  let over = 0;
  if (s < 0) {
    over = s;
    s = 0;
  } else if (s > 1) {
    over = s - 1;
    s = 1;
  }
  const n = (P[AT.table]! | 0) + index * NODE_SIZE;
  const h = 1 / perMetre;
  const s1 = s - 1;
  // Hermite's cubics: values, and their slopes by s.
  const h00 = (1 + 2 * s) * s1 * s1;
  const h10 = s * s1 * s1 * h;
  const h01 = s * s * (3 - 2 * s);
  const h11 = s * s * s1 * h;
  const d00 = 6 * s * s1 * perMetre;
  const d10 = s1 * (3 * s - 1);
  const d11 = s * (3 * s - 2);
  const far = over * h;
  const lengthSlope = d00 * (P[n]! - P[n + 8]!) + d10 * P[n + 1]! + d11 * P[n + 9]!;
  const length = h00 * P[n]! + h10 * P[n + 1]! + h01 * P[n + 8]! + h11 * P[n + 9]! + far * lengthSlope;

  // Springs: stretches of constant rate. Pushing out.
  const squeezed = P[AT.seat]! - length;
  let spring = 0;
  if (squeezed > 0) {
    let k = AT.stretches;
    if (squeezed >= P[k + 3]!) k += 3;
    if (squeezed >= P[k + 3]! && k < AT.stretches + 6) k += 3;
    spring = P[k + 1]! + P[k + 2]! * (squeezed - P[k]!);
  }
  // Gas, fast, from the table too: a power costs as much as all the rest.
  spring += h00 * P[n + 6]! + h10 * P[n + 7]! + h01 * P[n + 14]! + h11 * P[n + 15]!;
  // The shock's own ends.
  let past = 0;
  if (length < P[AT.shortest]!) past = P[AT.shortest]! - length;
  else if (length > P[AT.longest]!) past = P[AT.longest]! - length;
  const end = P[AT.endRate]! * past;

  // Damper: straight lines through its points.
  const speed = -lengthSlope * rate;
  const isIn = speed >= 0;
  const size = isIn ? speed : -speed;
  const points = (isIn ? P[AT.bumpPoints]! : P[AT.reboundPoints]!) | 0;
  let c = (isIn ? P[AT.bumpCurve]! : P[AT.reboundCurve]!) | 0;
  let fromSpeed = 0;
  let fromForce = 0;
  let slope = 0;
  for (let i = 0; i < points; i += 1) {
    const toSpeed = P[c]!;
    if (toSpeed > fromSpeed) {
      slope = (P[c + 1]! - fromForce) / (toSpeed - fromSpeed);
      if (size <= toSpeed) break;
      fromSpeed = toSpeed;
      fromForce = P[c + 1]!;
    }
    c += 2;
  }
  let damper = fromForce + slope * (size - fromSpeed);
  if (!isIn) damper = -damper;

  let atWheel = -lengthSlope * (spring + end + damper);

  // Bump stop: a table until solid, then its solid rate.
  let stop = 0;
  let squeeze = 0;
  if (P[AT.stopReach]! >= 0) {
    const gapSlope = d00 * (P[n + 4]! - P[n + 12]!) + d10 * P[n + 5]! + d11 * P[n + 13]!;
    const gap = h00 * P[n + 4]! + h10 * P[n + 5]! + h01 * P[n + 12]! + h11 * P[n + 13]! + far * gapSlope;
    squeeze = P[AT.stopReach]! - gap;
    if (squeeze > 0) {
      const stroke = P[AT.stopStroke]!;
      if (squeeze >= stroke) stop = P[AT.stopSolid]! + P[AT.stopSolidRate]! * (squeeze - stroke);
      else {
        const v = squeeze * P[AT.stopPerMetre]!;
        let piece = Math.floor(v) | 0;
        if (piece > STOP_PIECES - 1) piece = STOP_PIECES - 1;
        const p = (P[AT.stopTable]! | 0) + piece;
        stop = P[p]! + (v - piece) * (P[p + 1]! - P[p]!);
      }
      atWheel -= gapSlope * stop;
    }
  }
  // Strap: straight lines through its points, pulling.
  let strap = 0;
  const taut = P[AT.strapLength]!;
  if (taut >= 0) {
    const apartSlope = d00 * (P[n + 2]! - P[n + 10]!) + d10 * P[n + 3]! + d11 * P[n + 11]!;
    const apart = h00 * P[n + 2]! + h10 * P[n + 3]! + h01 * P[n + 10]! + h11 * P[n + 11]! + far * apartSlope;
    const stretch = apart - taut;
    if (stretch > 0) {
      let q = P[AT.strapCurve]! | 0;
      const count = P[AT.strapPoints]! | 0;
      let fromAt = 0;
      let fromPull = 0;
      let pullRate = 0;
      for (let i = 0; i < count; i += 1) {
        const to = P[q]!;
        if (to > fromAt) {
          pullRate = (P[q + 1]! - fromPull) / (to - fromAt);
          if (stretch <= to) break;
          fromAt = to;
          fromPull = P[q + 1]!;
        }
        q += 2;
      }
      strap = fromPull + pullRate * (stretch - fromAt);
      atWheel += apartSlope * strap;
    }
  }
  out[O.damperPower] = damper * speed;
  out[O.springForce] = spring + end;
  out[O.damperForce] = damper;
  out[O.stopForce] = stop;
  out[O.strapForce] = strap;
  out[O.atWheel] = atWheel;
  out[O.shockLength] = length;
  out[O.shockSpeed] = speed;
  out[O.stopSqueeze] = squeeze;
  out[O.pastEnd] = past;
}

/**
 * Accelerations of body and wheel of one corner. Heights count up, m: `body` against where it is with the wheel on flat
 * ground, tyre just touching, and travel 0; `wheel` is that of the tyre's lowest point, unloaded; `road` that of the ground
 * under it, with its rate. The tyre pushes with k·δ + c·δ′ while it is pressed in (δ > 0), and never pulls. `isDown` false: in
 * the air, whatever the heights say; a solver that steps up to the touchdown needs it, because the damping makes a jump there.
 */
export function writeRates(P: Float64Array, out: Float64Array, isDown: boolean): void {
  const wheel = out[I.wheel]!;
  const wheelSpeed = out[I.wheelSpeed]!;
  const roadRate = out[I.roadRate]!;
  out[I.travel] = wheel - out[I.body]!;
  out[I.rate] = wheelSpeed - out[I.bodySpeed]!;
  writeForces(P, out);
  const pressed = out[I.road]! - wheel;
  let tyre = 0;
  let lost = 0;
  if (isDown && pressed > 0) {
    const pressing = roadRate - wheelSpeed;
    const elastic = P[AT.tyreRate]! * pressed;
    tyre = elastic + P[AT.tyreDamping]! * pressing;
    if (tyre < 0) tyre = 0;
    lost = (tyre - elastic) * pressing - tyre * roadRate;
  }
  const atWheel = out[O.atWheel]!;
  const g = P[AT.gravity]!;
  out[O.body] = atWheel / P[AT.sprung]! - g;
  out[O.wheel] = (tyre - atWheel) / P[AT.unsprung]! - g;
  out[O.tyreForce] = tyre;
  out[O.tyrePower] = lost;
}
