import type { Car } from "../car/car.ts";
import type { Operation } from "../document/operation.ts";
import { study } from "../study/study.ts";
import { effectsOf } from "./effects.ts";
import type { SolveAim, SolveAnswer, SolveChange, SolveContext } from "./question.ts";

/** What a question found, before its other results are looked at. */
export type Found = Omit<SolveAnswer, "outcome" | "operations" | "effects" | "findings" | "aim"> & {
  readonly aim: Omit<SolveAim, "after">;
  readonly operations: readonly Operation[];
  /** The aim's number of a car. */
  readonly measure: (car: Car) => number | null;
  /** Outcome where nothing is changed; left out: by whether the wanted is met now. */
  readonly nothing?: "already" | "none";
  /** `readings` of the car as typed, where they need it. */
  readonly readingsOf?: (car: Car) => SolveAnswer["readings"];
};

/** Reads the document with the values as typed and looks at everything anew. */
export function finish({ subject, study: before }: SolveContext, found: Found): SolveAnswer {
  const { measure, readingsOf, nothing: ifNothing, ...rest } = found;
  const nothing = { effects: [], findings: { appeared: [], gone: [] }, changes: [], operations: [] };
  if (found.operations.length === 0) {
    const { before: now, wanted, sense } = found.aim;
    const outcome = ifNothing ?? (now !== null && isMet(now, wanted, sense) ? "already" : "none");
    return {
      ...rest,
      ...nothing,
      aim: { ...found.aim, after: now },
      outcome,
      readings: readingsOf?.(subject.car) ?? found.readings,
    };
  }
  const car = subject.carWith(found.operations);
  if (!car) {
    const notes = [...found.notes, { code: "document-refused" } as const];
    return { ...rest, ...nothing, aim: { ...found.aim, after: null }, outcome: "none", notes };
  }
  const after = measure(car);
  const { wanted, sense } = found.aim;
  const now = found.aim.before;
  const isAlready = sense !== "least" && now !== null && isMet(now, wanted, sense);
  const isReached = after !== null && isMet(after, wanted, sense);
  const outcome = isAlready && isReached ? "already" : isReached ? "reached" : "nearest";
  return {
    ...rest,
    outcome,
    aim: { ...found.aim, after },
    readings: readingsOf?.(car) ?? found.readings,
    ...effectsOf(before, study(car)),
  };
}

/** Rounding of a computed number is no miss. */
const NOTHING = 1e-9;

export function isMet(value: number, wanted: number | null, sense: SolveAim["sense"]): boolean {
  if (wanted === null) return true;
  return sense === "at-least" ? value >= wanted - NOTHING : value <= wanted + NOTHING;
}

export const operationsOf = (
  changes: readonly SolveChange[],
  type: (change: SolveChange) => number | string,
): readonly Operation[] => changes.map((change) => ({ path: change.path, value: type(change) }));
