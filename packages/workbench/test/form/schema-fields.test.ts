import { type CarDocument, carJsonSchema, startingDocument } from "@armwright/engine/document";
import { describe, expect, test } from "vitest";
import { fieldAt, fieldsAt, formsFrom, placeName } from "../../src/form/schema-fields.ts";
import { sketchOf } from "../../src/sheet/sketch/sketch-of.tsx";
import { STEPS } from "../../src/steps/steps.ts";

formsFrom(carJsonSchema());

const KINDS = ["h-arm", "double-a-arm", "trailing-arm", "five-link"] as const;

describe("forms come from the published schema", () => {
  test("a field tells meaning, unit, typical range and what is assumed", () => {
    const field = fieldAt("wheel.loadedRadius", startingDocument("h-arm", "inch-pound"));
    expect(field).toMatchObject({
      kind: "quantity",
      dimension: "length",
      typical: "12 to 19 in (305 to 483 mm)",
      isRequired: false,
    });
    expect(field?.leftOut).toMatch(/0\.96 of the free radius/);
  });

  test.each(KINDS)("every entry of a %s car has its field in some step", (kind) => {
    const document = startingDocument(kind, "inch-pound");
    const asked = STEPS.flatMap(({ places }) => places.flatMap((place) => fieldsAt(place, document))).map(
      ({ path }) => path,
    );
    const entries = leaves(document).filter((path) => !/^(armwright|units|\$schema|linkage\.kind)/.test(path));
    const missing = entries.filter(
      (path) => !asked.some((each) => path === each || path.startsWith(`${each}.`) || path.startsWith(`${each}[`)),
    );
    expect(missing).toEqual(kind === "five-link" ? entries.filter((path) => /links\[\d\]\.name/.test(path)) : []);
  });

  test.each(KINDS)("every length and angle of a %s car has a picture of where the tape goes", (kind) => {
    const document = startingDocument(kind, "inch-pound");
    const fields = STEPS.flatMap(({ places }) => places.flatMap((place) => fieldsAt(place, document)));
    const bare = fields.filter(({ kind: each, path }) =>
      each === "quantity" ? !sketchOf(path) : each === "point" && !sketchOf(`${path}.z`),
    );
    expect(bare.map(({ path }) => path).filter((path) => path !== "weights.rearBrakeShare")).toEqual([]);
  });

  test("a part that is not there is one question", () => {
    const { strap: _, ...without } = startingDocument("h-arm", "inch-pound");
    const fields = fieldsAt("strap.length", without as CarDocument);
    expect(fields.map(({ path, kind }) => [path, kind])).toEqual([["strap", "section"]]);
  });
});

describe("a place is named so that it is known without its sheet", () => {
  const car = startingDocument("h-arm", "inch-pound");
  test.each([
    ["driveshaft.inner.angleLimit", "Driveshaft, inner joint, angle limit"],
    ["driveshaft.outer.centre", "Driveshaft, outer joint, joint centre"],
    ["driveshaft.output.point", "Driveshaft, gearbox output, joint centre"],
    ["shock.shortest", "Shock, shortest"],
    ["shock.lower", "Shock, lower eye"],
    ["shock.springs.main.rate", "Shock, main spring, rate"],
    ["strap.upper", "Strap, upper hole"],
    ["bumpStop.strikes", "Bump stop, where it lands"],
    ["linkage.upperLink.inner", "Upper link, inner"],
    ["wheel.toe", "Toe"],
  ])("%s", (place, name) => expect(placeName(place, car)).toBe(name));

  test("no heading of a sheet is an end without its part, and none has an axis letter", () => {
    const fields = STEPS.flatMap(({ places }) => places.flatMap((place) => fieldsAt(place, car)));
    for (const { group, label } of fields) {
      expect(group).not.toMatch(/^(inner|outer|upper|lower|output|main)$/i);
      expect(`${group} ${label}`).not.toMatch(/\b[xyz]\b/i);
    }
  });
});

function leaves(value: unknown, path = ""): readonly string[] {
  if (Array.isArray(value)) return value.flatMap((each, index) => leaves(each, `${path}[${index}]`));
  if (typeof value !== "object" || value === null) return [path];
  return Object.entries(value).flatMap(([name, each]) => leaves(each, path === "" ? name : `${path}.${name}`));
}
