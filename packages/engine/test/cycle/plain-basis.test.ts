import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readCarDocument, startingDocument, writeCarDocument } from "../../src/document/index.ts";
import { study } from "../../src/index.ts";

const saltbush = readFileSync(new URL("../../../../examples/saltbush.car.json", import.meta.url), "utf8");

describe("how a number is computed is told to who builds the car", () => {
  test.each([
    ["the demo car", saltbush],
    ["five links", writeCarDocument(startingDocument("five-link", "metric"))],
  ])("%s: no axis letters, no names of our own papers, no program's names of functions", (_, text) => {
    const reading = readCarDocument(text);
    if (!reading.ok) throw new Error("the car cannot be read");
    const { quantities } = study(reading.car);
    expect(quantities.length).toBeGreaterThan(15);
    for (const { id, label, meaning, basis } of quantities)
      expect(`${id}: ${label}. ${meaning} ${basis}`).not.toMatch(
        /\b[xyzv]\b|[xyz]_|_[xyz]|\.md\b|atan|asin|acos|d[xzL]\/d/,
      );
  });
});
