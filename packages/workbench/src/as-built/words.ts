import type { Explanation, UnitSystem } from "@armwright/engine";
import { plusMinusLength, shownPlusMinus } from "../words/plus-minus.ts";
import { shown, shownLength } from "../words/shown.ts";
import type { Card } from "./card.ts";

/** The ± of an explanation. */
export const sayOffWithin = ({ cause, sd }: Explanation, units: UnitSystem): string =>
  shownPlusMinus(2 * sd, cause.kind === "point" ? "length" : "angle", units);

/** A reading of a card, with its unit only where it is an angle. */
export const sayCard = (si: number, card: Card, units: UnitSystem, sign = false): string =>
  card.dimension === "angle"
    ? shown(si, "angle", units, { sign })
    : shownLength(si, units, { denominator: card.isFine ? 32 : 16, sign });

export const sayCardWithin = (si: number, card: Card, units: UnitSystem): string =>
  card.dimension === "angle" ? shownPlusMinus(si, "angle", units) : plusMinusLength(si, units);

export const unitOfCard = (card: Card, units: UnitSystem): string =>
  card.dimension === "angle" ? "" : units === "metric" ? " mm" : " in";
