import fc from "fast-check";
import type { LinkageKindName, UnitSystem } from "../../src/car/car.ts";
import { type CarDocument, startingDocument } from "../../src/document/index.ts";

export const KINDS: readonly LinkageKindName[] = ["h-arm", "double-a-arm", "trailing-arm", "five-link"];
export const SYSTEMS: readonly UnitSystem[] = ["inch-pound", "metric"];

/** Fields whose values are not lengths. */
const OTHER_NUMBERS = new Set([
  "armwright",
  "camber",
  "toe",
  "angleLimit",
  "misalignmentLimit",
  "angle",
  "yokePhase",
  "rearBrakeShare",
]);
const TEXTS = new Set(["name", "datum", "thread"]);
const MASSES = new Set(["corner", "unsprung"]);

/** The document with every typed length (and mass) replaced. Words, names, angles and directions stay. */
export function retyped(
  document: CarDocument,
  length: (typed: number | string) => number | string,
  mass: (typed: number | string) => number | string = (typed) => typed,
  units: UnitSystem = document.units,
): CarDocument {
  const walk = (value: unknown, name: string): unknown => {
    if (Array.isArray(value)) return value.map((each) => walk(each, name));
    if (typeof value === "object" && value !== null) {
      return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, walk(each, key)]));
    }
    if (OTHER_NUMBERS.has(name) || TEXTS.has(name)) return value;
    const isNumber = typeof value === "number" || (typeof value === "string" && /^-?\d/.test(value));
    if (!isNumber) return value;
    return MASSES.has(name) ? mass(value as number | string) : length(value as number | string);
  };
  return { ...(walk(document, "") as CarDocument), units };
}

/** A starting car of any kind with all its lengths shifted by a little, typed in all sorts of ways. */
export const anyDocument: fc.Arbitrary<CarDocument> = fc
  .record({
    kind: fc.constantFrom(...KINDS),
    system: fc.constantFrom(...SYSTEMS),
    shifts: fc.array(fc.integer({ min: -4, max: 4 }), { minLength: 7, maxLength: 7 }),
    ways: fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 5, maxLength: 5 }),
    left: fc.subarray(["driveshaft", "shock", "strap", "bumpStop", "underbody", "keepOuts", "weights", "targets"]),
    name: fc.string({ minLength: 1 }).filter((text) => text.trim() !== ""),
    more: fc.boolean(),
  })
  .map(({ kind, system, shifts, ways, left, name, more }) => {
    let count = 0;
    const metric = retyped(startingDocument(kind, "metric"), (typed) => {
      count += 1;
      const mm = Number(typed) + (Math.abs(Number(typed)) > 40 ? (shifts[count % 7] ?? 0) : 0);
      const way = ways[count % 5];
      if (way === 1) return `${mm} mm`;
      if (way === 2) return mm / 25.4 > 1 ? `${Math.round(mm / 25.4)} 1/16 in` : `${mm}mm`;
      if (system === "inch-pound") return way === 3 ? mm / 25.4 : `${mm / 10} cm`;
      return way === 3 ? String(mm) : mm;
    });
    const kept = Object.fromEntries(Object.entries(metric).filter(([section]) => !left.includes(section)));
    const rodEnds = {
      "lowerArm.innerFront": { thread: "3/4-16", boltAxis: { x: 1, y: 0.1, z: 0 }, misalignmentLimit: "15 deg" },
    };
    const extra = more && (kind === "h-arm" || kind === "double-a-arm") ? { rodEnds } : {};
    return { ...(kept as CarDocument), ...extra, name, units: system };
  });
