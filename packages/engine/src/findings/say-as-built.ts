import type { Explanation } from "../as-built/explain.ts";
import type { UnitSystem } from "../car/car.ts";
import type { Axis } from "../solve/point-places.ts";
import { formatValue } from "../units/format.ts";

/** An explanation's cause and how much it is off; `by` as in `Explanation`. */
type Off = Pick<Explanation, "cause" | "by">;

const WAYS = {
  x: ["farther forward", "farther back"],
  y: ["farther out", "farther in"],
  z: ["high", "low"],
} as const;
const BACK = { x: ["back", "forward"], y: ["in", "out"], z: ["down", "up"] } as const;
const SETTINGS = {
  camber: ["the top of the wheel leans out", "the top of the wheel leans in"],
  toe: ["the wheel toes in", "the wheel toes out"],
} as const;

/** What the car is off its plan: `upper link, inner end is 5/32 in high`; `at ride height the wheel toes in 0.3 deg more than planned`. */
export function sayOff({ cause, by }: Off, units: UnitSystem): string {
  const way = by > 0 ? 0 : 1;
  return cause.kind === "point"
    ? `${cause.input.place.label} is ${size(by, "length", units)} ${WAYS[cause.input.axis][way]}`
    : `at ride height ${SETTINGS[cause.setting][way]} ${size(by, "angle", units)} more than planned`;
}

/** What brings a point back to the plan: `5/32 in down`. */
export const sayBack = (axis: Axis, by: number, units: UnitSystem): string =>
  `${size(by, "length", units)} ${BACK[axis][by > 0 ? 0 : 1]}`;

/** To 1/32 in, as its ± is told; what is less than half of that is not nothing. */
function size(by: number, dimension: "length" | "angle", units: UnitSystem): string {
  const text = formatValue(Math.abs(by), dimension, units, { denominator: 32 });
  return /^0(\.0)? /.test(text) ? `under ${SMALLEST[units][dimension]}` : text;
}

const SMALLEST = {
  "inch-pound": { length: "1/32 in", angle: "0.1 deg" },
  metric: { length: "0.5 mm", angle: "0.1 deg" },
} as const;
