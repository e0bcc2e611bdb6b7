import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type CarDocument,
  formatPath,
  parsePath,
  setField,
  simplestDocument,
  startingDocument,
  valueAt,
  writeCarDocument,
} from "../../src/document/index.ts";

describe("writeCarDocument", () => {
  test("keeps values as typed, fields in declared order, points on one line", () => {
    const { wheel, ...rest } = simplestDocument("trailing-arm", "inch-pound");
    const typed = { ...wheel, freeRadius: "1' 4-1/2\"", sectionWidth: 12.5 };
    const text = writeCarDocument({ ...rest, wheel: typed } as CarDocument);
    expect(text).toBe(`{
  "armwright": 1,
  "name": "New trailing-arm car",
  "units": "inch-pound",
  "datum": "middle of the gearbox outputs, plumbed down to the frame rail",
  "wheel": {
    "hubFace": { "x": 0, "y": "35 1/2", "z": "15 3/4" },
    "freeRadius": "1' 4-1/2\\"",
    "sectionWidth": 12.5,
    "rimDiameter": 15,
    "rimWidth": 8
  },
  "linkage": {
    "kind": "trailing-arm",
    "trailingArm": {
      "inboardPivot": { "x": 20, "y": 13, "z": 15 },
      "outboardPivot": { "x": "20 3/4", "y": "24 1/2", "z": "15 1/8" },
      "hub": { "x": 0, "y": "30 1/4", "z": "15 3/4" }
    }
  }
}
`);
  });

  test("does not depend on the order in which the fields were put in", () => {
    const turned = (value: unknown): unknown => {
      if (Array.isArray(value)) return value.map(turned);
      if (typeof value !== "object" || value === null) return value;
      return Object.fromEntries(
        Object.entries(value)
          .reverse()
          .map(([name, each]) => [name, turned(each)]),
      );
    };
    // Rod ends go by names that no form declares: they keep the order in which they were typed.
    const { rodEnds: _, ...document } = startingDocument("five-link", "metric");
    expect(writeCarDocument(turned(document) as CarDocument)).toBe(writeCarDocument(document));
  });

  test("keeps fields it does not know, so that nothing typed is lost", () => {
    const document = setField(startingDocument("h-arm", "metric"), "shock.colour", "blue");
    expect(valueAt(JSON.parse(writeCarDocument(document)), ["shock", "colour"])).toBe("blue");
  });
});

describe("setField", () => {
  const document = startingDocument("h-arm", "inch-pound");

  test("changes one value and leaves the given document as it was", () => {
    const before = JSON.stringify(document);
    const changed = setField(document, "shock.upper.y", "17 1/4");
    expect(changed.shock?.upper.y).toBe("17 1/4");
    expect(JSON.stringify(document)).toBe(before);
    expect({ ...changed, shock: undefined }).toEqual({ ...document, shock: undefined });
  });

  test("makes sections and list entries on the way", () => {
    const { rodEnds: _, ...bare } = document;
    expect(setField(bare, 'rodEnds["upperLink.inner"].thread', "M16x1.5").rodEnds).toEqual({
      "upperLink.inner": { thread: "M16x1.5" },
    });
    expect(setField(document, "underbody[1]", { name: "skid", x: 0, y: 0, z: 11 }).underbody?.length).toBe(2);
  });

  test("takes a field or a list entry out", () => {
    expect("strap" in setField(document, "strap", undefined)).toBe(false);
    expect(setField(document, "keepOuts[0]", undefined).keepOuts?.map((each) => each.name)).toEqual(["firewall"]);
  });

  test.each(["", "shock..upper", "shock[", "a b"])("refuses %j as a place", (path) => {
    expect(() => setField(document, path, 1)).toThrow(RangeError);
  });
});

test("a path is read back as it was written", () => {
  const step = fc.oneof(
    fc.string(),
    fc.nat(99),
    fc.constantFrom("lowerArm.innerFront", "links.front lower.inner", "y"),
  );
  fc.assert(
    fc.property(fc.array(step), (path) => {
      expect(parsePath(formatPath(path))).toEqual(path);
    }),
  );
});
