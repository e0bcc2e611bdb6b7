/** Torsion of a solid rectangle. */
export interface RectangleTorsion {
  /** Torsion constant, m⁴. */
  readonly constant: number;
  /** Shear stress at the middle of the longer and of the shorter side, for a torque of 1, 1/m³. */
  readonly atLongSide: number;
  readonly atShortSide: number;
}

/**
 * Saint-Venant's series for a solid rectangle (Timoshenko and Goodier, Theory of Elasticity, art. 109). Its slow parts, with
 * tanh = 1, are known sums: Σ ±1/n² of the odd n is Catalan's constant, Σ 1/n⁵ is 31/32 ζ(5) (Abramowitz and Stegun, 23.2);
 * what is left falls off like exp(−2u). Sides in m, in either order.
 */
export function rectangleTorsion(one: number, other: number): RectangleTorsion {
  const long = Math.max(one, other);
  const short = Math.min(one, other);
  let rigidity = ODD_FIFTHS;
  let long2 = 0;
  let short2 = CATALAN;
  for (let n = 1; n <= TERMS; n += 2) {
    const u = (n * Math.PI * long) / (2 * short);
    const lacking = Math.tanh(u) - 1;
    rigidity += lacking / n ** 5;
    long2 += 1 / (n ** 2 * Math.cosh(u));
    short2 += ((n % 4 === 1 ? 1 : -1) * lacking) / n ** 2;
  }
  const constant = ((long * short ** 3) / 3) * (1 - (192 / Math.PI ** 5) * (short / long) * rigidity);
  return {
    constant,
    atLongSide: (short * (1 - (8 / Math.PI ** 2) * long2)) / constant,
    atShortSide: (short * (8 / Math.PI ** 2) * short2) / constant,
  };
}

const CATALAN = 0.915965594177219;
const ODD_FIFTHS = (31 / 32) * 1.03692775514337;
/** Of a square, the slowest, the last of them is below 1e-15. */
const TERMS = 23;
