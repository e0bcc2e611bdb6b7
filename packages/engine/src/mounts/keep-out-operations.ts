import type { Car } from "../car/car.ts";
import type { Operation } from "../document/operation.ts";
import type { CarDocument } from "../document/schema.ts";
import type { FieldValue } from "../document/write.ts";
import { INCH } from "../units/convert.ts";
import { onMark } from "../units/marks.ts";
import { parseQuantity } from "../units/quantity.ts";
import { typedLength, typedPoint } from "../units/typed.ts";
import type { Notch } from "./notch.ts";
import { notchedBothSides } from "./notched-box.ts";

/** The edit that sets a keep-out lower by so much (m), each end of it; null where the car has none of that name. */
export function lowerKeepOut(document: CarDocument, name: string, by: number): readonly Operation[] | null {
  const { units } = document;
  const keepOuts = (document.keepOuts ?? []) as readonly Readonly<Record<string, unknown>>[];
  const index = keepOuts.findIndex((each) => each["name"] === name);
  const keepOut = keepOuts[index];
  if (!keepOut) return null;
  const operations = ["centre", "from", "to", "point"].flatMap((end): readonly Operation[] => {
    const point = keepOut[end] as { readonly z?: string | number } | undefined;
    if (point?.z === undefined) return [];
    const parsed = parseQuantity(point.z, "length", units);
    if (!parsed.ok) return [];
    const z = onMark(parsed.value - by, units, Math.floor);
    return [{ path: `keepOuts[${index}].${end}.z`, value: typedLength(z, units) }];
  });
  return operations.length > 0 ? operations : null;
}

/** The edit that lets things come nearer (m) to a keep-out; null where its clearance is less than that. */
export function nearKeepOut(document: CarDocument, car: Car, name: string, by: number): readonly Operation[] | null {
  const { units } = document;
  const index = car.keepOuts.findIndex((each) => each.name === name);
  const clearance = car.keepOuts[index]?.clearance ?? 0;
  const left = onMark(clearance - by, units, Math.floor);
  if (index < 0 || left < 0) return null;
  return [{ path: `keepOuts[${index}].clearance`, value: typedLength(left, units) }];
}

/** The notch is cut wider by this on every side, m: rounding what is left to the tape then closes nothing again. */
const WIDER = INCH / 16;

/**
 * The edit that cuts a notch out of a box among the keep-outs, on both sides of a car that is alike on both: what is left of
 * it, as boxes of its own. Null where it is no box, or nothing of it would be left.
 */
export function notchKeepOut(document: CarDocument, car: Car, notch: Notch): readonly Operation[] | null {
  const keepOuts = document.keepOuts ?? [];
  const index = keepOuts.findIndex(({ name }) => name === notch.keepOut);
  const whole = keepOuts[index];
  const box = car.keepOuts.find(({ name }) => name === notch.keepOut);
  if (whole?.shape !== "box" || box?.shape !== "box") return null;
  const pieces = notchedBothSides(box, notch, WIDER);
  if (pieces.length === 0) return null;
  // To a thirty-second: a middle lies half a mark off its ends.
  const fine = { denominator: 32 } as const;
  const parts = pieces.map(({ name, centre, half }) => ({
    ...whole,
    name,
    centre: typedPoint(centre, document.units, fine),
    size: typedPoint({ x: 2 * half.x, y: 2 * half.y, z: 2 * half.z }, document.units, fine),
  }));
  const value = [...keepOuts.slice(0, index), ...parts, ...keepOuts.slice(index + 1)] as unknown as FieldValue;
  return [{ path: "keepOuts", value }];
}
