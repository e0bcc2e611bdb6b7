import type { Dimension, UnitSystem } from "@armwright/engine";
import { plusMinusLength, shownPlusMinus } from "../words/plus-minus.ts";
import { shown, shownLength } from "../words/shown.ts";
import type { CauseSaid } from "./as-built-job.ts";
import type { Card } from "./card.ts";

const WAYS = {
  x: ["farther forward", "farther back"],
  y: ["farther out", "farther in"],
  z: ["high", "low"],
} as const;
/** How to move it back. */
const BACK = { x: ["back", "forward"], y: ["in", "out"], z: ["down", "up"] } as const;
const SETTINGS = {
  camber: ["the top of the wheel leans out", "the top of the wheel leans in"],
  toe: ["the wheel toes in", "the wheel toes out"],
} as const;

/** `Upper link, inner end is 3/16 in high`; `the top of the wheel leans in 1.9° more than planned`. */
export function sayCause(cause: CauseSaid, by: number, units: UnitSystem): string {
  const way = by > 0 ? 0 : 1;
  const size = Math.abs(by);
  return cause.kind === "point"
    ? `${cause.label} is ${shown(size, "length", units, { denominator: 16 })} ${WAYS[cause.axis][way]}`
    : `at ride height ${SETTINGS[cause.setting][way]} ${shown(size, "angle", units)} more than planned`;
}

/** What brings a point back: `move it 3/16 in down`. */
export const sayMove = (axis: "x" | "y" | "z", by: number, units: UnitSystem): string =>
  `${shown(Math.abs(by), "length", units)} ${BACK[axis][by > 0 ? 0 : 1]}`;

const dimensionOf = (cause: CauseSaid): Dimension => (cause.kind === "point" ? "length" : "angle");

export const sayCauseWithin = (cause: CauseSaid, sd: number, units: UnitSystem): string =>
  shownPlusMinus(2 * sd, dimensionOf(cause), units);

/** A reading of a card, with its unit only where it is an angle. */
export const sayCard = (si: number, card: Card, units: UnitSystem, sign = false): string =>
  card.dimension === "angle"
    ? shown(si, "angle", units, { sign })
    : shownLength(si, units, { denominator: card.isFine ? 32 : 16, sign });

export const sayCardWithin = (si: number, card: Card, units: UnitSystem): string =>
  card.dimension === "angle" ? shownPlusMinus(si, "angle", units) : plusMinusLength(si, units);

export const unitOfCard = (card: Card, units: UnitSystem): string =>
  card.dimension === "angle" ? "" : units === "metric" ? " mm" : " in";
