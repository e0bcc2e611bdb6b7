import { type TurnEffect, turnEffects } from "../adjust/turn-effects.ts";
import { type AxleTable, axleTable } from "../axle/axle-table.ts";
import type { Car } from "../car/car.ts";
import { type StudyCertainty, studyCertainty } from "../certainty/study-certainty.ts";
import { makeCorner } from "../cycle/corner.ts";
import type { Finding } from "../findings/finding.ts";
import { judge } from "../findings/judge.ts";
import { type MotionStudy, type StudyOptions, studyMotion } from "./motion-study.ts";
import { whenAsked } from "./when-asked.ts";

/** Everything that is known of a car: what all screens, commands and papers are views of. */
export interface Study extends MotionStudy {
  readonly axle: AxleTable;
  readonly adjusters: readonly TurnEffect[];
  /** How sure the numbers at the stops and at ride height are, and the limits; takes tenths of a second. */
  readonly certainty: StudyCertainty;
  /** Worst first. */
  readonly findings: readonly Finding[];
}

/** Studies a car. Never throws for a poor design. */
export function study(car: Car, options: StudyOptions = {}): Study {
  const found = studyMotion(car, options);
  const { corner, travel } = found;
  const right = car.right ? makeCorner(car.right) : corner;
  const [bump, droop] = [travel.bump.stop.travel, travel.droop.stop.travel];
  // Not needed for findings, and so made only when asked for: a study is remade at every step of a drag.
  const axle = whenAsked(() => axleTable(corner, right, bump, droop));
  const adjusters = whenAsked(() => turnEffects(car));
  const certainty = whenAsked(() => studyCertainty(car, travel));
  return {
    ...found,
    findings: judge(found, options.beyondStops === undefined ? "resting" : "moving"),
    get axle() {
      return axle();
    },
    get certainty() {
      return certainty();
    },
    get adjusters() {
      return adjusters();
    },
  };
}
