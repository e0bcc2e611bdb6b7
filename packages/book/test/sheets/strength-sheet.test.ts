import { COMMON_CASES, sayCaseLoad, study } from "@armwright/engine";
import { readCarDocument } from "@armwright/engine/document";
import { describe, expect, test } from "vitest";
import { exampleText } from "../../../engine/test/example-documents.ts";
import { bookLeaves } from "../../src/book.ts";
import { linesOf } from "./leaf-text.ts";

describe.each(["saltbush", "juniper"] as const)("no factor without its load case: %s", (name) => {
  const reading = readCarDocument(exampleText(name));
  if (!reading.ok) throw new Error("the example does not read");
  const made = study(reading.car);
  const leaves = bookLeaves(made, reading.document, { paper: "letter", date: new Date(0) });
  const cases = [...COMMON_CASES, ...(reading.car.loads?.cases ?? [])].map(
    (each) => `${each.name}, ${sayCaseLoad(each)}`,
  );

  test("every row of the strength sheet names a case of this car, with its g, beside its factor, or says that none loads it", () => {
    const lines = leaves.filter(({ id }) => id.startsWith("strength")).flatMap(linesOf);
    const rows = lines.filter(([first]) => /^\d+\.\d\d$/.test(first ?? ""));
    expect(rows.length).toBeGreaterThan(2);
    for (const [factor, part, loadCase] of rows) {
      expect(part!.length).toBeGreaterThan(3);
      // A long name goes on in the next line.
      expect(
        cases.some((each) => each.startsWith(loadCase!)),
        `${factor} ${part}: ${loadCase}`,
      ).toBe(true);
    }
    const words = lines.flat().join(" ");
    for (const caution of ["A screen, no approval", "Not covered", "engineer decides"])
      expect(words).toContain(caution);
  });

  test("no other sheet speaks of a factor", () => {
    for (const leaf of leaves.filter(({ id }) => !id.startsWith("strength")))
      expect(linesOf(leaf).flat().join(" ")).not.toMatch(/safety factor|factor of safety/i);
  });

  test("the cautions stand first and last: jack stands, squeezed springs, gas, welds", () => {
    for (const id of ["car", "sign-off"]) {
      const words = linesOf(leaves.find((leaf) => leaf.id === id)!)
        .flat()
        .join(" ");
      for (const each of ["Jack stands", "squeezed spring kills", "hold pressure", "Welds here carry lives"])
        expect(words).toContain(each);
    }
  });
});
