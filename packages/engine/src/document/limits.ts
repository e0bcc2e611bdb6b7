import type { Dimension } from "../car/car.ts";
import { degrees } from "./assumed.ts";

export interface Limit {
  /** SI, either way. */
  readonly most: number;
  readonly words: string;
}

/** Beyond these a value was mistyped, whatever the car: a slipped unit or a lost decimal point. */
export const DIMENSION_LIMITS: Partial<Record<Dimension, Limit>> = {
  length: { most: 10, words: "10 m (394 in)" },
  angle: { most: degrees(360), words: "360 deg" },
  mass: { most: 20_000, words: "20 000 kg (44 000 lb)" },
  percent: { most: 1, words: "100 %" },
  rate: { most: 1_000_000, words: "1 000 N/mm (5 700 lb/in)" },
  pressure: { most: 10_000_000, words: "100 bar (1 450 psi)" },
  stress: { most: 5e9, words: "5 000 MPa (725 000 psi)" },
  torque: { most: 1e6, words: "1 000 000 N m (740 000 lb ft)" },
  force: { most: 1e7, words: "10 000 kN (2 250 000 lb)" },
  volume: { most: 0.01, words: "10 litres (610 in3)" },
};

/** Beyond these a wheel does not stand, and a joint does not turn. */
export const WHEEL_ANGLE_LIMIT: Limit = { most: degrees(45), words: "45 deg" };
export const JOINT_ANGLE_LIMIT: Limit = { most: degrees(90), words: "90 deg" };

/** Two pivots nearer than this are one point: half a millimetre, less than any tape tells apart, m. */
export const SAME_POINT = 0.0005;
