import { study } from "../study/study.ts";
import { CAMBER_AT_TWO, CONSTANT_CAMBER } from "./camber-questions.ts";
import { LEAST_PLUNGE } from "./least-plunge.ts";
import { LEAST_TOE } from "./least-toe.ts";
import type {
  SolveAnswer,
  SolveContext,
  SolveInput,
  SolveNeed,
  SolveQuestion,
  SolveSubject,
  SolveValues,
} from "./question.ts";
import { RIDE_HEIGHT } from "./ride-height.ts";
import { SHAFT_SLIP } from "./shaft-slip.ts";
import { SHORTEST_WHEELBASE } from "./shortest-wheelbase.ts";

/** All questions, in the order they are offered. A further one is a declaration in a file of its own and a line here. */
export const SOLVE_QUESTIONS: readonly SolveQuestion[] = [
  CONSTANT_CAMBER,
  CAMBER_AT_TWO,
  LEAST_TOE,
  LEAST_PLUNGE,
  SHAFT_SLIP,
  SHORTEST_WHEELBASE,
  RIDE_HEIGHT,
];

/** Makes a car ready for questions: one study for all of them. */
export const solveContext = (subject: SolveSubject): SolveContext => ({ subject, study: study(subject.car) });

/** What this car lacks for a question; null where it can be asked. */
export const solveNeed = (context: SolveContext, question: SolveQuestion): SolveNeed | null =>
  question.kinds.includes(context.study.car.linkage.kind) ? question.needs(context) : "other-linkage";

/**
 * Answers a question. What `given` leaves out has its default. Throws RangeError where a value is no possible one or the car
 * lacks what the question needs; never for a poor design.
 */
export function answerSolve(context: SolveContext, question: SolveQuestion, given: SolveValues = {}): SolveAnswer {
  const need = solveNeed(context, question);
  if (need) throw new RangeError(`${question.id} cannot be asked of this car: ${need}`);
  const inputs = question.inputs(context);
  const unknown = Object.keys(given).find((id) => inputs.every((input) => input.id !== id));
  if (unknown !== undefined)
    throw new RangeError(`${question.id} has no ${unknown}: it has ${inputs.map(({ id }) => id).join(", ")}`);
  const values = Object.fromEntries(
    inputs.map((input) => [input.id, checked(input, given[input.id] ?? input.default)]),
  );
  const { from, to } = values;
  if (from !== undefined && to !== undefined && Number(from) === Number(to))
    throw new RangeError("from and to are the same travel");
  return question.solve(context, values);
}

function checked(input: SolveInput, value: number | string): number | string {
  if (input.dimension === "word") {
    const { choices } = input as Extract<SolveInput, { readonly dimension: "word" }>;
    if (choices.some(({ id }) => id === value)) return value;
    throw new RangeError(`${input.id} is one of ${choices.map(({ id }) => id).join(", ")}; found ${value}`);
  }
  const { least, most } = input as Extract<SolveInput, { readonly least: number }>;
  if (typeof value === "number" && value >= least && value <= most) return value;
  throw new RangeError(`${input.id} is out of bounds`);
}
