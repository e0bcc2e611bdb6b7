import type { Car } from "../car/car.ts";
import { type Corner, makeCorner } from "../cycle/corner.ts";
import { type Cycle, moveThrough, stations } from "../cycle/cycle.ts";
import { type Quantity, quantitiesOf } from "../cycle/quantities.ts";
import { reportTravel, type TravelReport } from "../limits/travel-report.ts";
import type { TravelRange } from "../linkage/kind.ts";

/** How a car's wheel moves and what stops it: all that is drawn of it, and nothing that is judged. */
export interface MotionStudy {
  readonly car: Car;
  readonly corner: Corner;
  /** The linkage's own range. */
  readonly range: TravelRange;
  /** What stops the wheel, in order. */
  readonly travel: TravelReport;
  readonly quantities: readonly Quantity[];
  /** Moved from the droop stop to the bump stop, or through the travels that were asked for. */
  readonly cycle: Cycle;
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

/** Moves a car's wheel and finds what stops it. Never throws for a poor design. */
export function studyMotion(car: Car, options: StudyOptions = {}): MotionStudy {
  const corner = makeCorner(car);
  const travel = reportTravel(corner, options.beyondStops);
  const bump = travel.bump.stop.travel;
  const droop = travel.droop.stop.travel;
  const cycle = moveThrough(
    corner,
    options.travels ?? withRide(stations(droop, bump, options.stations ?? DEFAULT_STATIONS)),
  );
  return { car, corner, range: corner.mechanism.range, travel, quantities: quantitiesOf(corner), cycle };
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
