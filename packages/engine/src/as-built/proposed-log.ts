import type { Car } from "../car/car.ts";
import { type Inputs, uncertainInputs } from "../certainty/inputs.ts";
import { slopesOf, spreadOf } from "../certainty/slopes.ts";
import { makeCorner } from "../cycle/corner.ts";
import { reportTravel } from "../limits/travel-report.ts";
import { type CardReading, cardValues, isOfRide, logReadings, startsFor } from "./card-reading.ts";
import { wholeTravels } from "./whole-travels.ts";

/** One reading to take, and what it should be. */
export interface Proposed {
  readonly card: CardReading;
  /** Block the hub here, travel, m. */
  readonly travel: number;
  /** SI; null where the plan does not have it there. */
  readonly reads: number | null;
  /** ± of building and reading together, two standard deviations, SI. */
  readonly plusMinus: number;
}

/**
 * What to read on the tacked car so that a part that is off is told and named: a row a reading, every card and every tube's
 * angle at five heights between the stops; and a row a point, its three places at ride height.
 */
export function proposedLog(
  car: Car,
  inputs: Inputs = uncertainInputs(car),
): readonly [atHeights: readonly (readonly Proposed[])[], atRide: readonly (readonly Proposed[])[]] {
  const corner = makeCorner(car);
  const { bump, droop } = reportTravel(corner, 0.02);
  const travels = wholeTravels(car, droop.stop.travel, bump.stop.travel);
  const cards = logReadings(corner);
  const asked = cards.flatMap((card) => (isOfRide(card) ? [0] : travels).map((travel) => ({ card, travel })));
  const starts = startsFor(corner, asked);
  const read = (of: Car): readonly (number | null)[] => cardValues(makeCorner(of, {}, corner), asked, starts);
  const values = read(car);
  const spreads = spreadOf(slopesOf(car, inputs.list, read), inputs.covariance);
  const all = asked.map(({ card, travel }, k): Proposed => {
    const plusMinus = 2 * Math.hypot(spreads[k]?.sd ?? 0, card.plusMinus / 2);
    return { card, travel, reads: values[k]!, plusMinus };
  });
  const rowOf = (card: CardReading): readonly Proposed[] => all.filter((each) => each.card === card);
  const places = cards.filter(isOfRide);
  return [
    cards.filter((card) => !isOfRide(card)).map(rowOf),
    places
      .filter(({ kind }) => kind === "along")
      .map((card) => places.filter(({ of }) => of === card.of).flatMap(rowOf)),
  ];
}
