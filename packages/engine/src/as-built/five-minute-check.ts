import type { Car } from "../car/car.ts";
import { type Inputs, uncertainInputs } from "../certainty/inputs.ts";
import { slopesOf, spreadOf } from "../certainty/slopes.ts";
import { makeCorner } from "../cycle/corner.ts";
import { reportTravel } from "../limits/travel-report.ts";
import { type CardReading, cardReadings, cardValue } from "./card-reading.ts";

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
  const travels = [bump.stop.travel, bump.stop.travel / 2, droop.stop.travel / 2, droop.stop.travel].map(
    toWholeStep(car),
  );
  const cards = cardReadings(corner).filter(({ kind }) => EASY.includes(kind));
  const asked = cards.flatMap((card) => travels.map((travel) => ({ card, travel })));
  const read = (of: Car): readonly (number | null)[] => {
    const made = makeCorner(of);
    return asked.map(({ card, travel }) => cardValue(made, card, travel));
  };
  const values = read(car);
  const spreads = spreadOf(slopesOf(car, inputs.list, read), inputs.covariance);
  let best: FiveMinuteCheck | null = null;
  asked.forEach(({ card, travel }, k) => {
    const reads = values[k];
    if (reads === null || reads === undefined || !(Math.abs(travel) > 0)) return;
    const model = spreads[k]!.sd;
    const tells = model / (card.plusMinus / 2);
    if (best && tells <= best.tells) return;
    best = { card, travel, reads, plusMinus: 2 * Math.hypot(model, card.plusMinus / 2), tells };
  });
  return best;
}

/** A height that can be blocked: whole inches, or steps of 25 mm, toward ride. */
const toWholeStep =
  ({ units }: Car) =>
  (travel: number): number => {
    const step = units === "metric" ? 0.025 : 0.0254;
    return (Math.trunc(travel / step + (travel > 0 ? 1e-9 : -1e-9)) || 0) * step;
  };
