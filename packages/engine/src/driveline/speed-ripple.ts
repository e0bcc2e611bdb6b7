/** Speed of a driven shaft over one turn, as the pair of joints makes it. */
export interface SpeedRipple {
  /** Largest less smallest speed, as a share of the mean speed of the input. */
  readonly total: number;
  /** Angle of the one U-joint that would ripple as much, rad. */
  readonly equivalentAngle: number;
}

/**
 * Ripple of two U-joints in a row. `first` and `second` joint angles, rad; `twist` the angle from the plane of the first
 * joint's axes to that of the second, about the shaft, less the phase of the shaft's yokes, rad. A constant-velocity joint
 * counts as angle 0.
 *
 * One joint turns the direction (cos θ, sin θ) of its yoke by diag(1, 1/cos β) (from tan θ₂ = tan θ₁ / cos β, whose
 * derivative is the ratio cos β / (1 − sin²β cos²θ) of the Mechanical Engineer's Data Handbook, §2.4.3, p. 72, θ counted
 * from the plane of the shafts). Two joints are the product M = D(β₂)·R·D(β₁); the speed ratio det M/|M u|² then has the
 * extremes σ₁/σ₂ and σ₂/σ₁ of M's singular values, which follow in closed form and without loss of figures near 1.
 */
export const speedRipple = (first: number, second: number, twist: number): SpeedRipple =>
  rippleOf(Math.cos(first), Math.cos(second), Math.cos(twist), Math.sin(twist));

/** The same from the cosines of the joint angles and the cosine and sine of the twist. */
export function rippleOf(cosFirst: number, cosSecond: number, cosTwist: number, sinTwist: number): SpeedRipple {
  const c1 = 1 / cosFirst;
  const c2 = 1 / cosSecond;
  // Shaft yokes in phase stand square to the plane when the input yoke lies in it: a quarter turn.
  const c = -sinTwist;
  const s = cosTwist;
  const m00 = c;
  const m01 = -s * c1;
  const m10 = s * c2;
  const m11 = c * c1 * c2;
  const p = Math.sqrt((m00 + m11) * (m00 + m11) + (m10 - m01) * (m10 - m01));
  const q = Math.sqrt((m00 - m11) * (m00 - m11) + (m10 + m01) * (m10 + m01));
  return { total: (4 * p * q) / (p * p - q * q), equivalentAngle: 2 * Math.atan(Math.sqrt(q / p)) };
}
