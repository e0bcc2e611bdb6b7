import { type Corner, cardReadings, cardValue, makeCorner, study } from "@armwright/engine";
import {
  applyOperations,
  type CarDocument,
  type FieldObject,
  parsePath,
  readCarValue,
  setField,
  valueAt,
} from "@armwright/engine/document";
import { expect, test } from "vitest";
import { asBuiltJob } from "../../src/as-built/as-built-job.ts";
import { keptBeside } from "../../src/as-built/keep-beside.ts";
import { toTyped } from "../../src/survey/point-source.ts";
import { exampleCar, INCH } from "../mounts/car.ts";

const TOOLS = { tell: () => undefined, pause: async () => undefined };
const PLACE = "linkage.upperLink.inner";

/** What a car reads at the heights, in, without any error of the tape. */
const logOf = (corner: Corner, heights: readonly number[]): readonly FieldObject[] =>
  heights.flatMap((at) =>
    cardReadings(corner)
      .filter(({ kind }) => kind !== "hub-height")
      .flatMap((card): FieldObject[] => {
        const value = cardValue(corner, card, at * INCH);
        if (value === null) return [];
        return card.dimension === "angle"
          ? [{ what: card.kind, at, degrees: (value * 180) / Math.PI }]
          : [{ what: card.kind, at, reads: value / INCH }];
      }),
  );

/** The surveyed example with a log of a car whose upper bracket is welded 3/8 in high. */
function surveyedAndBuilt(): CarDocument {
  const { document, car } = exampleCar("brittlebush");
  const at = car.survey!.result.points.find(({ name }) => name === "upper bracket")!.at;
  const built = readCarValue(applyOperations(document, toTyped(document, PLACE, { ...at, z: at.z + (3 / 8) * INCH })));
  if (!built.ok) throw new Error("the car as built does not read");
  const readings = logOf(makeCorner(built.car), [-5, -2, 0, 3, 6]);
  return setField(document, "asBuilt", { readings });
}

test("a surveyed point that was welded elsewhere is typed where it is, and the car kept so agrees with its log", async () => {
  const plan = surveyedAndBuilt();
  const answer = await asBuiltJob({ document: plan }, TOOLS);
  expect(answer.agrees).toBe(false);
  const right = answer.explanations.find(
    ({ cause, operations }) =>
      cause.kind === "point" && cause.input.axis === "z" && operations[0]!.path === `${PLACE}.surveyed`,
  );
  expect(right).toBeDefined();
  expect(Math.abs(right!.by - (3 / 8) * INCH)).toBeLessThan(2 * right!.sd);
  // The survey would pass over a coordinate beside its name: all three are typed.
  const kept = keptBeside(plan, right!.operations);
  const { surveyed: _, ...others } = valueAt(plan, parsePath(PLACE)!) as FieldObject;
  const typed = { x: expect.anything(), y: expect.anything(), z: expect.anything() };
  expect(valueAt(kept, parsePath(PLACE)!)).toEqual({ ...others, ...typed });
  expect(kept.name).toBe("Brittlebush as built");
  const after = await asBuiltJob({ document: kept }, TOOLS);
  expect(after.agrees).toBe(true);
  expect(after.readings.every(({ misfit }) => misfit === null || Math.abs(misfit) < 2)).toBe(true);
  // What becomes of the stops is what the kept car has.
  const reading = readCarValue(kept);
  if (!reading.ok) throw new Error("the kept car does not read");
  const { travel } = study(reading.car);
  for (const { direction, built } of right!.stops) expect(built).toBeCloseTo(travel[direction].stop.travel, 6);
});

test("camber set otherwise than planned: said by its way, with the turns that bring it back", async () => {
  const { document, car } = exampleCar("saltbush");
  const off = { ...car, wheel: { ...car.wheel, camber: car.wheel.camber - (2 * Math.PI) / 180 } };
  const readings = logOf(makeCorner(off), [-6, -3, 0, 3, 5]);
  const answer = await asBuiltJob({ document: setField(document, "asBuilt", { readings }) }, TOOLS);
  const [best] = answer.explanations;
  expect(best!.cause).toMatchObject({ kind: "setting", setting: "camber" });
  expect((best!.by * 180) / Math.PI).toBeCloseTo(-2, 0);
  expect(best!.turns.length).toBeGreaterThan(0);
  expect(best!.turns.every(({ change }) => Number.isFinite(change) && change !== 0)).toBe(true);
});
