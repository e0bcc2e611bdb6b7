import { type Car, type Proposal, parseQuantity, type UnitSystem, type Vec3 } from "@armwright/engine";
import type { CarDocument, FieldValue } from "@armwright/engine/document";
import { typedLength } from "../form/typed.ts";
import type { Operation } from "../store/operations.ts";

export interface Taking {
  readonly operations: readonly Operation[];
  /** What goes with the shock that was there before, in words; empty where nothing does. */
  readonly lost: string;
}

/**
 * The edit that hangs a shock where a proposal has it, to the sixteenth or half millimetre that a tape can be set to.
 * Springs and gas stay with the same shock; with another one they are taken off, since they were chosen for the one before.
 */
export function taking(document: CarDocument, car: Car, { upper, lower, shock }: Proposal): Taking {
  const { units } = document;
  const before = (document.shock ?? {}) as Readonly<Record<string, FieldValue>>;
  const isSame =
    car.shock !== undefined && isNear(car.shock.shortest, shock.shortest) && isNear(car.shock.longest, shock.longest);
  const { springs, gas, ...plain } = before;
  const kept = isSame ? before : plain;
  const lost = isSame ? [] : [springs && "springs", gas && "gas"].filter((each) => typeof each === "string");
  const lengths = isSame
    ? {}
    : {
        shortest: typedLength(shock.shortest, units, units),
        longest: typedLength(shock.longest, units, units),
        diameter: typedLength(Math.max(shock.bodyDiameter, shock.springDiameter), units, units),
      };
  const value = {
    ...kept,
    upper: typedPoint(upper, units),
    lower: { ...typedPoint(lower.point, units), on: lower.on },
    ...lengths,
  };
  return { operations: [{ path: "shock", value }], lost: lost.join(" and ") };
}

/** The edit that sets a keep-out lower by so much, each end of it; null where the car has none of that name. */
export function lowering(document: CarDocument, name: string, by: number): readonly Operation[] | null {
  const keepOuts = (document.keepOuts ?? []) as readonly Readonly<Record<string, unknown>>[];
  const index = keepOuts.findIndex((each) => each["name"] === name);
  const keepOut = keepOuts[index];
  if (!keepOut) return null;
  const operations = ["centre", "from", "to", "point"].flatMap((end): readonly Operation[] => {
    const point = keepOut[end] as { readonly z?: string | number } | undefined;
    if (point?.z === undefined) return [];
    const parsed = parseQuantity(point.z, "length", document.units);
    if (!parsed.ok) return [];
    const z = onTape(parsed.value - by, document.units, Math.floor);
    return [{ path: `keepOuts[${index}].${end}.z`, value: typedLength(z, document.units, document.units) }];
  });
  return operations.length > 0 ? operations : null;
}

/** The edit that lets things come nearer to a keep-out; null where its clearance is less than that. */
export function nearing(document: CarDocument, car: Car, name: string, by: number): readonly Operation[] | null {
  const index = car.keepOuts.findIndex((each) => each.name === name);
  const clearance = car.keepOuts[index]?.clearance ?? 0;
  const left = onTape(clearance - by, document.units, Math.floor);
  if (index < 0 || left < 0) return null;
  return [{ path: `keepOuts[${index}].clearance`, value: typedLength(left, document.units, document.units) }];
}

/** On the next mark of a tape, to the side that `round` says; a hair of rounding moves nothing. */
function onTape(metres: number, units: UnitSystem, round: (marks: number) => number): number {
  const mark = units === "metric" ? 0.0005 : 0.0254 / 16;
  const near = Math.round(metres / mark);
  return (Math.abs(near - metres / mark) < 1e-6 ? near : round(metres / mark)) * mark;
}

const typedPoint = ({ x, y, z }: Vec3, units: UnitSystem) => ({
  x: typedLength(x, units, units),
  y: typedLength(y, units, units),
  z: typedLength(z, units, units),
});

const isNear = (a: number, b: number): boolean => Math.abs(a - b) < 1e-5;
