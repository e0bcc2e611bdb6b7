import { solveAt } from "../cycle/corner.ts";
import { ROW } from "../cycle/row.ts";
import { length as length3, squareTo, subtract } from "../geometry/vec3.ts";
import { extremesOf } from "./extremes.ts";
import { angle, type Finding, length, percent } from "./finding.ts";
import type { Judged } from "./judge.ts";

const DEGREE = Math.PI / 180;
/** Bend at ride height above this runs hot and wears: common practice, no source. */
const RIDE_BEND = 10 * DEGREE;
/** Farther off the spin axis than this, m, is no slip of the tape any more: ours, two of its marks. */
const OFF_AXIS = 0.0254 / 8;
/** A pair of joints that ripples like one joint beyond this angle is felt: common practice, no source. */
const SMOOTH_ANGLE = 3 * DEGREE;

export function judgeDriveline(study: Judged): Finding[] {
  const shaft = study.car.driveshaft;
  const ride = solveAt(study.corner, 0);
  if (!shaft || !ride) return [];
  const findings: Finding[] = [];
  for (const side of ["inner", "outer"] as const) {
    const place = side === "inner" ? ROW.innerJointAngle : ROW.outerJointAngle;
    const bend = ride.row[place]!;
    const name = `${side} ${shaft[side].kind === "u-joint" ? "U-joint" : "CV joint"}`;
    if (bend > RIDE_BEND) {
      findings.push({
        code: "joint-angle-at-ride",
        gravity: "mind",
        place: `driveshaft.${side}`,
        travel: 0,
        source: "common practice",
        values: { joint: name, bend: angle(bend), most: angle(RIDE_BEND) },
      });
    }
    if (shaft[side].angleLimit === undefined) {
      const range = extremesOf(study.cycle, place);
      findings.push({
        code: "joint-limit-unknown",
        gravity: "mind",
        place: `driveshaft.${side}.angleLimit`,
        ...(range && { travel: range.mostAt }),
        source: "your document",
        values: { joint: name, bend: angle(range?.most ?? bend), travel: length(range?.mostAt ?? 0) },
      });
    }
  }
  const off = length3(squareTo(subtract(shaft.outer.centre, study.corner.wheelCentre), study.corner.spinAxis));
  if (off > OFF_AXIS) {
    findings.push({
      code: "joint-off-the-stub-axle",
      gravity: "mind",
      place: "driveshaft.outer.centre",
      travel: 0,
      source: "your document: the stub axle lies on the wheel's spin axis",
      values: { off: length(off), joint: shaft.outer.kind === "u-joint" ? "U-joint" : "CV joint" },
    });
  }
  const ripple = ride.row[ROW.rippleAngle]!;
  if (ripple > SMOOTH_ANGLE) {
    findings.push({
      code: "speed-ripple",
      gravity: "mind",
      place: "driveshaft",
      travel: 0,
      source: "common practice for the angle; ripple from the published speed ratio of a U-joint",
      values: { ripple: percent(ride.row[ROW.speedRipple]!), as: angle(ripple), smooth: angle(SMOOTH_ANGLE) },
    });
  }
  return findings;
}
