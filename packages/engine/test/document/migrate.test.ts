import { describe, expect, test } from "vitest";
import {
  FORMAT_VERSION,
  MIGRATIONS,
  type Migration,
  migrate,
  readCarDocument,
  sayFault,
  startingDocument,
  writeCarDocument,
} from "../../src/document/index.ts";

/** The starting car as the draft form had it: units in short, the tyre's sizes in a section of their own. */
function draft(): Record<string, unknown> {
  const { wheel, ...rest } = startingDocument("h-arm", "inch-pound");
  const { freeRadius, loadedRadius, sectionWidth, ...kept } = wheel;
  return { ...rest, armwright: 0, units: "in", wheel: kept, tyre: { freeRadius, loadedRadius, sectionWidth } };
}

describe("a document of version 0", () => {
  test("is read as the present one, with a warning that says what was changed", () => {
    const reading = readCarDocument(JSON.stringify(draft()));
    expect(reading.ok && writeCarDocument(reading.document)).toBe(
      writeCarDocument(startingDocument("h-arm", "inch-pound")),
    );
    expect(reading.ok && reading.warnings.map(sayFault)).toEqual([
      'armwright: read as version 0 and brought to version 1: "units" spelled out, the sizes under "tyre" moved into "wheel"',
    ]);
  });

  test("tells its faults with lines of the text as it stands", () => {
    const text = JSON.stringify({ ...draft(), units: "ells" }, null, 2);
    const reading = readCarDocument(text);
    expect(reading.ok ? [] : reading.faults.map((fault) => [fault.line, fault.code, fault.path])).toEqual([
      [4, "unknown-word", "units"],
    ]);
  });

  test("is not lost where its tyre is no section", () => {
    const reading = readCarDocument(JSON.stringify({ ...draft(), tyre: 33 }));
    expect(reading.ok ? [] : reading.faults.map((fault) => fault.code)).toContain("unknown-key");
  });
});

test("a present document is not migrated", () => {
  const reading = readCarDocument(writeCarDocument(startingDocument("h-arm", "metric")));
  expect(reading.ok && reading.warnings).toEqual([]);
});

test("the steps lead from version 0 to the present one without a gap", () => {
  expect(MIGRATIONS.map((step) => [step.from, step.to])).toEqual(
    Array.from({ length: FORMAT_VERSION }, (_, version) => [version, version + 1]),
  );
});

test("steps are taken in order, from the document's own version on", () => {
  const step = (from: number): Migration => ({
    from,
    to: from + 1,
    says: `step ${from}`,
    change: (document) => ({ ...document, done: `${document["done"] ?? ""}${from}` }),
  });
  const { document, says } = migrate({ armwright: 1 }, 1, [step(0), step(1), step(2)]);
  expect(document).toEqual({ armwright: 3, done: "12" });
  expect(says).toEqual(["step 1", "step 2"]);
});
