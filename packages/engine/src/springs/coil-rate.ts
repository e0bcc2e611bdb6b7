/** Shear modulus of spring steel, Pa: a handbook's usual round value (79.3 GPa), from memory. */
export const SPRING_STEEL = 79.3e9;

/** A round-wire compression spring. */
export interface Coil {
  /** m */
  readonly wire: number;
  /** Mean diameter of the coils: outside less one wire, m. */
  readonly meanDiameter: number;
  readonly activeCoils: number;
  /** Pa */
  readonly shearModulus: number;
}

/**
 * Rate of a helical compression spring, N/m: k = G·d⁴/(8·D³·N), G shear modulus, d wire, D mean coil diameter, N active
 * coils (Bhandari, Design of Machine Elements, ch. 10).
 */
export const coilRate = ({ wire, meanDiameter, activeCoils, shearModulus }: Coil): number =>
  (shearModulus * wire ** 4) / (8 * meanDiameter ** 3 * activeCoils);

/** Active coils that give a rate (N/m): the same formula turned about. */
export const coilsForRate = ({ wire, meanDiameter, shearModulus }: Omit<Coil, "activeCoils">, rate: number): number =>
  (shearModulus * wire ** 4) / (8 * meanDiameter ** 3 * rate);

/** Wire that gives a rate (N/m), m: the same formula turned about. */
export const wireForRate = ({ meanDiameter, activeCoils, shearModulus }: Omit<Coil, "wire">, rate: number): number =>
  ((8 * meanDiameter ** 3 * activeCoils * rate) / shearModulus) ** (1 / 4);

/** Curvature and shear: (4C − 1)/(4C − 4) + 0.615/C, C = D/d (Wahl, as in Bhandari ch. 10). */
export const wahlFactor = (index: number): number => (4 * index - 1) / (4 * index - 4) + 0.615 / index;

/** Direct shear only: 1 + 0.5/C. */
export const directShearFactor = (index: number): number => 1 + 0.5 / index;

/** Shear stress in the wire, Pa: τ = K·8·F·D/(π·d³), with the Wahl factor unless another is given. `force` in N. */
export function coilStress(
  { wire, meanDiameter }: Pick<Coil, "wire" | "meanDiameter">,
  force: number,
  factor: number = wahlFactor(meanDiameter / wire),
): number {
  return (factor * 8 * force * meanDiameter) / (Math.PI * wire ** 3);
}

/** Wire for a stress (Pa) at a force (N) and a spring index C = D/d, m: d = √(K·8·F·C/(π·τ)). */
export const wireForStress = (force: number, index: number, stress: number): number =>
  Math.sqrt((wahlFactor(index) * 8 * force * index) / (Math.PI * stress));

/** Coil on coil, m, all coils counted: (N_t + 1)·d for plain ends, N_t·d for squared ones. */
export const solidLengthOf = (wire: number, totalCoils: number, ends: "plain" | "squared"): number =>
  (ends === "plain" ? totalCoils + 1 : totalCoils) * wire;
