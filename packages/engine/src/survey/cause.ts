import type { UnitSystem } from "../car/car.ts";
import { FOOT, INCH, MILLIMETRE } from "../units/convert.ts";
import type { Cause } from "./result.ts";
import type { SurveyReading } from "./survey.ts";

/**
 * What may have gone wrong at the tape: slips that are common practice to look for, where they explain the difference
 * within `slack` (same unit as the readings: m or rad). Most specific first.
 */
export function guessCauses(
  reading: SurveyReading,
  others: number,
  slack: number,
  units: UnitSystem,
): readonly Cause[] {
  if (!("reads" in reading)) return [];
  const { reads } = reading;
  const causes: Cause[] = [];
  const meets = (value: number): boolean => Math.abs(value - others) <= slack;
  if (reading.kind !== "tape" && reads !== 0 && meets(-reads) && !meets(reads)) causes.push({ kind: "sign" });
  if (reading.kind === "level") return causes;
  const off = reads - others;
  const whole = units === "metric" ? MILLIMETRE * 10 : INCH;
  for (const by of units === "metric" ? [10, 100] : [1]) {
    const slip = by * (units === "metric" ? MILLIMETRE : INCH);
    if (Math.abs(Math.abs(off) - slip) <= slack) causes.push({ kind: "slip", by: Math.sign(off) * slip });
  }
  if (units === "inch-pound" && Math.abs(Math.abs(off) - FOOT) <= slack) {
    causes.push({ kind: "wrong-end", by: Math.sign(off) * FOOT });
  }
  const meant = withDigitsSwapped(reads, whole);
  if (meant !== null && meets(meant)) causes.push({ kind: "digits-swapped", meant });
  if (reading.add !== 0 && (meets(reads + reading.add) || meets(reads - reading.add))) {
    causes.push({ kind: "addition", add: reading.add });
  }
  return causes;
}

/** `23 7/16` read for `32 7/16`: the two last digits of the whole inches (or centimetres) changed about. */
function withDigitsSwapped(reads: number, whole: number): number | null {
  const size = Math.abs(reads) / whole;
  const count = Math.floor(size + 1e-9);
  const ones = count % 10;
  const tens = Math.floor(count / 10) % 10;
  if (count < 10 || ones === tens) return null;
  const swapped = count - tens * 10 - ones + ones * 10 + tens;
  return Math.sign(reads) * (swapped + (size - count)) * whole;
}
