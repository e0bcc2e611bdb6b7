import {
  applyOperations,
  type CarDocument,
  type Operation,
  setField,
  startingDocument,
} from "@armwright/engine/document";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { inverseOf, merged } from "../../src/store/operations.ts";

const tank = (name: string) => ({ name, shape: "sphere", centre: { x: 0, y: 0, z: 0 }, radius: 1 });
const document: CarDocument = setField(startingDocument("h-arm", "inch-pound"), "keepOuts", ["a", "b", "c"].map(tank));

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
    "keepOuts",
    "keepOuts[0]",
    "keepOuts[1]",
    "keepOuts[1].name",
    "keepOuts[7]",
    "survey.readings[0]",
    "survey.readings[2].reads",
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

  test("an item taken out of a list, or put after its end, is undone in its own place", () => {
    const names = (of: CarDocument) => (of.keepOuts ?? []).map(({ name }) => name);
    for (const edit of [
      { path: "keepOuts[1]", value: undefined },
      { path: "keepOuts[9]", value: tank("d") },
    ]) {
      const after = applyOperations(document, [edit]);
      expect(names(after)).toEqual(edit.value === undefined ? ["a", "c"] : ["a", "b", "c", "d"]);
      expect(names(applyOperations(after, inverseOf(document, [edit])))).toEqual(["a", "b", "c"]);
    }
  });

  test("undoing an item that was put at a list's end leaves what another screen put after it", () => {
    const put = [{ path: "keepOuts[3]", value: tank("mine") }];
    const both = applyOperations(document, [...put, { path: "keepOuts[4]", value: tank("theirs") }]);
    const after = applyOperations(both, inverseOf(document, put));
    expect(after.keepOuts?.map(({ name }) => name)).toEqual(["a", "b", "c", "theirs"]);
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
