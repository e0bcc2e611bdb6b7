import type { Stiffness } from "./frame.ts";
import type { SectionProperties } from "./section.ts";

/**
 * Stiffness of a straight beam with shear deformation in its own axes, 12 × 12 row by row: forces and moments at both
 * ends for shifts x y z and turns x y z at the first end, then at the second.
 * J. S. Przemieniecki, Theory of Matrix Structural Analysis (1968), eq. 5.116; Φ = 12 E I / (G A_s L²).
 */
export function beamStiffness(section: SectionProperties, { young: e, shear: g }: Stiffness, l: number): Float64Array {
  const k = new Float64Array(144);
  const put = (row: number, column: number, value: number): void => {
    k[12 * row + column] = value;
    k[12 * column + row] = value;
  };
  pair(put, 0, (e * section.area) / l);
  pair(put, 3, (g * section.torsion) / l);
  // Bending in the x-y plane: shift y with turn z. In the x-z plane a positive turn y lowers z: the sign of the coupling.
  bend(put, 1, 5, e * section.iz, g * section.shearAreaY, l, 1);
  bend(put, 2, 4, e * section.iy, g * section.shearAreaZ, l, -1);
  return k;
}

type Put = (row: number, column: number, value: number) => void;

function pair(put: Put, at: number, k: number): void {
  put(at, at, k);
  put(at + 6, at + 6, k);
  put(at, at + 6, -k);
}

function bend(put: Put, shift: number, turn: number, ei: number, gas: number, l: number, sign: number): void {
  const phi = (12 * ei) / (gas * l ** 2);
  const k = ei / ((1 + phi) * l ** 3);
  put(shift, shift, 12 * k);
  put(shift + 6, shift + 6, 12 * k);
  put(shift, shift + 6, -12 * k);
  const coupling = sign * 6 * l * k;
  put(shift, turn, coupling);
  put(shift, turn + 6, coupling);
  put(shift + 6, turn, -coupling);
  put(shift + 6, turn + 6, -coupling);
  put(turn, turn, (4 + phi) * l ** 2 * k);
  put(turn + 6, turn + 6, (4 + phi) * l ** 2 * k);
  put(turn, turn + 6, (2 - phi) * l ** 2 * k);
}
