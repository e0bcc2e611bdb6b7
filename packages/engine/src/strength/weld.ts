import { PSI } from "../units/convert.ts";

/** Throat of an equal-legged fillet, of its leg. */
export const THROAT_OF_LEG = Math.SQRT1_2;

/** Shear that AWS D1.1 allows on a fillet's throat: 0.30 of the filler's tensile strength. */
export const filletAllowable = (fillerStrength: number): number => 0.3 * fillerStrength;
/** ER70S and E70: 70 ksi, Pa. */
export const E70 = 70_000 * PSI;

/** Welds of one throat as lines: each from one point to another in the plane of the welds. */
export type WeldLine = readonly [from: Point2, to: Point2];
export interface Point2 {
  readonly a: number;
  readonly b: number;
}

/** Per unit of throat: length, centroid, second moments about it along a and b, and polar. */
export interface WeldGroup {
  readonly length: number;
  readonly centre: Point2;
  /** ∫ b² ds, ∫ a² ds */
  readonly ia: number;
  readonly ib: number;
  readonly polar: number;
  readonly lines: readonly WeldLine[];
}

export function weldGroup(lines: readonly WeldLine[]): WeldGroup {
  const parts = lines.map(([from, to]) => {
    const length = Math.hypot(to.a - from.a, to.b - from.b);
    return { length, a: (from.a + to.a) / 2, b: (from.b + to.b) / 2, da: to.a - from.a, db: to.b - from.b };
  });
  const length = parts.reduce((sum, part) => sum + part.length, 0);
  const centre = {
    a: parts.reduce((sum, part) => sum + part.length * part.a, 0) / length,
    b: parts.reduce((sum, part) => sum + part.length * part.b, 0) / length,
  };
  let ia = 0;
  let ib = 0;
  for (const part of parts) {
    ia += part.length * ((part.b - centre.b) ** 2 + part.db ** 2 / 12);
    ib += part.length * ((part.a - centre.a) ** 2 + part.da ** 2 / 12);
  }
  return { length, centre, ia, ib, polar: ia + ib, lines };
}

/** A force in the plane at a place (N), and a force out of it at a height above the plane's welds as moments (N·m). */
export interface WeldLoad {
  readonly along: Point2;
  readonly at: Point2;
  /** Out of the plane, N. */
  readonly out?: number;
  /** Moments about the a and b axis through the centroid, which pull and press the lines out of the plane. */
  readonly bendingA?: number;
  readonly bendingB?: number;
  /** More twist about the normal than the eccentric force makes. */
  readonly twist?: number;
}

/** Force a metre of weld line where it is greatest, N/m. */
export interface WeldLineForce {
  /** In the plane of the welds, and square to it. */
  readonly shear: number;
  readonly normal: number;
  /** Both as vectors, which is taken wholly as shear of the throat (common in welding handbooks; on the safe side). */
  readonly together: number;
}

/** Direct force and M r / J as vectors, out-of-plane square to them; at the ends of the lines, where it is greatest. */
export function weldLineForce(
  group: WeldGroup,
  { along, at, out = 0, bendingA = 0, bendingB = 0, twist = 0 }: WeldLoad,
): WeldLineForce {
  const moment = (at.a - group.centre.a) * along.b - (at.b - group.centre.b) * along.a + twist;
  let most: WeldLineForce = { shear: 0, normal: 0, together: 0 };
  for (const point of group.lines.flat()) {
    const a = point.a - group.centre.a;
    const b = point.b - group.centre.b;
    const fa = along.a / group.length - (group.polar > 0 ? (moment * b) / group.polar : 0);
    const fb = along.b / group.length + (group.polar > 0 ? (moment * a) / group.polar : 0);
    const normal =
      out / group.length +
      (group.ia > 0 ? (bendingA * b) / group.ia : 0) -
      (group.ib > 0 ? (bendingB * a) / group.ib : 0);
    const together = Math.hypot(fa, fb, normal);
    if (together > most.together) most = { shear: Math.hypot(fa, fb), normal: Math.abs(normal), together };
  }
  return most;
}

/** Weld round a tube of radius r, per unit of throat: π r³ in bending, 2 π r³ in torsion. */
export const ringWeld = (radius: number) => ({
  length: 2 * Math.PI * radius,
  bending: Math.PI * radius ** 3,
  polar: 2 * Math.PI * radius ** 3,
});

export interface RingWeldLoad {
  readonly tension?: number;
  readonly shear: number;
  readonly bending: number;
  readonly torque: number;
}

/** Line force of a ring weld, all parts at their greatest in one place: on the safe side. */
export function ringWeldLineForce(
  radius: number,
  { tension = 0, shear, bending, torque }: RingWeldLoad,
): WeldLineForce {
  const ring = ringWeld(radius);
  const normal = Math.abs(tension) / ring.length + (bending * radius) / ring.bending;
  const tangential = (torque * radius) / ring.polar + shear / ring.length;
  return { shear: tangential, normal, together: Math.hypot(normal, tangential) };
}
