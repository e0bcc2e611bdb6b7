import { expect, it } from "vitest";
import { ROW } from "../../src/cycle/row.ts";
import { answerSolve } from "../../src/solve/ask.ts";
import { CONSTANT_CAMBER } from "../../src/solve/camber-questions.ts";
import { equalAndParallel } from "../../src/solve/equal-parallel.ts";
import { camberMovables } from "../../src/solve/movables.ts";
import { offsetBy } from "../../src/solve/move-points.ts";
import { rangeOf, rowsOver, searchTravels } from "../../src/solve/over-travel.ts";
import { askable } from "./subject.ts";

/** An H-arm whose four hinge points make two parallel lines: the spindle can then be carried without turning. */
const parallel = () => askable("saltbush", { "linkage.lowerArm.innerFront.z": "11 7/16" });
/** rad */
const CONSTANT = 1e-9;

it("keeps camber to 1e-9 rad where the upper link is equal and parallel to an arm with parallel hinges", () => {
  const { study } = parallel();
  const { car } = study;
  const made = offsetBy(car, camberMovables(car)[0]!, equalAndParallel(car)!);
  const travels = searchTravels(study.travel.droop.stop.travel, study.travel.bump.stop.travel);
  expect(rangeOf(rowsOver(car, travels)!, ROW.camber)).toBeGreaterThan(1e-3);
  expect(rangeOf(rowsOver(made, travels)!, ROW.camber)).toBeLessThan(CONSTANT);
});

it("finds that place from the drawn one", () => {
  const context = parallel();
  const answer = answerSolve(context, CONSTANT_CAMBER);
  expect(answer.aim.best).toBeLessThan(CONSTANT);
  const [y, z] = ["y", "z"].map(
    (axis) => answer.changes.find(({ path }) => path === `linkage.upperLink.inner.${axis}`)!,
  );
  const move = equalAndParallel(context.study.car)!;
  expect(y!.exact - y!.before!).toBeCloseTo(move.y, 6);
  expect(z!.exact - z!.before!).toBeCloseTo(move.z, 6);
});

it("has none for linkages without such a pair", () => {
  expect(equalAndParallel(askable("rabbitbrush").study.car)).toBeNull();
  expect(equalAndParallel(askable("catclaw").study.car)).toBeNull();
});
