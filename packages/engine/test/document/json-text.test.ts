import { describe, expect, test } from "vitest";
import { readCarDocument, sayFault } from "../../src/document/index.ts";

describe("faults of the text itself", () => {
  const texts: readonly (readonly [string, string, string])[] = [
    ["nothing at all", "", "not JSON at line 1, column 1: found nothing, expected an object in braces"],
    [
      "a trailing comma",
      '{\n  "armwright": 1,\n}',
      "not JSON at line 3, column 1: found }, expected no comma before }",
    ],
    [
      "a missing comma",
      '{\n  "armwright": 1\n  "name": "x"\n}',
      'not JSON at line 3, column 3: found "name", expected a comma between this and the one before',
    ],
    [
      "a missing colon",
      '{ "armwright" 1 }',
      "not JSON at line 1, column 15: found 1, expected a colon after the field's name",
    ],
    [
      "an unclosed brace",
      '{ "armwright": 1',
      "not JSON at line 1, column 17: found the end, expected a closing brace }",
    ],
    ["an unclosed list", '{ "a": [1, 2', "not JSON at line 1, column 13: found the end, expected a closing bracket ]"],
    [
      "a comment",
      '{ "armwright": 1 // first\n}',
      "not JSON at line 1, column 18: found // first, expected no comments: JSON has none",
    ],
    [
      "a bare word",
      '{ "name": Rusty }',
      "not JSON at line 1, column 11: found Rusty, expected a number, a text in double quotes, true or false",
    ],
    [
      "more after the end",
      "{} {}",
      "not JSON at line 1, column 4: found {, expected nothing more after the last closing brace",
    ],
    [
      "a list",
      "[]",
      'this is not a car document: it has no "armwright" field with the version of its form; write "armwright": 1',
    ],
    ["brackets without end", "[".repeat(100_000), "brackets nest deeper than 32 at line 1: a car document never does"],
  ];
  test.each(texts)("%s", (_, text, says) => {
    const reading = readCarDocument(text);
    expect(reading.ok ? [] : reading.faults.map(sayFault)).toEqual([says]);
  });

  test("a key given twice is told with its line, beside every other fault", () => {
    const text = '{\n  "armwright": 1,\n  "name": "a",\n  "name": "b",\n  "units": "metric",\n  "datum": 5\n}';
    const reading = readCarDocument(text);
    const told = reading.ok ? [] : reading.faults.map((fault) => `${fault.line}:${fault.column} ${sayFault(fault)}`);
    expect(told).toEqual([
      "1:1 wheel: missing: expected an object in braces",
      "1:1 linkage: missing: expected an object in braces",
      "4:3 name: given twice in the same place: keep one",
      "6:12 datum: found 5, expected text",
    ]);
  });

  test.each(["__proto__", "constructor", "toString"])("a field called %s is a field like any other", (name) => {
    const reading = readCarDocument(
      `{ "armwright": 1, "rodEnds": { "${name}": {} }, "linkage": { "kind": "h-arm" }, "${name}": 1 }`,
    );
    const codes = reading.ok
      ? []
      : reading.faults.filter((fault) => fault.path.includes(name)).map((fault) => fault.code);
    expect(codes.toSorted()).toEqual(["unknown-key", "unknown-pivot"]);
  });
});

test("all faults are told at once, in the order of the text, each with its line", () => {
  const text = `{
  "armwright": 1,
  "name": "Several faults",
  "units": "inch-pound",
  "datum": "rear crossmember",
  "wheel": {
    "hubFace": { "x": 0, "y": "-35 1/3", "z": 15 },
    "freeRadius": 16,
    "loadedRadius": 17,
    "sectionWidth": "wide",
    "rimDiameter": 15
  },
  "linkage": {
    "kind": "trailing-arm",
    "trailingArm": {
      "inboardPivot": { "x": 20, "y": 13, "z": 15 },
      "outboardPivot": { "x": 20, "y": 13, "z": 15 }
    }
  },
  "shock": {
    "upper": { "x": 7, "y": 20, "z": 36 },
    "lower": { "x": 4, "y": 25, "z": 13, "on": "lower-arm" },
    "shortest": 28, "longest": 17
  }
}`;
  const reading = readCarDocument(text);
  expect(
    reading.ok ? [] : reading.faults.map((fault) => `${fault.line}:${fault.column} ${fault.code} ${fault.path}`),
  ).toEqual([
    "6:12 missing wheel.rimWidth",
    "7:31 bad-quantity wheel.hubFace.y",
    "9:21 loaded-over-free wheel.loadedRadius",
    "10:21 bad-quantity wheel.sectionWidth",
    "17:24 zero-axis linkage.trailingArm.outboardPivot",
    "22:48 wrong-body shock.lower.on",
    "23:17 shock-lengths shock.shortest",
  ]);
});
