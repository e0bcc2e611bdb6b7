import { FAST, gasAt } from "../springs/gas-force.ts";
import { ATMOSPHERE } from "../units/convert.ts";
import { type CurveState, curveAt, type ForcePoint, NO_FORCE } from "./force-points.ts";

/** How a bump stop pushes back as it is squeezed; `stroke`: from touched to solid, m. */
export type BumpStopLaw = TableLaw | RubberLaw | GasLaw;

/** Measured: squeezes in m, forces in N. */
export interface TableLaw {
  readonly kind: "table";
  readonly stroke: number;
  readonly points: readonly ForcePoint[];
}

/** A round block of rubber. */
export interface RubberLaw {
  readonly kind: "rubber";
  readonly stroke: number;
  readonly diameter: number;
  /** Free height, m. */
  readonly height: number;
  /** Young's modulus, Pa. */
  readonly modulus: number;
  /** The same after the other published rule, Pa: hardness tells stiffness no better than that. */
  readonly modulusUpTo: number;
}

/** Gas on a rod: a closed charge. */
export interface GasLaw {
  readonly kind: "gas";
  readonly stroke: number;
  /** As the gauge reads, rod fully out, Pa. */
  readonly pressure: number;
  /** Of the gas with the rod fully out, m³. */
  readonly volume: number;
  /** Of the rod that goes in, m. */
  readonly diameter: number;
}

export interface BumpStopState extends CurveState {
  /** Squeezed as far as it goes. */
  readonly isSolid: boolean;
}

/** What steel and brackets give once the stop is solid, N/m (about 28 500 lb/in): from memory, no source. */
export const SOLID_RATE = 5e6;

/** Push of a bump stop, N, `squeeze` m after it was touched; 0 before. Past its stroke it goes on at SOLID_RATE. */
export const bumpStopForce = (law: BumpStopLaw, squeeze: number): number => bumpStopAt(law, squeeze).force;

/** Push, its slope (N/m) and the work done on the stop since it was touched (J); fast, so that gas keeps its heat. */
export function bumpStopAt(law: BumpStopLaw, squeeze: number): BumpStopState {
  if (squeeze <= 0) return { ...NO_FORCE, isSolid: false };
  if (squeeze <= law.stroke) return { ...elasticAt(law, squeeze), isSolid: false };
  const solid = elasticAt(law, law.stroke);
  const past = squeeze - law.stroke;
  return {
    force: solid.force + SOLID_RATE * past,
    rate: SOLID_RATE,
    energy: solid.energy + solid.force * past + (SOLID_RATE / 2) * past ** 2,
    isSolid: true,
  };
}

function elasticAt(law: BumpStopLaw, squeeze: number): CurveState {
  switch (law.kind) {
    case "table":
      return curveAt(law.points, squeeze);
    case "rubber":
      return rubberAt(law, squeeze);
    case "gas":
      return gasStopAt(law, squeeze);
  }
}

/**
 * A block between plates it grips: E_a = E·(1 + 2S²), S = D/4h (loaded over bulging area; Gent & Lindley), and at large
 * squeeze the rubber-elastic law σ = E_a/3·(1/λ² − λ) on the first area, λ = 1 − squeeze/h (statistical theory, G = E/3;
 * from memory). Its area from 1 to λ is E_a/3·(1/λ + λ²/2 − 3/2)·h·A.
 */
function rubberAt({ diameter, height, modulus }: RubberLaw, squeeze: number): CurveState {
  const area = (Math.PI / 4) * diameter ** 2;
  const third = (apparentModulus(modulus, shapeFactor(diameter, height)) * area) / 3;
  // A stroke is always less than the height: the reader sees to it; this keeps any other finite.
  const ratio = Math.max(1 - squeeze / height, 1e-2);
  return {
    force: third * (ratio ** -2 - ratio),
    rate: (third * (2 * ratio ** -3 + 1)) / height,
    energy: third * height * (1 / ratio + ratio ** 2 / 2 - 1.5),
  };
}

/** Loaded area over the area free to bulge, of a disc: D/4h. */
export const shapeFactor = (diameter: number, height: number): number => diameter / (4 * height);

/** E·(1 + 2S²) (Gent & Lindley). */
export const apparentModulus = (modulus: number, shape: number): number => modulus * (1 + 2 * shape ** 2);

/** Young's modulus of rubber by Shore A hardness, Pa, after Gent: (15.75 + 2.15·S)/(100 − S) MPa; from memory. */
export const modulusAfterGent = (hardness: number): number => ((15.75 + 2.15 * hardness) / (100 - hardness)) * 1e6;

/** The same after Ruess: 10^(0.0235·S − 0.6403) MPa; the two differ by a factor near 2. */
export const modulusAfterRuess = (hardness: number): number => 10 ** (0.0235 * hardness - 0.6403) * 1e6;

/** p·V^1.4 constant (OpenStax, University Physics Vol. 2, §3.6): see `gasAt`. The charge pushes from the first touch on. */
function gasStopAt({ pressure, volume, diameter }: GasLaw, squeeze: number): CurveState {
  const area = (Math.PI / 4) * diameter ** 2;
  return gasAt({ pressure: pressure + ATMOSPHERE, volume, area, outside: ATMOSPHERE, from: 0 }, squeeze, FAST);
}

/** The law with the softest and with the stiffest value that it may have; the same twice where nothing is known of it. */
export function lawSpread(law: BumpStopLaw): { readonly soft: BumpStopLaw; readonly stiff: BumpStopLaw } {
  if (law.kind !== "rubber") return { soft: law, stiff: law };
  const { modulus, modulusUpTo } = law;
  return {
    soft: { ...law, modulus: Math.min(modulus, modulusUpTo) },
    stiff: { ...law, modulus: Math.max(modulus, modulusUpTo) },
  };
}

/** Squeeze at which the stop has taken an energy (J), m; past the stroke where it has to. */
export function squeezeFor(law: BumpStopLaw, energy: number): number {
  const solid = bumpStopAt(law, law.stroke);
  if (energy >= solid.energy) {
    const rest = energy - solid.energy;
    return law.stroke + (Math.sqrt(solid.force ** 2 + 2 * SOLID_RATE * rest) - solid.force) / SOLID_RATE;
  }
  let low = 0;
  let high = law.stroke;
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (bumpStopAt(law, middle).energy < energy) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
