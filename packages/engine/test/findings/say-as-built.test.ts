import { expect, test } from "vitest";
import { explainedOperations } from "../../src/as-built/explained-operations.ts";
import { uncertainInputs } from "../../src/certainty/inputs.ts";
import { applyOperations } from "../../src/document/operation.ts";
import { sayBack, sayOff } from "../../src/findings/say-as-built.ts";
import { AXES, pointAt } from "../../src/solve/point-places.ts";
import { carOfDocument, exampleCar, exampleDocument } from "../example-documents.ts";

const INCH = 0.0254;
const plan = exampleCar("brittlebush");

test("a point that is off is said by its way and put back the other way; under a mark it is not nothing", () => {
  const said = AXES.map((axis) => {
    const input = uncertainInputs(plan).list.find((each) => each.kind === "point" && each.axis === axis)!;
    if (input.kind !== "point") throw new Error("a point was asked for");
    const cause = { kind: "point", input, sd: input.sd } as const;
    return [0.17 * INCH, -0.17 * INCH, 0.1 * (INCH / 32)].map(
      (by) =>
        `${sayOff({ cause, by }, "inch-pound").slice(input.place.label.length)}; ${sayBack(axis, by, "inch-pound")}`,
    );
  });
  expect(said).toEqual([
    [
      " is 5/32 in farther forward; 5/32 in back",
      " is 5/32 in farther back; 5/32 in forward",
      " is under 1/32 in farther forward; under 1/32 in back",
    ],
    [
      " is 5/32 in farther out; 5/32 in in",
      " is 5/32 in farther in; 5/32 in out",
      " is under 1/32 in farther out; under 1/32 in in",
    ],
    [" is 5/32 in high; 5/32 in down", " is 5/32 in low; 5/32 in up", " is under 1/32 in high; under 1/32 in down"],
  ]);
});

test("a setting is said by the way that the wheel stands", () => {
  const said = (setting: "camber" | "toe", by: number) =>
    sayOff({ cause: { kind: "setting", setting, sd: 0.01 }, by: (by * Math.PI) / 180 }, "metric");
  expect(said("camber", 1.94)).toBe("at ride height the top of the wheel leans out 1.9 deg more than planned");
  expect(said("camber", -1.94)).toBe("at ride height the top of the wheel leans in 1.9 deg more than planned");
  expect(said("toe", 0.3)).toBe("at ride height the wheel toes in 0.3 deg more than planned");
});

test("the edits of a cause move its point by what was said, also where the point was surveyed", () => {
  const document = exampleDocument("brittlebush");
  const surveyed = new Set(plan.survey!.uses.map(({ path }) => path));
  let moved = 0;
  for (const input of uncertainInputs(plan).list) {
    if (input.kind !== "point") continue;
    const { place, axis } = input;
    const operations = explainedOperations(plan, { cause: { kind: "point", input, sd: input.sd }, by: INCH / 4 });
    const built = carOfDocument(applyOperations(document, operations));
    const [was, is] = [pointAt(plan, place), pointAt(built, place)];
    // Typed to a thirty-second: off by half of one at most.
    expect(Math.abs(is[axis] - was[axis] - INCH / 4), `${place.path}, ${axis}`).toBeLessThan(INCH / 64 + 1e-9);
    if (surveyed.has(place.path)) moved += 1;
  }
  expect(moved).toBeGreaterThan(3);
});
