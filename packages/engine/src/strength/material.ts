import { PSI } from "../units/convert.ts";

/** A metal as far as strength goes; Pa and kg/m³. Strengths are least values, not what a piece may happen to have. */
export interface Material {
  readonly name: string;
  readonly young: number;
  readonly shear: number;
  readonly density: number;
  readonly yield: number;
  readonly ultimate: number;
  /** Beside a weld that is not heat-treated afterwards; left out where not known. */
  readonly weldedYield?: number;
  readonly weldedUltimate?: number;
  readonly source: string;
}

/**
 * Where only a breaking strength is known, the stress that is compared with: the ratio between breaking and limit load
 * of 14 CFR 23.303 and 25.303.
 */
export const BREAKING_TO_LIMIT = 1.5;

/** Share of the tensile strength that steel bears in shear before it breaks: common practice. */
export const SHEAR_OF_ULTIMATE = 0.6;
/** Share of the yield strength at which it yields in shear: von Mises, 1/√3. */
export const SHEAR_OF_YIELD = 1 / Math.sqrt(3);

/** Pa that the metal bears away from welds, and beside one. */
export const sound = (material: Material): number => material.yield;
export const welded = ({ weldedYield, weldedUltimate, yield: plain, ultimate }: Material): number =>
  Math.min(plain, weldedYield ?? (weldedUltimate ?? ultimate) / BREAKING_TO_LIMIT);

/** Whether what it bears beside a weld is known, or only derived. */
export const isWeldKnown = ({ weldedYield, weldedUltimate }: Material): boolean =>
  weldedYield !== undefined || weldedUltimate !== undefined;

const ksi = (value: number): number => value * 1000 * PSI;
/** MIL-HDBK-5 for low-alloy steel, from memory: E 29.0e6, G 11.0e6 psi, .283 lb/in³. */
const STEEL = { young: ksi(29_000), shear: ksi(11_000), density: 7833 } as const;

/** Least values of its table for stress-relieved tube drawn over a mandrel, read as a steel merchant reprints it. */
const A513 = "ASTM A513 type 5, stress-relieved, least values as a steel merchant reprints its table";
const A20 =
  "hot-rolled bar, SAE Handbook 1986 p. 2.15, as reprinted in Shigley, Mechanical Engineering Design, Table A-20";

/** Built-in materials; the builder's own come from the document. */
export const MATERIALS: readonly Material[] = [
  {
    ...STEEL,
    name: "DOM 1020",
    yield: ksi(55),
    ultimate: ksi(65),
    weldedYield: ksi(30),
    weldedUltimate: ksi(55),
    source: `${A513}; beside a weld: 1020 ${A20}`,
  },
  {
    ...STEEL,
    name: "DOM 1026",
    yield: ksi(65),
    ultimate: ksi(75),
    weldedYield: ksi(30),
    weldedUltimate: ksi(55),
    source: `${A513}; beside a weld, as a lower bound: 1020 ${A20}`,
  },
  {
    ...STEEL,
    name: "DOM 1015",
    yield: ksi(50),
    ultimate: ksi(60),
    weldedYield: ksi(27.5),
    weldedUltimate: ksi(50),
    source: `${A513}; beside a weld: 1015 ${A20}`,
  },
  {
    ...STEEL,
    name: "4130 N",
    yield: ksi(75),
    ultimate: ksi(95),
    weldedUltimate: ksi(72),
    source:
      "normalised, wall up to .188 in: Bruhn, Analysis and Design of Flight Vehicle Structures, Table C4.1, after MIL-HDBK-5; welded and not heat-treated: MIL-HDBK-5H Table 8.2.2.1.1(a)",
  },
  {
    ...STEEL,
    name: "mild plate",
    yield: ksi(36),
    ultimate: ksi(58),
    weldedYield: ksi(36),
    weldedUltimate: ksi(58),
    source: "ASTM A36, from memory; hot-rolled, so that welding takes nothing away",
  },
];
