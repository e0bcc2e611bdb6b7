import { describe, expect, it } from "vitest";
import { applyOperations, readCarValue } from "../../src/document/index.ts";
import { answerSolve, SOLVE_QUESTIONS, solveNeed } from "../../src/solve/ask.ts";
import { saySolveNote } from "../../src/solve/note.ts";
import { formatLength } from "../../src/units/format.ts";
import { askable, EXAMPLES } from "./subject.ts";

const CASES = EXAMPLES.flatMap((car) => SOLVE_QUESTIONS.map((question) => ({ car, question, id: question.id })));

describe.each(CASES)("$id of $car", ({ car: name, question }) => {
  const context = askable(name);
  const answer = answerSolve(context, question);

  it("can be asked and says what was found", () => {
    expect(solveNeed(context, question)).toBeNull();
    expect(JSON.stringify(answer)).not.toMatch(/null,null,null,null,null|NaN|undefined/);
    expect(answer.operations.length).toBeGreaterThan(0);
    for (const note of answer.notes) expect(saySolveNote(note, context.study.car)).toMatch(/[.:]/);
  });

  it("proposes values on a tape's marks that read as what it says", () => {
    const { units } = context.study.car;
    answer.operations.forEach(({ path, value }, i) => {
      const change = answer.changes[i]!;
      expect(change.path).toBe(path);
      if (change.dimension === "length") {
        expect(String(value)).toBe(formatLength(change.after, units));
        expect(Math.abs(change.after - change.exact)).toBeLessThan(0.008);
      }
    });
  });

  it("is no worse than now, told of the document with its values put in", () => {
    const reading = readCarValue(applyOperations(context.document, answer.operations));
    if (!reading.ok) throw new Error("the document with the answer does not read");
    const { before, after, sense } = answer.aim;
    if (question.id !== "ride-height") {
      if (sense === "at-least") expect(after!).toBeGreaterThanOrEqual(before!);
      else expect(after!).toBeLessThanOrEqual(before!);
    }
    if (answer.outcome === "reached" && answer.aim.wanted !== null) {
      const miss = sense === "at-least" ? answer.aim.wanted - after! : after! - answer.aim.wanted;
      expect(miss).toBeLessThanOrEqual(1e-9);
    }
  });
});
