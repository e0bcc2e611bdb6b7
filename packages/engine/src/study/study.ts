import { type TurnEffect, turnEffects } from "../adjust/turn-effects.ts";
import { type AxleTable, axleTable } from "../axle/axle-table.ts";
import type { Car } from "../car/car.ts";
import { type StudyCertainty, studyCertainty } from "../certainty/study-certainty.ts";
import { type Corner, makeCorner } from "../cycle/corner.ts";
import { type Cycle, moveThrough, stations } from "../cycle/cycle.ts";
import { type Quantity, quantitiesOf } from "../cycle/quantities.ts";
import type { Finding } from "../findings/finding.ts";
import { judge } from "../findings/judge.ts";
import { reportTravel, type TravelReport } from "../limits/travel-report.ts";
import type { TravelRange } from "../linkage/kind.ts";
import { whenAsked } from "./when-asked.ts";

/** Everything that is known of a car: what all screens, commands and papers are views of. */
export interface Study {
  readonly car: Car;
  readonly corner: Corner;
  /** The linkage's own range. */
  readonly range: TravelRange;
  /** What stops the wheel, in order. */
  readonly travel: TravelReport;
  readonly quantities: readonly Quantity[];
  /** Moved from the droop stop to the bump stop, or through the travels that were asked for. */
  readonly cycle: Cycle;
  readonly axle: AxleTable;
  readonly adjusters: readonly TurnEffect[];
  /** How sure the numbers at the stops and at ride height are, and the limits; takes tenths of a second. */
  readonly certainty: StudyCertainty;
  /** Worst first. */
  readonly findings: readonly Finding[];
}

export interface StudyOptions {
  /** Travels of the cycle, m; otherwise `stations` of them from stop to stop. */
  readonly travels?: readonly number[];
  readonly stations?: number;
  /**
   * Look for things that could meet no farther than this past the chosen stops, m: for the steps of a drag. What strap and
   * bump stop have to take is then left unjudged.
   */
  readonly beyondStops?: number;
}

export const DEFAULT_STATIONS = 21;

/** Studies a car. Never throws for a poor design. */
export function study(car: Car, options: StudyOptions = {}): Study {
  const corner = makeCorner(car);
  const right = car.right ? makeCorner(car.right) : corner;
  const travel = reportTravel(corner, options.beyondStops);
  const bump = travel.bump.stop.travel;
  const droop = travel.droop.stop.travel;
  const cycle = moveThrough(
    corner,
    options.travels ?? withRide(stations(droop, bump, options.stations ?? DEFAULT_STATIONS)),
  );
  // Not needed for findings, and so made only when asked for: a study is remade at every step of a drag.
  const axle = whenAsked(() => axleTable(corner, right, bump, droop));
  const adjusters = whenAsked(() => turnEffects(car));
  const certainty = whenAsked(() => studyCertainty(car, travel));
  const found = { car, corner, range: corner.mechanism.range, travel, quantities: quantitiesOf(corner), cycle };
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

/** The design position belongs into every table: the nearest inner station is moved onto it. */
function withRide(travels: Float64Array): Float64Array {
  if (travels.length < 3 || travels.includes(0)) return travels;
  let nearest = 1;
  for (let i = 1; i < travels.length - 1; i += 1) {
    if (Math.abs(travels[i]!) < Math.abs(travels[nearest]!)) nearest = i;
  }
  if (travels[0]! < 0 && travels[travels.length - 1]! > 0) travels[nearest] = 0;
  return travels;
}
