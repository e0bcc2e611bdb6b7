import type { Shock } from "../car/car.ts";
import { INCH } from "../units/convert.ts";

/** Classes of roughness. */
export const ROAD_CLASSES = ["A", "B", "C", "D", "E", "F", "G", "H"] as const;
export type RoadClass = (typeof ROAD_CLASSES)[number];

/** Spatial frequency that the classes are told at, cycles/m (ISO 8608). */
export const REFERENCE_FREQUENCY = 0.1;

/** Roughness at that frequency, geometric mean of a class, m³: 16e-6 · 4^k (ISO 8608, table C.2). */
export const roughnessOf = (road: RoadClass): number => 16e-6 * 4 ** ROAD_CLASSES.indexOf(road);

/** Spectral density of the ground's upward speed under a wheel, one-sided, (m/s)²/Hz: (2π·n0)²·G_d(n0)·v. `speed`: m/s. */
export const groundSpeedDensity = (road: RoadClass, speed: number): number =>
  (2 * Math.PI * REFERENCE_FREQUENCY) ** 2 * roughnessOf(road) * speed;

/**
 * Mean square of the speed between wheel and body, (m/s)²: S0·k_t/(4c) on a ground whose speed is white noise of one-sided
 * density S0, tyre rate k_t, damping c at the wheel. From the energy that the ground puts in, k_t·S0/4, all of which the
 * damper takes in the mean, c·E[v²]: Smith & Swift, Power dissipation in automotive suspensions (2011), from memory; the
 * same by the Lyapunov equation of the quarter car (tests).
 */
export const meanSquareSpeed = (density: number, tyreRate: number, damping: number): number =>
  (density * tyreRate) / (4 * damping);

/** Mean power of one damper, W: c·E[v²] = k_t·S0/4. Neither damping, springs nor weights enter. */
export const damperPower = (density: number, tyreRate: number): number => (tyreRate * density) / 4;

/** Upright rate of a tyre where none is given, N/m: from memory, soft off-road tyres are 150 to 300 N/mm. */
export const USUAL_TYRE_RATE = 200_000;

/** Light hydraulic oil at 60 °C, kg/m³ and J/(kg·K): handbook values, from memory. */
const OIL = { density: 870, heat: 1900 } as const;
/** Carbon steel, J/(kg·K): handbook value, from memory. */
const STEEL_HEAT = 460;
/** Tube, shaft and piston of a shock of 2 to 2.5 in, kg a metre: from memory, weighed nowhere. */
const BODY_MASS_PER_LENGTH = 6;
/** Dry air at 20 to 30 °C: W/(m·K), m²/s and Prandtl's number, handbook values, from memory. */
const AIR = { conductivity: 0.026, viscosity: 1.6e-5, prandtl: 0.71 } as const;
/** A reservoir of its own adds about as much oil and surface again, as a share of the body's: from memory, no source. */
export const RESERVOIR_SHARE = 0.7;
/** Warmer than the air by more than this, gas in the oil of an emulsion foams and the oil thins, K: common practice, no source. */
export const EMULSION_RISE = 60;
/** Seals and oil of any shock suffer past this, K over the air: nitrile seals are good for about 120 to 135 °C, from memory. */
export const MOST_RISE = 110;
/** A spring stands this far off the body all round, m: common practice, no source. */
const SPRING_ROOM = 0.25 * INCH;

export interface RoadHeat {
  /** J in a metre of road, and W at the speed. */
  readonly perMetre: number;
  readonly power: number;
  /** Warmer than the air in the long run, K: an emulsion shock's body alone; with a reservoir. */
  readonly riseEmulsion: number;
  readonly riseReservoir: number;
  /** Time to two thirds of that, s, body alone. */
  readonly warmsIn: number;
  /** Oil in the body, m³. */
  readonly oil: number;
  readonly verdict: "emulsion-enough" | "reservoir-worth-it" | "too-hot-for-either";
}

/**
 * Heat of one shock on a rough road. All damper work becomes heat; it leaves by air across the body as a cylinder:
 * Nu = 0.26·Re^0.6·Pr^0.37 (Zukauskas, as in Incropera; from memory). Linear, wheel never off the ground: on a road that
 * throws the car about it is more than there is. `speed`: m/s.
 */
export function roadHeat(shock: Shock, tyreRate: number, road: RoadClass, speed: number): RoadHeat {
  const power = damperPower(groundSpeedDensity(road, speed), tyreRate);
  const diameter = Math.max(shock.diameter - (shock.springs ? 2 * SPRING_ROOM : 0), INCH);
  const stroke = shock.longest - shock.shortest;
  const length = Math.max(shock.shortest - 2 * INCH, stroke);
  const reynolds = (speed * diameter) / AIR.viscosity;
  const film = (0.26 * reynolds ** 0.6 * AIR.prandtl ** 0.37 * AIR.conductivity) / diameter;
  const loss = film * Math.PI * diameter * length;
  const oil = (Math.PI / 4) * (0.9 * diameter) ** 2 * length * 0.85;
  const heat = oil * OIL.density * OIL.heat + BODY_MASS_PER_LENGTH * length * STEEL_HEAT;
  const riseEmulsion = power / loss;
  const riseReservoir = riseEmulsion / (1 + RESERVOIR_SHARE);
  return {
    perMetre: power / speed,
    power,
    riseEmulsion,
    riseReservoir,
    warmsIn: heat / loss,
    oil,
    verdict:
      riseEmulsion <= EMULSION_RISE
        ? "emulsion-enough"
        : riseReservoir <= MOST_RISE
          ? "reservoir-worth-it"
          : "too-hot-for-either",
  };
}
