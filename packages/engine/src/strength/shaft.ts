/** Round shafts, solid or hollow. Consistent units. */

/** Shear stress of the surface under a torque: T r / J. */
export const shaftShear = (diameter: number, bore: number, torque: number): number =>
  (torque * diameter) / 2 / shaftTorsion(diameter, bore);

/** J = π/32 (D⁴ − d⁴) */
export const shaftTorsion = (diameter: number, bore: number): number => (Math.PI / 32) * (diameter ** 4 - bore ** 4);

/** Twist, rad: T L / (G J). */
export const shaftTwist = (
  diameter: number,
  bore: number,
  length: number,
  shearModulus: number,
  torque: number,
): number => (torque * length) / (shearModulus * shaftTorsion(diameter, bore));

/** Bending stress of the surface: M r / I. */
export const shaftBending = (diameter: number, bore: number, moment: number): number =>
  (moment * diameter) / shaftTorsion(diameter, bore);

/** Speed at which a simply supported uniform shaft whirls, turns a minute: (30 π / L²) √(E I / (ρ A)). */
export function criticalSpeed(diameter: number, bore: number, length: number, young: number, density: number): number {
  const inertia = shaftTorsion(diameter, bore) / 2;
  const area = (Math.PI / 4) * (diameter ** 2 - bore ** 2);
  return ((30 * Math.PI) / length ** 2) * Math.sqrt((young * inertia) / (density * area));
}
