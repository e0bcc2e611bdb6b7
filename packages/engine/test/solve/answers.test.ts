import { describe, expect, it } from "vitest";
import type { Car } from "../../src/car/car.ts";
import { keepOutSolid, movingSolids } from "../../src/clearance/moving-solids.ts";
import { separation } from "../../src/clearance/separation.ts";
import { makeCorner, solveAt } from "../../src/cycle/corner.ts";
import { positionOf } from "../../src/cycle/position.ts";
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
    const isBlocked = answer.notes.some(({ code }) => code === "in-the-way");
    expect(answer.operations.length > 0 || isBlocked).toBe(true);
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

describe("obstacles", () => {
  it("keeps an answer clear of what its first choice would have to stand in, and says what that costs", () => {
    const context = askable("greasewood");
    const { car } = context.study;
    const question = SOLVE_QUESTIONS.find(({ id }) => id === "constant-camber")!;
    const answer = answerSolve(context, question);
    const note = answer.notes.find(({ code }) => code === "in-the-way");
    if (note?.code !== "in-the-way") throw new Error("greasewood's best place for constant camber lies in a keep-out");
    expect(
      answer.findings.appeared.filter(({ code, place }) => code === "past-at-ride" && place.startsWith("keepOuts")),
    ).toEqual([]);
    expect(answer.aim.after!).toBeLessThan(answer.aim.before!);
    expect(note.value).toBeLessThan(answer.aim.best!);
    // Without keep-outs it is had.
    const open = askable("greasewood", { keepOuts: [] });
    const free = answerSolve(open, question);
    expect(free.notes.some(({ code }) => code === "in-the-way")).toBe(false);
    expect(free.aim.best!).toBeCloseTo(note.value, 6);
    expect(saySolveNote(note, car)).toContain("something is in the way");
  });

  it("tells of room for the tyre behind the first thing that it meets", () => {
    const open = askable("saltbush", { keepOuts: [] });
    const { car } = open.study;
    const { hubFace, freeRadius } = car.wheel;
    // A thin post before the tyre, as far forward as it would come with the corner 4 in farther forward.
    const inches = (metres: number): number => metres / 0.0254;
    const post = {
      name: "post",
      shape: "tube" as const,
      from: { x: inches(hubFace.x + freeRadius) + 4, y: inches(hubFace.y) + 4, z: 0 },
      to: { x: inches(hubFace.x + freeRadius) + 4, y: inches(hubFace.y) + 4, z: 60 },
      diameter: 1,
      clearance: 0,
    };
    const context = askable("saltbush", { keepOuts: [post] as never });
    const question = SOLVE_QUESTIONS.find(({ id }) => id === "shortest-wheelbase")!;
    const near = answerSolve(context, question, { forward: 0.3 });
    expect(near.notes.some(({ code }) => code === "clear-again")).toBe(false);
    const far = answerSolve(context, question, { forward: 1 });
    const again = far.notes.find(({ code }) => code === "clear-again");
    if (again?.code !== "clear-again") throw new Error("behind a post there is room");
    expect(again.label).toContain("post");
    // A whole tyre and the post lie between.
    expect(again.at - (far.aim.before! - far.aim.best!)).toBeGreaterThan(1.5 * freeRadius);
  });

  it("tells how far it has come, never backwards", () => {
    const shares: number[] = [];
    const question = SOLVE_QUESTIONS.find(({ id }) => id === "camber-at-two")!;
    answerSolve({ ...askable("greasewood"), tell: (share) => shares.push(share) }, question);
    expect(shares.length).toBeGreaterThan(10);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares[0]).toBe(0);
    expect(shares.at(-1)).toBeLessThanOrEqual(1);
  });
});

describe("the shortest wheelbase", () => {
  /** Least gap of the tyre to any keep-out over the travel, less what is asked for there, m: nothing but poses and distances. */
  const tyreSpare = (car: Car, droop: number, bump: number): number => {
    const corner = makeCorner(car);
    const gaps = Array.from({ length: 161 }, (_, i) => {
      const { state } = solveAt(corner, droop + ((bump - droop) * i) / 160)!;
      const { tyre } = movingSolids(corner, positionOf(corner, state));
      return car.keepOuts.map((keepOut) => separation(tyre, keepOutSolid(keepOut)).distance - keepOut.clearance);
    });
    return Math.min(...gaps.flat());
  };
  /** Back to a mark of the tape; the tyre may come slantwise at what it meets, and half a millimetre between the looks. */
  const MARK = 0.0254 / 16;
  const LOOKS = 0.0005;

  it.each(["saltbush", "greasewood", "juniper"] as const)(
    "leaves the tyre of %s just clear, not more and not less",
    (name) => {
      const context = askable(name);
      const { bump, droop } = context.study.travel;
      const question = SOLVE_QUESTIONS.find(({ id }) => id === "shortest-wheelbase")!;
      for (const more of [0, 0.02]) {
        const answer = answerSolve(context, question, { forward: 1, more });
        const reading = readCarValue(applyOperations(context.document, answer.operations));
        if (!reading.ok) throw new Error("the document with the answer does not read");
        const spare = tyreSpare(reading.car, droop.stop.travel, bump.stop.travel);
        expect(Math.abs(answer.aim.before! - answer.aim.after!)).toBeGreaterThan(2 * MARK);
        expect(spare - more).toBeGreaterThan(-LOOKS);
        expect(spare - more).toBeLessThan(MARK + LOOKS);
      }
    },
  );
});
