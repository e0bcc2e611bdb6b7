import type { HArmLinkage } from "../car/car.ts";
import { placePoint } from "../geometry/pose.ts";
import { cross, dot, midpoint, squareTo, subtract, unit, type Vec3 } from "../geometry/vec3.ts";
import { liftingAxis, reachDirection } from "./arm-axis.ts";
import {
  type Branches,
  type DrivenPosition,
  type DrivenStretch,
  drivenRange,
  findDrivenRange,
} from "./driven-range.ts";
import type { AdjustedLinkage, Lengths, LinkageKind, Mechanism } from "./kind.ts";
import { type MotionState, AT as STATE_PLACES } from "./motion-state.ts";
import { armTube, givenLength, hingePivots, linkPivots, linkTube } from "./parts.ts";
import { screwedEnd, screwRound, turnbuckle } from "./screw.ts";

// A local copy: its numbers are then constants to the compiler, where an imported object is looked up at run time.
const AT = STATE_PLACES;

/**
 * H-arm: the lower arm turns by α about its chassis line, the spindle by β about the arm's outer line, and the upper
 * link's length ties β to α by one trigonometric equation P cos β + Q sin β = S, solved in closed form. Only the arm
 * angle that belongs to a wheel height is found by iteration (Halley's method, from a second-order prediction).
 */
export const hArm: LinkageKind<HArmLinkage> = {
  kind: "h-arm",
  title: "H-arm and upper link",
  arms: ({ lowerArm }) => [
    { body: "lower-arm", ...liftingAxis(lowerArm.innerFront, lowerArm.innerRear, lowerArm.outerFront) },
  ],
  members: ({ lowerArm: arm, upperLink: link }) => [
    armTube("lowerArm.front", "lower arm, front tube", "lower-arm", arm.innerFront, arm.outerFront, arm.diameter),
    armTube("lowerArm.rear", "lower arm, rear tube", "lower-arm", arm.innerRear, arm.outerRear, arm.diameter),
    linkTube("upperLink", "upper link", link),
  ],
  pivots: ({ lowerArm: arm, upperLink: link }) => [
    ...hingePivots(
      "lower-arm",
      "chassis",
      { id: "lowerArm.innerFront", label: "lower arm, inner front", point: arm.innerFront },
      { id: "lowerArm.innerRear", label: "lower arm, inner rear", point: arm.innerRear },
    ),
    ...hingePivots(
      "lower-arm",
      "spindle",
      { id: "lowerArm.outerFront", label: "lower arm, outer front", point: arm.outerFront },
      { id: "lowerArm.outerRear", label: "lower arm, outer rear", point: arm.outerRear },
    ),
    ...linkPivots("upperLink", "upper link", link),
  ],
  adjusters: () => [
    turnbuckle("upperLink", "upper link"),
    screwedEnd("lowerArm.outerFront", "lower arm, outer front end"),
    screwedEnd("lowerArm.outerRear", "lower arm, outer rear end"),
    screwedEnd("lowerArm.innerFront", "lower arm, inner front end"),
    screwedEnd("lowerArm.innerRear", "lower arm, inner rear end"),
  ],
  adjust: adjustHArm,
  mechanism: hArmMechanism,
};

/** Constants of one H-arm; every quantity of first degree in cos α, sin α is kept as k + c·cos α + s·sin α. */
export interface HArmConstants {
  readonly cx: number;
  readonly cy: number;
  readonly cz: number;
  /** Chassis line a, arm's outer line e, from c to the outer line o, from there to the wheel centre w. */
  readonly a: Vec3;
  readonly e: Vec3;
  readonly o: Vec3;
  readonly w: Vec3;
  readonly designHeight: number;
  readonly Pk: number;
  readonly Pc: number;
  readonly Ps: number;
  readonly Qk: number;
  readonly Qc: number;
  readonly Qs: number;
  readonly Sk: number;
  readonly Sc: number;
  readonly Ss: number;
  /** Wheel-centre height: (z0) + cos β (zc) + sin β (zs), each of first degree in α. */
  readonly z0k: number;
  readonly z0c: number;
  readonly z0s: number;
  readonly zck: number;
  readonly zcc: number;
  readonly zcs: number;
  readonly zsk: number;
  readonly zsc: number;
  readonly zss: number;
  /** Sign of the closure's root in the design position. */
  readonly designBranch: 1 | -1;
}

export function hArmConstants(linkage: HArmLinkage, wheelCentre: Vec3, lengths: Lengths): HArmConstants {
  const { lowerArm: arm, upperLink: link } = linkage;
  const { point: c, axis: a } = liftingAxis(arm.innerFront, arm.innerRear, arm.outerFront);
  const { axis: e } = liftingAxis(arm.outerFront, arm.outerRear, link.outer);
  const linkLength = givenLength(lengths, "upperLink", link.inner, link.outer);
  const o = subtract(arm.outerFront, c);
  const i = subtract(link.inner, c);
  const u = subtract(link.outer, arm.outerFront);
  const w = subtract(wheelCentre, arm.outerFront);
  // The link's inner end as the arm sees it: i turned back by α about a.
  const alongA = dot(i, a);
  const square = squareTo(i, a);
  const quarter = cross(a, square);
  const seen = (v: Vec3) => ({ k: alongA * dot(v, a) - dot(v, o), c: dot(v, square), s: -dot(v, quarter) });
  const uAlongE = dot(u, e);
  const uSquare = squareTo(u, e);
  const P = seen(uSquare);
  const Q = seen(cross(e, uSquare));
  const E = seen(e);
  // |r|² with r from the outer line to the link's inner end, both as the arm sees them.
  const rk = squared(i) + squared(o) - 2 * alongA * dot(a, o);
  const rc = -2 * dot(o, square);
  const rs = 2 * dot(o, quarter);
  const height = (v: Vec3) => ({ k: dot(v, a) * a.z, c: squareTo(v, a).z, s: cross(a, v).z });
  const wAlongE = dot(w, e);
  const wSquare = squareTo(w, e);
  const z0 = height({ x: o.x + wAlongE * e.x, y: o.y + wAlongE * e.y, z: o.z + wAlongE * e.z });
  const zc = height(wSquare);
  const zs = height(cross(e, wSquare));
  return {
    cx: c.x,
    cy: c.y,
    cz: c.z,
    a,
    e,
    o,
    w,
    designHeight: wheelCentre.z - c.z,
    Pk: P.k,
    Pc: P.c,
    Ps: P.s,
    Qk: Q.k,
    Qc: Q.c,
    Qs: Q.s,
    Sk: 0.5 * (squared(u) + rk - linkLength * linkLength) - uAlongE * E.k,
    Sc: 0.5 * rc - uAlongE * E.c,
    Ss: 0.5 * rs - uAlongE * E.s,
    z0k: z0.k,
    z0c: z0.c,
    z0s: z0.s,
    zck: zc.k,
    zcc: zc.c,
    zcs: zc.s,
    zsk: zs.k,
    zsc: zs.c,
    zss: zs.s,
    designBranch: Q.k + Q.c < 0 ? 1 : -1,
  };
}

const squared = (v: Vec3): number => dot(v, v);

/** The closure and the wheel's height at one arm angle, for the search of the range. */
function lookAt(h: HArmConstants, angle: number, branches: Branches): DrivenPosition {
  const ca = Math.cos(angle);
  const sa = Math.sin(angle);
  const P = h.Pk + h.Pc * ca + h.Ps * sa;
  const Q = h.Qk + h.Qc * ca + h.Qs * sa;
  const S = h.Sk + h.Sc * ca + h.Ss * sa;
  const N = P * P + Q * Q;
  const margin = 1 - (S * S) / N;
  if (!(margin > 0)) return { travel: 0, slope: 0, margins: [margin] };
  const root = h.designBranch * branches[0]! * Math.sqrt(N * margin);
  const cb = (P * S - Q * root) / N;
  const sb = (Q * S + P * root) / N;
  const dP = h.Ps * ca - h.Pc * sa;
  const dQ = h.Qs * ca - h.Qc * sa;
  const dS = h.Ss * ca - h.Sc * sa;
  const b1 = (dP * cb + dQ * sb - dS) / root;
  const zc = h.zck + h.zcc * ca + h.zcs * sa;
  const zs = h.zsk + h.zsc * ca + h.zss * sa;
  const z = h.z0k + h.z0c * ca + h.z0s * sa + cb * zc + sb * zs;
  const zAlpha = h.z0s * ca - h.z0c * sa + cb * (h.zcs * ca - h.zcc * sa) + sb * (h.zss * ca - h.zsc * sa);
  return { travel: z - h.designHeight, slope: zAlpha + (cb * zs - sb * zc) * b1, margins: [margin] };
}

function hArmMechanism(
  linkage: HArmLinkage,
  wheelCentre: Vec3,
  lengths: Lengths = {},
  like: Mechanism | undefined = undefined,
): Mechanism {
  const h = hArmConstants(linkage, wheelCentre, lengths);
  const driven = drivenRange(() => findDrivenRange((angle, branches) => lookAt(h, angle, branches), 1), like);
  return {
    get range() {
      return driven.own().range;
    },
    get stretches() {
      return driven.own().stretches;
    },
    solve: (travel, state) => {
      const stretch = driven.stretchAt(travel);
      return stretch ? solveHArm(h, stretch, travel, state) : -1;
    },
  };
}

/** Heights agree to this, m: a few units in the last place of a wheel centre's coordinates. */
const HEIGHT_TOLERANCE = 2e-15;
const MOST_ITERATIONS = 60;

/** Flat kernel: finds α for the travel, then writes pose, velocity and acceleration by travel. Gives the iterations used. */
function solveHArm(h: HArmConstants, stretch: DrivenStretch, travel: number, s: MotionState): number {
  const target = h.designHeight + travel;
  const ahead = travel - s[AT.travel]!;
  const branch = h.designBranch * stretch.branches[0]!;
  // Driving angles that give too low and too high a wheel.
  let low = stretch.lowAngle;
  let high = stretch.highAngle;
  // Second-order prediction from the state's own derivatives.
  let alpha = s[AT.firstArm + 2]! + ahead * (s[AT.firstArm + 3]! + 0.5 * ahead * s[AT.firstArm + 4]!);
  if (!((alpha - low) * (alpha - high) <= 0)) alpha = 0.5 * (low + high);
  let ca = 1;
  let sa = 0;
  let cb = 1;
  let sb = 0;
  let b1 = 0;
  let b2 = 0;
  let z1 = 1;
  let z2 = 0;
  let iteration = 0;
  for (;;) {
    iteration += 1;
    ca = Math.cos(alpha);
    sa = Math.sin(alpha);
    const P = h.Pk + h.Pc * ca + h.Ps * sa;
    const Q = h.Qk + h.Qc * ca + h.Qs * sa;
    const S = h.Sk + h.Sc * ca + h.Ss * sa;
    const N = P * P + Q * Q;
    const D = N - S * S;
    // Rounding at a toggle may leave a whisker below zero.
    const root = branch * Math.sqrt(Math.max(D, 1e-24));
    const perN = 1 / N;
    cb = (P * S - Q * root) * perN;
    sb = (Q * S + P * root) * perN;
    const dP = h.Ps * ca - h.Pc * sa;
    const dQ = h.Qs * ca - h.Qc * sa;
    const dS = h.Ss * ca - h.Sc * sa;
    // Implicit differentiation of F(α, β) = P cos β + Q sin β − S = 0; ∂F/∂β = −root.
    const perRoot = 1 / root;
    b1 = (dP * cb + dQ * sb - dS) * perRoot;
    const Faa = (h.Pk - P) * cb + (h.Qk - Q) * sb - (h.Sk - S);
    const Fab = dQ * cb - dP * sb;
    b2 = (Faa + b1 * (2 * Fab - b1 * S)) * perRoot;
    const z0a = h.z0c * ca + h.z0s * sa;
    const zca = h.zcc * ca + h.zcs * sa;
    const zsa = h.zsc * ca + h.zss * sa;
    const zc = h.zck + zca;
    const zs = h.zsk + zsa;
    const dzc = h.zcs * ca - h.zcc * sa;
    const dzs = h.zss * ca - h.zsc * sa;
    const zBeta = cb * zs - sb * zc;
    z1 = h.z0s * ca - h.z0c * sa + cb * dzc + sb * dzs + zBeta * b1;
    const zAlphaBeta = cb * dzs - sb * dzc;
    z2 = -(z0a + cb * zca + sb * zsa) + b1 * (2 * zAlphaBeta - b1 * (cb * zc + sb * zs)) + zBeta * b2;
    const miss = h.z0k + z0a + cb * zc + sb * zs - target;
    if (miss <= HEIGHT_TOLERANCE && miss >= -HEIGHT_TOLERANCE) break;
    if (miss > 0) high = alpha;
    else low = alpha;
    // Halley's step, inside the bracket; half of it where the step leads out.
    let next = alpha - (2 * miss * z1) / (2 * z1 * z1 - miss * z2);
    if (!((next - low) * (next - high) < 0)) next = 0.5 * (low + high);
    if (next === alpha || iteration >= MOST_ITERATIONS) break;
    alpha = next;
  }
  const a1 = 1 / z1;
  const a2 = -z2 * a1 * a1 * a1;
  s[AT.travel] = travel;
  s[AT.firstArm] = ca;
  s[AT.firstArm + 1] = sa;
  s[AT.firstArm + 2] = alpha;
  s[AT.firstArm + 3] = a1;
  s[AT.firstArm + 4] = a2;
  outer[0] = cb;
  outer[1] = sb;
  outer[2] = b1 * a1;
  outer[3] = b2 * a1 * a1 + b1 * a2;
  writeSpindle(h, s);
  return iteration;
}

/** The spindle's turn about the arm's outer line: cosine and sine of β, first and second derivative by travel. */
const outer = new Float64Array(4);

/** Writes the state of a spindle that turns by β about the line (o, e) of an arm that turns by α about (c, a). */
function writeSpindle(h: HArmConstants, s: MotionState): void {
  const ca = s[AT.firstArm]!;
  const sa = s[AT.firstArm + 1]!;
  const aRate = s[AT.firstArm + 3]!;
  const aAcceleration = s[AT.firstArm + 4]!;
  const cb = outer[0]!;
  const sb = outer[1]!;
  const bRate = outer[2]!;
  const bAcceleration = outer[3]!;
  const ax = h.a.x;
  const ay = h.a.y;
  const az = h.a.z;
  const ta = 1 - ca;
  // R1: the arm's rotation.
  const m0 = ca + ta * ax * ax;
  const m1 = ta * ax * ay - sa * az;
  const m2 = ta * ax * az + sa * ay;
  const m3 = ta * ax * ay + sa * az;
  const m4 = ca + ta * ay * ay;
  const m5 = ta * ay * az - sa * ax;
  const m6 = ta * ax * az - sa * ay;
  const m7 = ta * ay * az + sa * ax;
  const m8 = ca + ta * az * az;
  const ex = h.e.x;
  const ey = h.e.y;
  const ez = h.e.z;
  const tb = 1 - cb;
  const n0 = cb + tb * ex * ex;
  const n1 = tb * ex * ey - sb * ez;
  const n2 = tb * ex * ez + sb * ey;
  const n3 = tb * ex * ey + sb * ez;
  const n4 = cb + tb * ey * ey;
  const n5 = tb * ey * ez - sb * ex;
  const n6 = tb * ex * ez - sb * ey;
  const n7 = tb * ey * ez + sb * ex;
  const n8 = cb + tb * ez * ez;
  const r0 = m0 * n0 + m1 * n3 + m2 * n6;
  const r1 = m0 * n1 + m1 * n4 + m2 * n7;
  const r2 = m0 * n2 + m1 * n5 + m2 * n8;
  const r3 = m3 * n0 + m4 * n3 + m5 * n6;
  const r4 = m3 * n1 + m4 * n4 + m5 * n7;
  const r5 = m3 * n2 + m4 * n5 + m5 * n8;
  const r6 = m6 * n0 + m7 * n3 + m8 * n6;
  const r7 = m6 * n1 + m7 * n4 + m8 * n7;
  const r8 = m6 * n2 + m7 * n5 + m8 * n8;
  s[AT.rotation] = r0;
  s[AT.rotation + 1] = r1;
  s[AT.rotation + 2] = r2;
  s[AT.rotation + 3] = r3;
  s[AT.rotation + 4] = r4;
  s[AT.rotation + 5] = r5;
  s[AT.rotation + 6] = r6;
  s[AT.rotation + 7] = r7;
  s[AT.rotation + 8] = r8;
  // O: from c to the outer line; w: from there to the wheel centre; both now.
  const ox = m0 * h.o.x + m1 * h.o.y + m2 * h.o.z;
  const oy = m3 * h.o.x + m4 * h.o.y + m5 * h.o.z;
  const oz = m6 * h.o.x + m7 * h.o.y + m8 * h.o.z;
  const wx = r0 * h.w.x + r1 * h.w.y + r2 * h.w.z;
  const wy = r3 * h.w.x + r4 * h.w.y + r5 * h.w.z;
  const wz = r6 * h.w.x + r7 * h.w.y + r8 * h.w.z;
  const e1x = m0 * ex + m1 * ey + m2 * ez;
  const e1y = m3 * ex + m4 * ey + m5 * ez;
  const e1z = m6 * ex + m7 * ey + m8 * ez;
  s[AT.wheelCentre] = h.cx + ox + wx;
  s[AT.wheelCentre + 1] = h.cy + oy + wy;
  s[AT.wheelCentre + 2] = h.cz + oz + wz;
  const px = aRate * ax + bRate * e1x;
  const py = aRate * ay + bRate * e1y;
  const pz = aRate * az + bRate * e1z;
  const ab = aRate * bRate;
  const qx = aAcceleration * ax + bAcceleration * e1x + ab * (ay * e1z - az * e1y);
  const qy = aAcceleration * ay + bAcceleration * e1y + ab * (az * e1x - ax * e1z);
  const qz = aAcceleration * az + bAcceleration * e1z + ab * (ax * e1y - ay * e1x);
  s[AT.spin] = px;
  s[AT.spin + 1] = py;
  s[AT.spin + 2] = pz;
  s[AT.spinRate] = qx;
  s[AT.spinRate + 1] = qy;
  s[AT.spinRate + 2] = qz;
  // Outer line's velocity and acceleration, then the wheel centre's about it.
  const vox = aRate * (ay * oz - az * oy);
  const voy = aRate * (az * ox - ax * oz);
  const voz = aRate * (ax * oy - ay * ox);
  const ux = py * wz - pz * wy;
  const uy = pz * wx - px * wz;
  const uz = px * wy - py * wx;
  s[AT.velocity] = vox + ux;
  s[AT.velocity + 1] = voy + uy;
  s[AT.velocity + 2] = voz + uz;
  s[AT.acceleration] =
    aAcceleration * (ay * oz - az * oy) + aRate * (ay * voz - az * voy) + (qy * wz - qz * wy) + (py * uz - pz * uy);
  s[AT.acceleration + 1] =
    aAcceleration * (az * ox - ax * oz) + aRate * (az * vox - ax * voz) + (qz * wx - qx * wz) + (pz * ux - px * uz);
  s[AT.acceleration + 2] =
    aAcceleration * (ax * oy - ay * ox) + aRate * (ax * voy - ay * vox) + (qx * wy - qy * wx) + (px * uy - py * ux);
}

function adjustHArm(linkage: HArmLinkage, id: string, change: number): AdjustedLinkage<HArmLinkage> {
  const { lowerArm: arm, upperLink: link } = linkage;
  if (id === "upperLink") {
    return { linkage, moved: {}, lengths: { upperLink: givenLength({}, id, link.inner, link.outer) + change } };
  }
  const end = id.replace("lowerArm.", "") as keyof typeof OTHER_END;
  const other = OTHER_END[end];
  const isOuter = end.startsWith("outer");
  const facing = isOuter ? midpoint(arm.innerFront, arm.innerRear) : midpoint(arm.outerFront, arm.outerRear);
  // The shank lies in the arm, square to its own hinge line, and points away from the other one.
  const shank = reachDirection(facing, unit(subtract(arm[end], arm[other])), arm[end]);
  const lengths = { upperLink: givenLength({}, "upperLink", link.inner, link.outer) };
  if (isOuter) {
    // The arm stays; the spindle goes with its outer line.
    const spindle = screwRound(arm[other], arm[end], shank, change);
    const upperLink = { ...link, outer: placePoint(spindle, link.outer) };
    const lowerArm = { ...arm, [end]: placePoint(spindle, arm[end]) };
    return { linkage: { ...linkage, lowerArm, upperLink }, moved: { spindle }, lengths };
  }
  // The chassis stays: the arm is turned back by what its end is screwed out, and carries the spindle.
  const back = screwRound(arm[other], arm[end], shank, -change);
  const lowerArm = {
    ...arm,
    outerFront: placePoint(back, arm.outerFront),
    outerRear: placePoint(back, arm.outerRear),
  };
  const upperLink = { ...link, outer: placePoint(back, link.outer) };
  return { linkage: { ...linkage, lowerArm, upperLink }, moved: { "lower-arm": back, spindle: back }, lengths };
}

const OTHER_END = {
  innerFront: "innerRear",
  innerRear: "innerFront",
  outerFront: "outerRear",
  outerRear: "outerFront",
} as const;
