import { expect, test } from "vitest";
import type { Car } from "../../src/car/car.ts";
import { type CarDocument, readCarValue, sayFault, setField, startingDocument } from "../../src/document/index.ts";
import { KINDS } from "./typed-documents.ts";

function carOf(document: CarDocument): Car {
  const reading = readCarValue(document);
  if (!reading.ok) throw new Error(reading.faults.map(sayFault).join("\n"));
  return reading.car;
}

/** The same section on the other side of the car: every y the other way. */
function mirrored<T>(value: T): T {
  const walk = (each: unknown, name: string): unknown => {
    if (Array.isArray(each)) return each.map((item) => walk(item, name));
    if (typeof each === "object" && each !== null) {
      return Object.fromEntries(Object.entries(each).map(([key, inner]) => [key, walk(inner, key)]));
    }
    if (name !== "y") return each;
    return typeof each === "number" ? -each : String(each).startsWith("-") ? String(each).slice(1) : `-${each}`;
  };
  return walk(value, "") as T;
}

test("there is no right side where none is given", () => {
  expect(carOf(startingDocument("h-arm", "inch-pound")).right).toBeUndefined();
});

test.each(KINDS)("%s: a right side given as the left one's mirror image computes as the left one", (kind) => {
  const document = startingDocument(kind, "inch-pound");
  const { wheel, linkage, driveshaft, shock, strap, bumpStop } = document;
  const right = mirrored({ wheel, linkage, driveshaft, shock, strap, bumpStop });
  const { right: own, ...left } = carOf(setField(document, "right", right as never));
  const { assumed: ofRight, ...rightCar } = own ?? left;
  const { assumed: ofLeft, ...leftCar } = left;
  // Bolts point along a line, so a mirrored hinge may turn round; everything else is equal to the last digit.
  const withoutBolts = ({ rodEnds, ...car }: Omit<Car, "assumed">) => ({
    ...car,
    rodEnds: rodEnds.map(({ pivot }) => pivot),
  });
  expect(withoutBolts(rightCar)).toEqual(withoutBolts(leftCar));
  rightCar.rodEnds.forEach(({ boltAxis: a }, index) => {
    const b = leftCar.rodEnds[index]?.boltAxis ?? { x: 0, y: 0, z: 0 };
    expect(Math.abs(a.x * b.x + a.y * b.y + a.z * b.z)).toBeCloseTo(1, 12);
  });
  expect(ofRight.length).toBe(ofLeft.length);
});

test("only what is given differs, and its assumptions are told under right", () => {
  const document = startingDocument("h-arm", "inch-pound");
  const shock = {
    upper: { x: -4, y: -16, z: 33 },
    lower: { x: -4, y: -23, z: 12, on: "lower-arm" },
    shortest: 15,
    longest: 25,
  };
  const car = carOf(setField(document, "right.shock", shock));
  expect(car.right?.shock?.upper.point).toEqual({ x: -4 * 0.0254, y: 16 * 0.0254, z: 33 * 0.0254 });
  expect(car.right?.linkage).toEqual(car.linkage);
  const paths = car.right?.assumed.map((each) => each.path) ?? [];
  expect(paths).toContain("right.shock.diameter");
  expect(paths).not.toContain("shock.diameter");
});

test("a yoke's phase turns the other way in the mirror", () => {
  const document = setField(startingDocument("h-arm", "inch-pound"), "driveshaft.yokePhase", 30);
  const right = mirrored(document.driveshaft);
  const car = carOf(setField(document, "right.driveshaft", right as never));
  expect(car.right?.driveshaft?.yokePhase).toBeCloseTo(-Math.PI / 6, 12);
});
