import { describe, expect, test } from "vitest";
import { fingerprintOf } from "../../src/document/fingerprint.ts";
import { readCarDocument } from "../../src/document/read.ts";
import { setField, writeCarDocument } from "../../src/document/write.ts";
import { exampleText } from "../example-documents.ts";

const documentOf = (text: string) => {
  const reading = readCarDocument(text);
  if (!reading.ok) throw new Error("the example does not read");
  return reading.document;
};

describe("the fingerprint", () => {
  const document = documentOf(exampleText("saltbush"));

  test("is the same for the same document, however it is spaced", () => {
    const spaced = documentOf(JSON.stringify(JSON.parse(writeCarDocument(document)), null, 7));
    expect(fingerprintOf(spaced)).toBe(fingerprintOf(document));
    expect(fingerprintOf(document)).toMatch(/^[0-9A-F]{4}-[0-9A-F]{4}-[0-9A-F]{4}$/);
  });

  test("differs as soon as a field does, also in how it is typed", () => {
    const prints = [
      document,
      setField(document, "name", "Saltbushes"),
      setField(document, "strap.length", "24"),
      setField(document, "strap.length", 24),
      setField(document, "version", "B"),
    ].map(fingerprintOf);
    expect(new Set(prints).size).toBe(prints.length);
  });
});
