import { solveAt } from "../cycle/corner.ts";
import { rowAt } from "../cycle/cycle.ts";
import { ROW } from "../cycle/row.ts";
import { type Finding, length, ratio } from "./finding.ts";
import type { Judged } from "./judge.ts";

/** Below this a shock works hard for little control: common practice. */
const LOW_RATIO = 0.45;
/** A fall of the motion ratio toward bump smaller than this is called level. */
const LEVEL = 0.02;

export function judgeShock(study: Judged): Finding[] {
  const ride = solveAt(study.corner, 0);
  if (!study.car.shock || !ride) return [];
  const findings: Finding[] = [];
  const atRide = ride.row[ROW.motionRatio]!;
  if (atRide < 0) {
    return [
      {
        code: "shock-lengthens-in-bump",
        gravity: "must",
        place: "shock",
        travel: 0,
        source: "solved motion",
        values: { ratio: ratio(-atRide) },
      },
    ];
  }
  if (atRide < LOW_RATIO) {
    findings.push({
      code: "motion-ratio-low",
      gravity: "mind",
      place: "shock.lower",
      travel: 0,
      source: "common practice",
      values: { ratio: ratio(atRide), low: ratio(LOW_RATIO) },
    });
  }
  const { travels } = study.cycle;
  const last = travels.length - 1;
  if (last > 0 && travels[last]! > 0) {
    const atBump = rowAt(study.cycle, last)[ROW.motionRatio]!;
    if (atBump < atRide - LEVEL) {
      findings.push({
        code: "motion-ratio-falls",
        gravity: "mind",
        place: "shock",
        travel: travels[last]!,
        source: "common practice: rising or level toward bump",
        values: { ride: ratio(atRide), bump: ratio(atBump), travel: length(travels[last]!) },
      });
    }
  }
  return findings;
}
