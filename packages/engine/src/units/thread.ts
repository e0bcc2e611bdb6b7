import { INCH, MILLIMETRE } from "./convert.ts";

/** A screw thread by its size as sold: `3/4-16` (inch, turns an inch) or `M16x1.5` (metric, mm a turn). */
export interface Thread {
  /** Major diameter, m. */
  readonly diameter: number;
  /** Advance a turn, m. */
  readonly pitch: number;
}

const UNIFIED = /^(?:(\d+)(?: |-))?(\d+)\/(\d+) ?[-x] ?(\d+(?:\.\d+)?)(?: ?(?:unf|unc))?$/;
const UNIFIED_WHOLE = /^(\d+)"? ?[-x] ?(\d+)(?: ?(?:unf|unc|uns|un))?$/;
const METRIC = /^m ?(\d+(?:\.\d+)?) ?x ?(\d+(?:\.\d+)?)$/;

/** Reads a thread's size; undefined where it is not one. */
export function parseThread(text: string): Thread | undefined {
  const tidy = text
    .trim()
    .toLowerCase()
    .replace(/[×*]/g, "x")
    .replace(/[\u2010-\u2014]/g, "-")
    .replace(/\u2044/g, "/");
  const metric = METRIC.exec(tidy);
  if (metric) return sized(Number(metric[1]) * MILLIMETRE, Number(metric[2]) * MILLIMETRE);
  const unified = UNIFIED.exec(tidy);
  if (unified) {
    const diameter = Number(unified[1] ?? 0) + Number(unified[2]) / Number(unified[3]);
    return sized(diameter * INCH, INCH / Number(unified[4]));
  }
  const whole = UNIFIED_WHOLE.exec(tidy);
  return whole ? sized(Number(whole[1]) * INCH, INCH / Number(whole[2])) : undefined;
}

/** A thread whose pitch is not small beside its diameter was mistyped. */
function sized(diameter: number, pitch: number): Thread | undefined {
  const sound = Number.isFinite(diameter) && Number.isFinite(pitch) && pitch > 0 && pitch < diameter / 2;
  return sound ? { diameter, pitch } : undefined;
}
