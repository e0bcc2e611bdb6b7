/** Torsion of a solid rectangle. */
export interface RectangleTorsion {
  /** Torsion constant, m⁴. */
  readonly constant: number;
  /** Shear stress at the middle of the longer and of the shorter side, for a torque of 1, 1/m³. */
  readonly atLongSide: number;
  readonly atShortSide: number;
}

/**
 * Saint-Venant's series for a solid rectangle (Timoshenko and Goodier, Theory of Elasticity, art. 109), summed until it
 * no longer changes. Sides in m, in either order.
 */
export function rectangleTorsion(one: number, other: number): RectangleTorsion {
  const long = Math.max(one, other);
  const short = Math.min(one, other);
  let rigidity = 0;
  let long2 = 0;
  let short2 = 0;
  for (let n = 1; n <= TERMS; n += 2) {
    const u = (n * Math.PI * long) / (2 * short);
    const sign = n % 4 === 1 ? 1 : -1;
    rigidity += Math.tanh(u) / n ** 5;
    long2 += 1 / (n ** 2 * Math.cosh(u));
    short2 += (sign * Math.tanh(u)) / n ** 2;
  }
  const constant = ((long * short ** 3) / 3) * (1 - (192 / Math.PI ** 5) * (short / long) * rigidity);
  return {
    constant,
    atLongSide: (short * (1 - (8 / Math.PI ** 2) * long2)) / constant,
    atShortSide: (short * (8 / Math.PI ** 2) * short2) / constant,
  };
}

/** The slowest of the series, Σ ±1/n², is then good to 1e-7. */
const TERMS = 3001;
