import { study } from "@armwright/engine";
import { readCarDocument } from "@armwright/engine/document";
import { describe, expect, test } from "vitest";
import { EXAMPLES, exampleText } from "../../../engine/test/example-documents.ts";
import { bookLeaves } from "../../src/book.ts";
import { textsOf } from "./leaf-text.ts";

const PARTS = ["lower-arm", "upper-arm", "trailing-arm", "spindle", "mounts"];

describe.each(EXAMPLES)("sheets of %s that are made left and right", (name) => {
  const reading = readCarDocument(exampleText(name));
  if (!reading.ok) throw new Error("the example does not read");
  const made = study(reading.car);

  test.each(["letter", "a4"] as const)("on %s, both carry the same dimensions and marks", (paper) => {
    const leaves = bookLeaves(made, reading.document, { paper, date: new Date(0) });
    const told = (id: string): readonly string[] =>
      leaves
        .filter((leaf) => leaf.id === id || leaf.id.startsWith(`${id}-`))
        .flatMap(({ parts }) => textsOf(parts))
        .filter(({ layer }) => layer === "dimension" || layer === "mark" || layer === "number")
        .map(({ text }) => text)
        .sort();
    let compared = 0;
    for (const part of PARTS) {
      const left = told(`${part}-left`);
      expect(told(`${part}-right`), part).toEqual(left);
      if (left.length > 3) compared += 1;
    }
    // A five-link car has no arm: its spindle and its mounts.
    expect(compared).toBeGreaterThanOrEqual(2);
  });
});

test("the demo's lower arm, left: every mount from the first pivot, both ways", () => {
  const reading = readCarDocument(exampleText("saltbush"));
  if (!reading.ok) throw new Error("the example does not read");
  const [arm] = bookLeaves(study(reading.car), reading.document, { paper: "letter", date: new Date(0) }).filter(
    ({ id }) => id === "lower-arm-left",
  );
  const words = textsOf(arm!.parts).map(({ text }) => text);
  // By hand from the typed points: inner front at 8 forward and 11 out; shock 5 1/4, strap −4 7/16, stop −5 5/8 forward.
  for (const each of ["E 2 3/4", "F 12 7/16", "G 13 5/8", "E 12 3/8", "F 16", "G 10 1/2"])
    expect(words).toContain(each);
});
