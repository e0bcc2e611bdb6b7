import {
  type AsBuiltCause,
  type Car,
  explainAsBuilt,
  explainedField,
  fiveMinuteCheck,
  makeCorner,
  reportTravel,
  turnsFor,
  uncertainInputs,
  type Vec3,
} from "@armwright/engine";
import { applyOperations, type CarDocument, type Operation, readCarValue } from "@armwright/engine/document";
import type { Job } from "../jobs/job.ts";
import { sourceOf, toTyped } from "../survey/point-source.ts";
import { type Card, cardOf } from "./card.ts";

export interface AsBuiltInput {
  readonly document: CarDocument;
}

export type CauseSaid =
  | { readonly kind: "point"; readonly label: string; readonly axis: "x" | "y" | "z" }
  | { readonly kind: "setting"; readonly setting: "camber" | "toe" };

export interface ExplanationSaid {
  readonly cause: CauseSaid;
  /** m or rad, and its standard deviation. */
  readonly by: number;
  readonly sd: number;
  readonly test: number;
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
  readonly together: readonly { readonly cause: CauseSaid; readonly by: number }[];
  readonly isGiven: boolean;
}

/** Standard deviations that a cause has to be worth before it is named. */
const LEAST_TEST = 2;
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
  const best = found.explanations[0];
  const isCompared = found.readings.some(({ misfit }) => misfit !== null);
  const likely =
    isCompared && best && Math.abs(best.test) > LEAST_TEST ? found.explanations.slice(0, Math.max(found.alike, 1)) : [];
  const explanations: ExplanationSaid[] = [];
  for (const explanation of likely) {
    await pause();
    const operations = operationsFor(document, car, explanation);
    const built = builtBy(document, operations);
    explanations.push({
      cause: saidOf(explanation.cause),
      by: explanation.by,
      sd: explanation.sd,
      test: explanation.test,
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
    together: found.together.slice(0, 3).map(({ cause, by }) => ({ cause: saidOf(cause), by })),
    isGiven: inputs.isGiven,
  };
};

const saidOf = (cause: AsBuiltCause): CauseSaid =>
  cause.kind === "setting"
    ? { kind: "setting", setting: cause.setting }
    : { kind: "point", label: cause.input.place.label, axis: cause.input.axis };

type Explained = Parameters<typeof explainedField>[1];

/** A surveyed point is typed from then on: the readings say where it was meant to be. */
function operationsFor(document: CarDocument, car: Car, explanation: Explained): readonly Operation[] {
  const { cause, by } = explanation;
  if (cause.kind === "point" && sourceOf(document, cause.input.place.path).surveyed !== null) {
    const name = sourceOf(document, cause.input.place.path).surveyed;
    const at: Vec3 | undefined = car.survey?.result.points.find((point) => point.name === name)?.at;
    const { axis } = cause.input;
    if (at) return toTyped(document, cause.input.place.path, { ...at, [axis]: at[axis] + by });
  }
  return [explainedField(car, explanation)];
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
