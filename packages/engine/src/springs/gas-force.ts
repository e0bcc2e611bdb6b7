import type { ShockGas } from "../car/car.ts";
import { ATMOSPHERE } from "../units/convert.ts";

/** A charge of gas that pushes a rod out. */
export interface GasSpring {
  /** Absolute, at `from`, Pa. */
  readonly pressure: number;
  /** At `from`, m³. */
  readonly volume: number;
  /** Of the rod, m². */
  readonly area: number;
  /** Air outside, which pushes the rod in, Pa. */
  readonly outside: number;
  /** How far the rod is in where pressure and volume are given, m. */
  readonly from: number;
}

export interface GasState {
  /** Out, N. */
  readonly force: number;
  /** dF by the rod going in, N/m. */
  readonly rate: number;
  /** Work done on the rod since it began to go in, J. */
  readonly energy: number;
  /** Absolute, Pa. */
  readonly pressure: number;
}

/** Exponents of p·V^n = constant: slow, so that heat goes out; and fast, none does (air and nitrogen). */
export const SLOW = 1;
export const FAST = 1.4;

export const gasSpringOf = ({ pressure, volume, rodDiameter }: ShockGas): GasSpring => ({
  pressure: pressure + ATMOSPHERE,
  volume,
  area: (Math.PI / 4) * rodDiameter ** 2,
  outside: ATMOSPHERE,
  from: 0,
});

/**
 * Polytropic gas on a rod, after OpenStax, University Physics Vol. 2, §3.6 (p·V^γ constant): V = V0 − A·s, p = p0·(V0/V)^n,
 * F = (p − p_outside)·A, k = n·p·A²/V; n = 1 isothermal, 1.4 adiabatic. `s`: how far the rod is in, m.
 */
export function gasAt(gas: GasSpring, s: number, exponent: number): GasState {
  const { area, outside } = gas;
  // The document's reader lets no charge through that the rod fills; this keeps the numbers finite for any other.
  const volume = Math.max(gas.volume - area * (s - gas.from), gas.volume * 1e-3);
  const ratio = gas.volume / volume;
  const pressure = gas.pressure * ratio ** exponent;
  const work =
    exponent === 1
      ? gas.pressure * gas.volume * Math.log(ratio)
      : ((gas.pressure * gas.volume) / (exponent - 1)) * (ratio ** (exponent - 1) - 1);
  return {
    force: (pressure - outside) * area,
    rate: (exponent * pressure * area ** 2) / volume,
    energy: work - outside * area * (s - gas.from),
    pressure,
  };
}

/** The charge as it is after a long rest with the rod in by `s`, m: what a fast movement then sets out from. */
export function gasAtRest(gas: GasSpring, s: number): GasSpring {
  const volume = gas.volume - gas.area * (s - gas.from);
  return { ...gas, volume, pressure: gasAt(gas, s, SLOW).pressure, from: s };
}
