import {
  answerSolve,
  parseQuantity,
  SOLVE_QUESTIONS,
  type SolveContext,
  type SolveInput,
  type SolveNeed,
  type SolveQuestion,
  type SolveSubject,
  type SolveValues,
  solveContext,
  solveNeed,
  unitOf,
} from "@armwright/engine";
import { applyOperations, nearestWord, readCarValue } from "@armwright/engine/document";
import { applyFile, writeApplied } from "../apply.ts";
import { type GoodReading, readCar } from "../car-file.ts";
import { EXIT, type Io } from "../io.ts";
import type { Words } from "../parse-words.ts";
import { Refusal } from "../refusal.ts";
import { solveLines } from "../report/solve.ts";
import { solveJson } from "../report/solve-json.ts";
import { questionLines, SOLVE_NEEDS } from "../report/solve-questions.ts";
import { pageFor } from "../text/page.ts";
import { plain } from "../text/plain.ts";

export function perform({ operands, values, flags }: Words, io: Io): number {
  const [file, name] = operands;
  const reading = readCar(file!, io);
  if (!reading) return EXIT.refused;
  const context = solveContext(subjectOf(reading));
  const page = pageFor(io, reading.car.units);
  if (name === undefined) {
    const idle = ["with", "apply"].find((option) => values.has(option));
    if (idle) throw new Refusal(`--${idle} goes with a question: npx armwright solve CAR QUESTION --${idle} ...`);
    if (flags.has("json")) throw new Refusal("--json goes with a question: npx armwright solve CAR QUESTION --json");
    io.out(`${questionLines(context, page).join("\n")}\n`);
    return EXIT.sound;
  }
  const apply = applyFile({ operands, values }, io);
  const question = questionNamed(name, context);
  const asked = asking(() => valuesFrom(values.get("with") ?? "", question, context));
  const answer = asking(() => answerSolve(context, question, asked));
  if (flags.has("json")) io.out(solveJson(answer));
  else io.out(`${solveLines(context, question, asked, answer, page).join("\n")}\n`);
  if (apply !== undefined) {
    if (answer.operations.length === 0) {
      io.err(`${plain(apply)} was not written: there is nothing to change.\n`);
    } else {
      writeApplied(reading.document, answer.operations, apply, io);
      io.err(`Wrote ${plain(apply)} with the answer.\n`);
    }
  }
  return answer.outcome === "none" ? EXIT.must : EXIT.sound;
}

function subjectOf({ car, document }: GoodReading): SolveSubject {
  return {
    car,
    ownRight: Object.keys(document.right ?? {}),
    carWith: (operations) => {
      const changed = readCarValue(applyOperations(document, operations));
      return changed.ok ? changed.car : null;
    },
  };
}

function questionNamed(name: string, context: SolveContext): SolveQuestion {
  const question = SOLVE_QUESTIONS.find(({ id }) => id === name);
  if (!question) {
    const ids = SOLVE_QUESTIONS.map(({ id }) => id);
    const near = nearestWord(name, ids);
    throw new Refusal(
      `solve knows no question ${JSON.stringify(name)}: ${near ? `did you mean ${near}?` : `it knows ${ids.join(", ")}.`}`,
    );
  }
  const need: SolveNeed | null = solveNeed(context, question);
  if (need) throw new Refusal(`${question.id} cannot be asked of this car: ${SOLVE_NEEDS[need]}`);
  return question;
}

/** What the engine refuses is told as a refusal. */
function asking<T>(ask: () => T): T {
  try {
    return ask();
  } catch (error) {
    if (error instanceof RangeError) throw new Refusal(`solve: ${error.message}.`);
    throw error;
  }
}

/** `up-down=1 1/2, point=upperLink.inner` by the question's own inputs. */
function valuesFrom(text: string, question: SolveQuestion, context: SolveContext): SolveValues {
  const inputs = question.inputs(context);
  const entries = text
    .split(",")
    .map((part) => part.trim())
    .filter((part) => part !== "")
    .map((part): [string, number | string] => {
      const at = part.indexOf("=");
      if (at < 0) throw new Refusal(`--with: ${JSON.stringify(part)} is not NAME=VALUE.`);
      const name = part.slice(0, at).trim();
      const input = inputs.find(({ id }) => id === name);
      if (input) return [name, readValue(input, part.slice(at + 1).trim(), context)];
      const ids = inputs.map(({ id }) => id);
      const near = nearestWord(name, ids);
      throw new Refusal(
        `--with: ${question.id} has no ${JSON.stringify(name)}: ${near ? `did you mean ${near}?` : `it has ${ids.join(", ")}.`}`,
      );
    });
  const names = entries.map(([name]) => name);
  const twice = names.find((name, i) => names.indexOf(name) !== i);
  if (twice !== undefined) throw new Refusal(`--with: ${twice} is given twice: keep one.`);
  return Object.fromEntries(entries);
}

function readValue(input: SolveInput, text: string, { study }: SolveContext): number | string {
  if ("choices" in input) {
    const ids = input.choices.map(({ id }) => id);
    if (ids.includes(text)) return text;
    const near = nearestWord(text, ids);
    throw new Refusal(
      `--with: ${input.id} is ${near ? `not ${JSON.stringify(text)}: did you mean ${near}?` : `one of ${ids.join(", ")}; found ${JSON.stringify(text)}.`}`,
    );
  }
  const { units } = study.car;
  const parsed = parseQuantity(text, input.dimension, units);
  if (!parsed.ok)
    throw new Refusal(
      `--with: ${input.id}: ${JSON.stringify(text)} is no value in ${unitOf(input.dimension, units)}${parsed.suggestion === undefined ? "" : `: did you mean ${parsed.suggestion}?`}.`,
    );
  if (parsed.value < input.least || parsed.value > input.most)
    throw new Refusal(
      `--with: ${input.id}: ${JSON.stringify(text)} is ${parsed.value < input.least ? "less than can be" : "more than can be"} asked for.`,
    );
  return parsed.value;
}
