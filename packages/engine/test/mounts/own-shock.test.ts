import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { applyOperations, type CarDocument, readCarValue } from "../../src/document/index.ts";
import { findMounts } from "../../src/mounts/find-mounts.ts";
import { ownShock } from "../../src/mounts/own-shock.ts";
import type { ShockOption } from "../../src/mounts/request.ts";
import { hangShock } from "../../src/mounts/shock-operations.ts";
import { INCH, smallRequest } from "./request-for.ts";

const { corner, request } = smallRequest("saltbush");
const document = JSON.parse(
  readFileSync(new URL("../../../../examples/saltbush.car.json", import.meta.url), "utf8"),
) as CarDocument;
const read = (changed: CarDocument) => {
  const reading = readCarValue(changed);
  if (!reading.ok) throw new Error(`does not read: ${reading.faults.map(({ path }) => path).join(", ")}`);
  return reading.car;
};
const [place] = findMounts(corner, request).best;
if (!place) throw new Error("the demo has places");

const eyes = {
  misalignmentLimit: (17 * Math.PI) / 180,
  eyeWidth: 1.5 * INCH,
  eyeDiameter: 1.75 * INCH,
  tabGap: 1.75 * INCH,
};

test("what the shelf says of a shock's eyes goes into the car with it, and comes back as asked for", () => {
  const other: ShockOption = { ...place.shock, name: "twelve", longest: place.shock.longest + INCH, ...eyes };
  for (const shock of [other, { ...place.shock, ...eyes }]) {
    const own = ownShock(
      read(applyOperations(document, hangShock(document, corner.car, { ...place, shock }).operations)),
    );
    for (const [name, value] of Object.entries(eyes))
      expect(own?.[name as keyof typeof eyes], `${shock.name} ${name}`).toBeCloseTo(value, 4);
  }
});

test("another shock of which nothing is said does not inherit the eyes of the one before", () => {
  const tilting = applyOperations(document, [{ path: "shock.misalignmentLimit", value: 17 }]);
  const car = read(tilting);
  expect(ownShock(car)?.misalignmentLimit).toBeCloseTo(eyes.misalignmentLimit, 9);
  const { misalignmentLimit: _, ...plain } = place.shock;
  const shock = { ...plain, name: "twelve", longest: place.shock.longest + INCH };
  const after = ownShock(read(applyOperations(tilting, hangShock(tilting, car, { ...place, shock }).operations)));
  expect(after?.misalignmentLimit).toBeUndefined();
});
