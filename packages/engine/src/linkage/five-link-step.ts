// Written by tools/generate-elimination.mjs; do not edit by hand.
import type { FiveLinkConstants } from "./five-link-constants.ts";
import { type MotionState, AT as STATE_PLACES } from "./motion-state.ts";

// A local copy: its numbers are then constants to the compiler, where an imported object is looked up at run time.
const AT = STATE_PLACES;

/** How a step ended. Far: only the step is written. Singular: a pivot is too small and nothing is to be used. */
export const STEP = { far: 0, close: 1, singular: -1 } as const;
export type StepEnd = (typeof STEP)[keyof typeof STEP];

/** The lengths agree to this before the last step, as (L² − |d|²)/2, m². */
export const CLOSE_ENOUGH = 1e-11;
/** Below this a pivot (m or m²) is too small to divide by safely without an exchange of rows. */
const LEAST_PIVOT = 1e-5;

/**
 * One step of Newton's method from the state's rotation and wheel centre, its height held. Writes into `out`, five numbers
 * each (x and y of the wheel centre, rotation vector): the step, and where the lengths already are close, the first and
 * second derivative by travel. Gaussian elimination without exchange of rows.
 */
export function stepFiveLink(five: FiveLinkConstants, s: MotionState, out: Float64Array): StepEnd {
  const { inner, arm, halfSquare } = five;
  const t0 = s[AT.rotation + 0]!;
  const t1 = s[AT.rotation + 1]!;
  const t2 = s[AT.rotation + 2]!;
  const t3 = s[AT.rotation + 3]!;
  const t4 = s[AT.rotation + 4]!;
  const t5 = s[AT.rotation + 5]!;
  const t6 = s[AT.rotation + 6]!;
  const t7 = s[AT.rotation + 7]!;
  const t8 = s[AT.rotation + 8]!;
  const x = s[AT.wheelCentre]!;
  const y = s[AT.wheelCentre + 1]!;
  const z = s[AT.wheelCentre + 2]!;
  const b0x = arm[0]!;
  const b0y = arm[1]!;
  const b0z = arm[2]!;
  const r0x = t0 * b0x + t1 * b0y + t2 * b0z;
  const d0x = x + r0x - inner[0]!;
  const r0y = t3 * b0x + t4 * b0y + t5 * b0z;
  const d0y = y + r0y - inner[1]!;
  const r0z = t6 * b0x + t7 * b0y + t8 * b0z;
  const d0z = z + r0z - inner[2]!;
  const m00 = d0x;
  const m01 = d0y;
  const m02 = r0y * d0z - r0z * d0y;
  const m03 = r0z * d0x - r0x * d0z;
  const m04 = r0x * d0y - r0y * d0x;
  let a0 = halfSquare[0]! - 0.5 * (d0x * d0x + d0y * d0y + d0z * d0z);
  const b1x = arm[3]!;
  const b1y = arm[4]!;
  const b1z = arm[5]!;
  const r1x = t0 * b1x + t1 * b1y + t2 * b1z;
  const d1x = x + r1x - inner[3]!;
  const r1y = t3 * b1x + t4 * b1y + t5 * b1z;
  const d1y = y + r1y - inner[4]!;
  const r1z = t6 * b1x + t7 * b1y + t8 * b1z;
  const d1z = z + r1z - inner[5]!;
  const m10 = d1x;
  let m11 = d1y;
  let m12 = r1y * d1z - r1z * d1y;
  let m13 = r1z * d1x - r1x * d1z;
  let m14 = r1x * d1y - r1y * d1x;
  let a1 = halfSquare[1]! - 0.5 * (d1x * d1x + d1y * d1y + d1z * d1z);
  const b2x = arm[6]!;
  const b2y = arm[7]!;
  const b2z = arm[8]!;
  const r2x = t0 * b2x + t1 * b2y + t2 * b2z;
  const d2x = x + r2x - inner[6]!;
  const r2y = t3 * b2x + t4 * b2y + t5 * b2z;
  const d2y = y + r2y - inner[7]!;
  const r2z = t6 * b2x + t7 * b2y + t8 * b2z;
  const d2z = z + r2z - inner[8]!;
  const m20 = d2x;
  let m21 = d2y;
  let m22 = r2y * d2z - r2z * d2y;
  let m23 = r2z * d2x - r2x * d2z;
  let m24 = r2x * d2y - r2y * d2x;
  let a2 = halfSquare[2]! - 0.5 * (d2x * d2x + d2y * d2y + d2z * d2z);
  const b3x = arm[9]!;
  const b3y = arm[10]!;
  const b3z = arm[11]!;
  const r3x = t0 * b3x + t1 * b3y + t2 * b3z;
  const d3x = x + r3x - inner[9]!;
  const r3y = t3 * b3x + t4 * b3y + t5 * b3z;
  const d3y = y + r3y - inner[10]!;
  const r3z = t6 * b3x + t7 * b3y + t8 * b3z;
  const d3z = z + r3z - inner[11]!;
  const m30 = d3x;
  let m31 = d3y;
  let m32 = r3y * d3z - r3z * d3y;
  let m33 = r3z * d3x - r3x * d3z;
  let m34 = r3x * d3y - r3y * d3x;
  let a3 = halfSquare[3]! - 0.5 * (d3x * d3x + d3y * d3y + d3z * d3z);
  const b4x = arm[12]!;
  const b4y = arm[13]!;
  const b4z = arm[14]!;
  const r4x = t0 * b4x + t1 * b4y + t2 * b4z;
  const d4x = x + r4x - inner[12]!;
  const r4y = t3 * b4x + t4 * b4y + t5 * b4z;
  const d4y = y + r4y - inner[13]!;
  const r4z = t6 * b4x + t7 * b4y + t8 * b4z;
  const d4z = z + r4z - inner[14]!;
  const m40 = d4x;
  let m41 = d4y;
  let m42 = r4y * d4z - r4z * d4y;
  let m43 = r4z * d4x - r4x * d4z;
  let m44 = r4x * d4y - r4y * d4x;
  let a4 = halfSquare[4]! - 0.5 * (d4x * d4x + d4y * d4y + d4z * d4z);
  const close =
    Math.abs(a0) < CLOSE_ENOUGH &&
    Math.abs(a1) < CLOSE_ENOUGH &&
    Math.abs(a2) < CLOSE_ENOUGH &&
    Math.abs(a3) < CLOSE_ENOUGH &&
    Math.abs(a4) < CLOSE_ENOUGH;
  if (!(Math.abs(m00) > LEAST_PIVOT)) return STEP.singular;
  const per0 = 1 / m00;
  const f10 = m10 * per0;
  m11 -= f10 * m01;
  m12 -= f10 * m02;
  m13 -= f10 * m03;
  m14 -= f10 * m04;
  const f20 = m20 * per0;
  m21 -= f20 * m01;
  m22 -= f20 * m02;
  m23 -= f20 * m03;
  m24 -= f20 * m04;
  const f30 = m30 * per0;
  m31 -= f30 * m01;
  m32 -= f30 * m02;
  m33 -= f30 * m03;
  m34 -= f30 * m04;
  const f40 = m40 * per0;
  m41 -= f40 * m01;
  m42 -= f40 * m02;
  m43 -= f40 * m03;
  m44 -= f40 * m04;
  if (!(Math.abs(m11) > LEAST_PIVOT)) return STEP.singular;
  const per1 = 1 / m11;
  const f21 = m21 * per1;
  m22 -= f21 * m12;
  m23 -= f21 * m13;
  m24 -= f21 * m14;
  const f31 = m31 * per1;
  m32 -= f31 * m12;
  m33 -= f31 * m13;
  m34 -= f31 * m14;
  const f41 = m41 * per1;
  m42 -= f41 * m12;
  m43 -= f41 * m13;
  m44 -= f41 * m14;
  if (!(Math.abs(m22) > LEAST_PIVOT)) return STEP.singular;
  const per2 = 1 / m22;
  const f32 = m32 * per2;
  m33 -= f32 * m23;
  m34 -= f32 * m24;
  const f42 = m42 * per2;
  m43 -= f42 * m23;
  m44 -= f42 * m24;
  if (!(Math.abs(m33) > LEAST_PIVOT)) return STEP.singular;
  const per3 = 1 / m33;
  const f43 = m43 * per3;
  m44 -= f43 * m34;
  if (!(Math.abs(m44) > LEAST_PIVOT)) return STEP.singular;
  const per4 = 1 / m44;
  a1 -= f10 * a0;
  a2 -= f20 * a0;
  a3 -= f30 * a0;
  a4 -= f40 * a0;
  a2 -= f21 * a1;
  a3 -= f31 * a1;
  a4 -= f41 * a1;
  a3 -= f32 * a2;
  a4 -= f42 * a2;
  a4 -= f43 * a3;
  a4 = a4 * per4;
  a3 = (a3 - m34 * a4) * per3;
  a2 = (a2 - m23 * a3 - m24 * a4) * per2;
  a1 = (a1 - m12 * a2 - m13 * a3 - m14 * a4) * per1;
  a0 = (a0 - m01 * a1 - m02 * a2 - m03 * a3 - m04 * a4) * per0;
  out[0] = a0;
  out[1] = a1;
  out[2] = a2;
  out[3] = a3;
  out[4] = a4;
  if (!close) return STEP.far;
  // Rates by travel: the height's own column is the right-hand side.
  let v0 = -d0z;
  let v1 = -d1z;
  let v2 = -d2z;
  let v3 = -d3z;
  let v4 = -d4z;
  v1 -= f10 * v0;
  v2 -= f20 * v0;
  v3 -= f30 * v0;
  v4 -= f40 * v0;
  v2 -= f21 * v1;
  v3 -= f31 * v1;
  v4 -= f41 * v1;
  v3 -= f32 * v2;
  v4 -= f42 * v2;
  v4 -= f43 * v3;
  v4 = v4 * per4;
  v3 = (v3 - m34 * v4) * per3;
  v2 = (v2 - m23 * v3 - m24 * v4) * per2;
  v1 = (v1 - m12 * v2 - m13 * v3 - m14 * v4) * per1;
  v0 = (v0 - m01 * v1 - m02 * v2 - m03 * v3 - m04 * v4) * per0;
  out[5] = v0;
  out[6] = v1;
  out[7] = v2;
  out[8] = v3;
  out[9] = v4;
  // Second derivatives: −(|v|² + d·(ω×(ω×r))) of each spindle end, v its velocity.
  const c0x = v3 * r0z - v4 * r0y;
  const c0y = v4 * r0x - v2 * r0z;
  const c0z = v2 * r0y - v3 * r0x;
  const e0x = v0 + c0x;
  const e0y = v1 + c0y;
  const e0z = 1 + c0z;
  let w0 = -(
    e0x * e0x +
    e0y * e0y +
    e0z * e0z +
    d0x * (v3 * c0z - v4 * c0y) +
    d0y * (v4 * c0x - v2 * c0z) +
    d0z * (v2 * c0y - v3 * c0x)
  );
  const c1x = v3 * r1z - v4 * r1y;
  const c1y = v4 * r1x - v2 * r1z;
  const c1z = v2 * r1y - v3 * r1x;
  const e1x = v0 + c1x;
  const e1y = v1 + c1y;
  const e1z = 1 + c1z;
  let w1 = -(
    e1x * e1x +
    e1y * e1y +
    e1z * e1z +
    d1x * (v3 * c1z - v4 * c1y) +
    d1y * (v4 * c1x - v2 * c1z) +
    d1z * (v2 * c1y - v3 * c1x)
  );
  const c2x = v3 * r2z - v4 * r2y;
  const c2y = v4 * r2x - v2 * r2z;
  const c2z = v2 * r2y - v3 * r2x;
  const e2x = v0 + c2x;
  const e2y = v1 + c2y;
  const e2z = 1 + c2z;
  let w2 = -(
    e2x * e2x +
    e2y * e2y +
    e2z * e2z +
    d2x * (v3 * c2z - v4 * c2y) +
    d2y * (v4 * c2x - v2 * c2z) +
    d2z * (v2 * c2y - v3 * c2x)
  );
  const c3x = v3 * r3z - v4 * r3y;
  const c3y = v4 * r3x - v2 * r3z;
  const c3z = v2 * r3y - v3 * r3x;
  const e3x = v0 + c3x;
  const e3y = v1 + c3y;
  const e3z = 1 + c3z;
  let w3 = -(
    e3x * e3x +
    e3y * e3y +
    e3z * e3z +
    d3x * (v3 * c3z - v4 * c3y) +
    d3y * (v4 * c3x - v2 * c3z) +
    d3z * (v2 * c3y - v3 * c3x)
  );
  const c4x = v3 * r4z - v4 * r4y;
  const c4y = v4 * r4x - v2 * r4z;
  const c4z = v2 * r4y - v3 * r4x;
  const e4x = v0 + c4x;
  const e4y = v1 + c4y;
  const e4z = 1 + c4z;
  let w4 = -(
    e4x * e4x +
    e4y * e4y +
    e4z * e4z +
    d4x * (v3 * c4z - v4 * c4y) +
    d4y * (v4 * c4x - v2 * c4z) +
    d4z * (v2 * c4y - v3 * c4x)
  );
  w1 -= f10 * w0;
  w2 -= f20 * w0;
  w3 -= f30 * w0;
  w4 -= f40 * w0;
  w2 -= f21 * w1;
  w3 -= f31 * w1;
  w4 -= f41 * w1;
  w3 -= f32 * w2;
  w4 -= f42 * w2;
  w4 -= f43 * w3;
  w4 = w4 * per4;
  w3 = (w3 - m34 * w4) * per3;
  w2 = (w2 - m23 * w3 - m24 * w4) * per2;
  w1 = (w1 - m12 * w2 - m13 * w3 - m14 * w4) * per1;
  w0 = (w0 - m01 * w1 - m02 * w2 - m03 * w3 - m04 * w4) * per0;
  out[10] = w0;
  out[11] = w1;
  out[12] = w2;
  out[13] = w3;
  out[14] = w4;
  return STEP.close;
}
