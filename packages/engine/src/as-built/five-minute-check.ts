import type { Car } from "../car/car.ts";
import { type Inputs, uncertainInputs } from "../certainty/inputs.ts";
import { slopesOf, spreadOf } from "../certainty/slopes.ts";
import { makeCorner } from "../cycle/corner.ts";
import { reportTravel } from "../limits/travel-report.ts";
import { type CardReading, cardReadings, cardValues, startsFor } from "./card-reading.ts";
import { wholeTravels } from "./whole-travels.ts";

/** The one thing to measure now that would tell most of whether the model is the car. */
export interface FiveMinuteCheck {
  readonly card: CardReading;
  /** Block the hub here, travel, m. */
  readonly travel: number;
  /** What it should read, SI. */
  readonly reads: number;
  /** ± of model and reading together, two standard deviations. */
  readonly plusMinus: number;
  /** How much wider the model's own ± is than the reading's: what the reading tells. */
  readonly tells: number;
}

/** Readings that a tape takes without taking anything apart. */
const EASY = ["shock", "half-shaft", "half-track", "camber"];

/**
 * Of the easy readings at half and full travel the one whose outcome is least known against how well it can be read: the
 * greatest expected gain of information, ½·ln(1 + σ²model/σ²reading). Null where nothing can be read.
 */
export function fiveMinuteCheck(car: Car, inputs: Inputs = uncertainInputs(car)): FiveMinuteCheck | null {
  const corner = makeCorner(car);
  const { bump, droop } = reportTravel(corner, 0.02);
  const travels = wholeTravels(car, droop.stop.travel, bump.stop.travel);
  const cards = cardReadings(corner).filter(({ kind }) => EASY.includes(kind));
  const asked = cards.flatMap((card) => travels.map((travel) => ({ card, travel })));
  const starts = startsFor(corner, asked);
  const read = (of: Car): readonly (number | null)[] => cardValues(makeCorner(of, {}, corner), asked, starts);
  const values = read(car);
  const slopes = slopesOf(car, inputs.list, read);
  const spreads = spreadOf(slopes, inputs.covariance);
  // What is set by turning tells nothing of the model: only the points count for what a reading tells.
  const isPoint = inputs.list.map(({ kind }) => kind === "point");
  const ofPoints = spreadOf(
    slopes.filter((_, i) => isPoint[i]),
    inputs.covariance.filter((_, i) => isPoint[i]).map((row) => row.filter((_, j) => isPoint[j])),
  );
  let best: FiveMinuteCheck | null = null;
  asked.forEach(({ card, travel }, k) => {
    const reads = values[k];
    if (reads === null || reads === undefined || !(Math.abs(travel) > 0)) return;
    const tells = ofPoints[k]!.sd / (card.plusMinus / 2);
    if (best && tells <= best.tells) return;
    best = { card, travel, reads, plusMinus: 2 * Math.hypot(spreads[k]!.sd, card.plusMinus / 2), tells };
  });
  return best;
}
