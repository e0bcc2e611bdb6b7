import type { Car, UnitSystem } from "../car/car.ts";
import type { Operation } from "../document/operation.ts";
import type { CarDocument } from "../document/schema.ts";
import type { FieldValue } from "../document/write.ts";
import { typedAngle, typedLength, typedMount, typedPoint } from "../units/typed.ts";
import type { Proposal } from "./proposal.ts";
import type { ShockOption } from "./request.ts";

export interface HungShock {
  readonly operations: readonly Operation[];
  /** What goes with the shock that was there before, in words; empty where nothing does. */
  readonly lost: string;
}

/**
 * The edit that hangs a shock where a proposal has it, to the sixteenth or half millimetre that a tape can be set to.
 * Springs and gas stay with the same shock; with another one they are taken off, since they were chosen for the one before.
 */
export function hangShock(document: CarDocument, car: Car, { upper, lower, shock }: Proposal): HungShock {
  const { units } = document;
  const before = (document.shock ?? {}) as Readonly<Record<string, FieldValue>>;
  const isSame =
    car.shock !== undefined && isNear(car.shock.shortest, shock.shortest) && isNear(car.shock.longest, shock.longest);
  const { springs, gas, misalignmentLimit, eyeWidth, eyeDiameter, tabGap, ...plain } = before;
  const kept = isSame ? before : plain;
  const lost = isSame ? [] : [springs && "springs", gas && "gas"].filter((each) => typeof each === "string");
  const lengths = isSame
    ? {}
    : {
        shortest: typedLength(shock.shortest, units),
        longest: typedLength(shock.longest, units),
        diameter: typedLength(Math.max(shock.bodyDiameter, shock.springDiameter), units),
      };
  const value = {
    ...kept,
    upper: typedPoint(upper, units),
    lower: typedMount(lower, units),
    ...lengths,
    ...typedEyes(shock, units),
  };
  return { operations: [{ path: "shock", value }], lost: lost.join(" and ") };
}

/** What the shelf says of the shock's eyes, as it is typed: what the mounts were judged by stays with the car. */
function typedEyes(shock: ShockOption, units: UnitSystem): Readonly<Record<string, FieldValue>> {
  const { misalignmentLimit, eyeWidth, eyeDiameter, tabGap } = shock;
  return {
    ...(misalignmentLimit !== undefined && { misalignmentLimit: typedAngle(misalignmentLimit, units) }),
    ...(eyeWidth !== undefined && { eyeWidth: typedLength(eyeWidth, units) }),
    ...(eyeDiameter !== undefined && { eyeDiameter: typedLength(eyeDiameter, units) }),
    ...(tabGap !== undefined && { tabGap: typedLength(tabGap, units) }),
  };
}

const isNear = (a: number, b: number): boolean => Math.abs(a - b) < 1e-5;
