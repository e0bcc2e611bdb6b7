import {
  type AsBuiltStudy,
  type Car,
  type Explanation,
  explainAsBuilt,
  explainedOperations,
  fiveMinuteCheck,
  likelyCauses,
  logReadings,
  makeCorner,
  PLACE_KIND,
  reportTravel,
  turnsFor,
  uncertainInputs,
} from "@armwright/engine";
import { applyOperations, type CarDocument, type Operation, readCarValue } from "@armwright/engine/document";
import type { Job } from "../jobs/job.ts";
import { type Card, cardOf, isSameCard } from "./card.ts";

export interface AsBuiltInput {
  readonly document: CarDocument;
}

/** A cause, and what it makes of the car. */
export interface ExplanationSaid extends Explanation {
  /** The reading that tells by itself whether it is so: of the point, where it can be had. */
  readonly proof: Card | null;
  /** The edits that make the plan the car as built. */
  readonly operations: readonly Operation[];
  /** Turns that bring camber and toe back; none where nothing has to be turned. */
  readonly turns: readonly { readonly label: string; readonly change: number; readonly turns: number | null }[];
  /** Wheel travel to the chosen stops and to the first hard limit, planned and as built, m. */
  readonly stops: readonly StopCompared[];
}

export interface StopCompared {
  readonly direction: "bump" | "droop";
  readonly planned: number;
  readonly built: number;
  /** The first hard limit: its name and what is left to it from the stop, m. */
  readonly first: { readonly label: string; readonly planned: number; readonly built: number } | null;
}

export interface ComparedSaid {
  readonly path: string;
  readonly card: Card;
  readonly travel: number;
  readonly reads: number;
  readonly predicted: number | null;
  readonly predictedSd: number;
  readonly misfit: number | null;
}

export interface AsBuiltAnswer {
  readonly check: {
    readonly card: Card;
    readonly travel: number;
    readonly reads: number;
    readonly plusMinus: number;
  } | null;
  readonly readings: readonly ComparedSaid[];
  readonly agrees: boolean;
  /** Single causes that the readings cannot tell apart, likeliest first; none where nothing stands out. */
  readonly explanations: readonly ExplanationSaid[];
  readonly together: AsBuiltStudy["together"];
  readonly isGiven: boolean;
}

/** Looked at past the stops, m. */
const BEYOND = 0.08;

/** The car that was built against its plan; heavy enough to be kept out of the hand's way. */
export const asBuiltJob: Job<AsBuiltInput, AsBuiltAnswer> = async ({ document }, { pause }) => {
  const reading = readCarValue(document);
  if (!reading.ok) throw new Error("the car has faults: mend them first");
  const { car } = reading;
  const inputs = uncertainInputs(car);
  const check = fiveMinuteCheck(car, inputs);
  await pause();
  const found = explainAsBuilt(car, car.asBuilt ?? [], inputs);
  const explanations: ExplanationSaid[] = [];
  for (const explanation of likelyCauses(found)) {
    await pause();
    const operations = explainedOperations(car, explanation);
    const built = builtBy(document, operations);
    explanations.push({
      ...explanation,
      proof: proofOf(car, explanation.cause),
      operations,
      turns: built ? turnsBack(car, built) : [],
      stops: built ? stopsOf(car, built) : [],
    });
  }
  return {
    check: check && { ...check, card: cardOf(check.card) },
    readings: found.readings.map(({ logged, card, predicted, predictedSd, misfit }) => ({
      path: logged.path,
      card: cardOf(card),
      travel: logged.travel,
      reads: logged.reads,
      predicted,
      predictedSd,
      misfit,
    })),
    agrees: found.agrees,
    explanations,
    together: found.together.slice(0, 3),
    isGiven: inputs.isGiven,
  };
};

function proofOf(car: Car, cause: Explanation["cause"]): Card | null {
  if (cause.kind === "setting") return null;
  const asked = { kind: PLACE_KIND[cause.input.axis], of: cause.input.place.label };
  const reading = logReadings(makeCorner(car)).find((each) => isSameCard(each, asked));
  return reading ? cardOf(reading) : null;
}

function builtBy(document: CarDocument, operations: readonly Operation[]): Car | null {
  const reading = readCarValue(applyOperations(document, operations));
  return reading.ok ? reading.car : null;
}

function turnsBack(plan: Car, built: Car): ExplanationSaid["turns"] {
  const { camber, toe } = plan.wheel;
  if (Math.abs(built.wheel.camber - camber) < 1e-4 && Math.abs(built.wheel.toe - toe) < 1e-4) return [];
  return turnsFor(built, { camber, toe })
    .turns.filter(({ change }) => Math.abs(change) > 1e-5)
    .map(({ label, change, turns }) => ({ label, change, turns }));
}

function stopsOf(plan: Car, built: Car): readonly StopCompared[] {
  const [a, b] = [plan, built].map((car) => reportTravel(makeCorner(car), BEYOND));
  return (["bump", "droop"] as const).map((direction) => {
    const before = a![direction];
    const after = b![direction];
    const first = before.limits.find(({ nature, pastAtRide }) => nature === "hard" && !pastAtRide);
    const same = first && after.limits.find(({ id }) => id === first.id);
    return {
      direction,
      planned: before.stop.travel,
      built: after.stop.travel,
      first: first && same ? { label: first.label, planned: first.travelLeft, built: same.travelLeft } : null,
    };
  });
}
