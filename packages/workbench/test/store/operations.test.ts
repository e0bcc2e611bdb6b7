import { applyOperations, type Operation, startingDocument } from "@armwright/engine/document";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { inverseOf, merged } from "../../src/store/operations.ts";

const document = startingDocument("h-arm", "inch-pound");

const operation: fc.Arbitrary<Operation> = fc.record({
  path: fc.constantFrom(
    "strap.length",
    "linkage.upperLink.inner.z",
    "linkage.upperLink.diameter",
    "targets.bump",
    "stops.droop",
    "shock",
    "underbody",
    'rodEnds["lowerArm.innerFront"].misalignmentLimit',
    "name",
  ),
  value: fc.constantFrom<Operation["value"][]>("12 3/16", 14, undefined, "", [], { length: 5 }),
});

describe("edits of a document", () => {
  test("an edit leaves the document before it as it was", () => {
    const before = JSON.stringify(document);
    const after = applyOperations(document, [{ path: "strap.length", value: "17 1/2" }]);
    expect(after.strap?.length).toBe("17 1/2");
    expect(JSON.stringify(document)).toBe(before);
  });

  test("whatever was edited, its inverse brings the document back", () => {
    fc.assert(
      fc.property(fc.array(operation, { maxLength: 8 }), (operations) => {
        const after = applyOperations(document, operations);
        expect(applyOperations(after, inverseOf(document, operations))).toEqual(document);
      }),
      { seed: 11 },
    );
  });

  test("sections made on the way are taken out again", () => {
    const { stops: _, ...without } = document;
    const made = applyOperations(without as typeof document, [{ path: "stops.bump", value: "6" }]);
    const back = inverseOf(without as typeof document, [{ path: "stops.bump", value: "6" }]);
    expect(applyOperations(made, back)).toEqual(without);
  });

  test("of several edits of one field the last counts", () => {
    expect(
      merged([
        { path: "a.x", value: 1 },
        { path: "a.y", value: 2 },
        { path: "a.x", value: 3 },
      ]),
    ).toEqual([
      { path: "a.x", value: 3 },
      { path: "a.y", value: 2 },
    ]);
  });
});
