import { describe, expect, test } from "vitest";
import { z } from "zod";
import {
  carJsonSchema,
  carReference,
  readCarValue,
  sayFault,
  setField,
  simplestDocument,
  startingDocument,
} from "../../src/document/index.ts";
import { KINDS, SYSTEMS } from "./typed-documents.ts";

const ALL = KINDS.flatMap((kind) => SYSTEMS.map((system) => ({ kind, system })));

describe("starting documents", () => {
  test.each(ALL)("$kind, $system: both forms are read without a fault", ({ kind, system }) => {
    for (const document of [startingDocument(kind, system), simplestDocument(kind, system)]) {
      const reading = readCarValue(document);
      expect(reading.ok ? [] : reading.faults.map(sayFault)).toEqual([]);
    }
  });

  test.each(ALL)(
    "$kind, $system: the shock has stroke left either way, the wheel stands on the ground",
    ({ kind, system }) => {
      const reading = readCarValue(startingDocument(kind, system));
      if (!reading.ok) throw new Error("a fault");
      const { shock, wheel } = reading.car;
      const { upper, lower } = shock ?? {};
      if (!shock || !upper || !lower) throw new Error("no shock");
      const apart = Math.hypot(
        upper.point.x - lower.point.x,
        upper.point.y - lower.point.y,
        upper.point.z - lower.point.z,
      );
      expect(apart - shock.shortest).toBeGreaterThan(0.1);
      expect(shock.longest - apart).toBeGreaterThan(0.1);
      expect(wheel.hubFace.z).toBeCloseTo(wheel.loadedRadius, 12);
    },
  );

  test.each(ALL)("$kind, $system: nothing can be left out of the simplest one", ({ kind, system }) => {
    const document = simplestDocument(kind, system);
    for (const name of Object.keys(document)) expect(readCarValue(setField(document, name, undefined)).ok).toBe(false);
    for (const name of Object.keys(document.wheel)) {
      expect(readCarValue(setField(document, ["wheel", name], undefined)).ok).toBe(false);
    }
  });
});

describe("the JSON Schema", () => {
  const schema = carJsonSchema();
  // Read back as a schema by zod's own reader, which knows nothing of how it was made.
  const reader = z.fromJSONSchema(schema as Parameters<typeof z.fromJSONSchema>[0]);

  test("is of draft 2020-12", () => {
    expect(schema.$schema).toBe("https://json-schema.org/draft/2020-12/schema");
  });

  test.each(ALL)("accepts the starting documents: $kind, $system", ({ kind, system }) => {
    expect(reader.safeParse(startingDocument(kind, system)).error?.issues ?? []).toEqual([]);
    expect(reader.safeParse(simplestDocument(kind, system)).error?.issues ?? []).toEqual([]);
  });

  test.each([
    ["shock.upper.q", 1],
    ["shock.upper.y", true],
    ["linkage.kind", "swing"],
    ["units", "cubits"],
    ["wheel.rimWidth", undefined],
    ["keepOuts[1].normal", "sideways"],
  ] as const)("refuses %s: %s", (path, value) => {
    expect(reader.safeParse(setField(startingDocument("h-arm", "metric"), path, value)).success).toBe(false);
  });

  test("explains every field", () => {
    const bare: string[] = [];
    const walk = (node: unknown, path: string): void => {
      if (typeof node !== "object" || node === null) return;
      const properties: unknown = Reflect.get(node, "properties");
      if (typeof properties === "object" && properties !== null) {
        for (const [name, field] of Object.entries(properties)) {
          const inDirection = Reflect.get(node, "description") === undefined && /^[xyz]$/.test(name);
          if (!inDirection && !Reflect.get(field as object, "description")) bare.push(`${path}.${name}`);
        }
      }
      for (const [name, child] of Object.entries(node)) walk(child, `${path}.${name}`);
    };
    walk(schema, "");
    expect(bare).toEqual([]);
  });
});

describe("the reference", () => {
  const reference = carReference();

  test("tells of a length its meaning, unit, typical range and what is assumed", () => {
    expect(reference).toContain(
      "| `wheel.loadedRadius` | From the ground to the hub's centre, car at rest. | in or mm | 12 to 19 in (305 to 483 mm) | 0.96 of the free radius: common practice: a loaded tyre stands about 4 % lower; tape yours from floor to hub centre |",
    );
  });

  test("has a row for every field of every starting document", () => {
    const missing = ALL.flatMap(({ kind, system }) => {
      const { right: _, rodEnds = {}, ...document } = startingDocument(kind, system);
      const ofRodEnds = Object.values(rodEnds).flatMap((end) => Object.keys(end));
      const untold = ofRodEnds.filter((name) => !reference.includes(`\`rodEnds[pivot].${name}\``));
      const others = Object.entries(document).flatMap(([section, value]) =>
        typeof value === "object" && !Array.isArray(value)
          ? Object.keys(value).filter((name) => !reference.includes(`\`${section}.${name}\``))
          : reference.includes(`\`${section}\``) || reference.includes(`## ${section}`)
            ? []
            : [section],
      );
      return [...untold, ...others];
    });
    expect(missing).toEqual([]);
  });

  test("has no empty meaning", () => {
    expect(reference).not.toMatch(/^\| `[^`]+` \| {2}\|/m);
  });
});
