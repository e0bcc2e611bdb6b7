import { answerSolve, SOLVE_QUESTIONS, type SolveAnswer, type SolveValues, solveContext } from "@armwright/engine";
import { type CarDocument, readCarValue, setField } from "@armwright/engine/document";
import type { Job } from "../jobs/job.ts";

export interface SolveInput {
  readonly document: CarDocument;
  readonly question: string;
  /** What the builder set himself; the rest has its default. */
  readonly values: SolveValues;
}

/** Answers one question of the car; a hard one takes seconds, and is given up with its worker. */
export const solveJob: Job<SolveInput, SolveAnswer> = ({ document, question, values }, { tell }) => {
  const asked = SOLVE_QUESTIONS.find(({ id }) => id === question);
  const reading = readCarValue(document);
  if (!asked || !reading.ok) throw new Error("the car has faults: mend them first");
  const context = solveContext({
    car: reading.car,
    ownRight: Object.keys(document.right ?? {}),
    carWith: (operations) => {
      const changed = readCarValue(
        operations.reduce<CarDocument>((doc, { path, value }) => setField(doc, path, value), document),
      );
      return changed.ok ? changed.car : null;
    },
  });
  return answerSolve({ ...context, tell }, asked, values);
};
