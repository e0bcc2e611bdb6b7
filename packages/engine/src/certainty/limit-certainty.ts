import type { Car } from "../car/car.ts";
import { type Corner, makeCorner, solveAt } from "../cycle/corner.ts";
import type { Direction } from "../limits/find-limits.ts";
import { type Limit, limitsOf, lookAt, plainLimitsOf } from "../limits/limit.ts";
import { type LimitReport, type ResolvedStop, reportTravel, type TravelReport } from "../limits/travel-report.ts";
import type { MotionState } from "../linkage/motion-state.ts";
import { chiSquareTail } from "../survey/distribution.ts";
import { mostOf, type Share, solveNear } from "./cycle-certainty.ts";
import { type Inputs, uncertainInputs } from "./inputs.ts";
import { slopesOf, spreadOf } from "./slopes.ts";

/** A hard limit and the chance that it bites before the stop the builder chose. */
export interface LimitCertainty {
  readonly direction: Direction;
  readonly limit: LimitReport;
  /** Wheel travel from the chosen stop to the limit, m, and its standard deviation. */
  readonly left: number;
  readonly sd: number;
  /** 0…1: of cars built this way, those in which the limit comes first. */
  readonly chance: number;
  readonly causes: readonly Share[];
  /** Share of every input, and slope of what is left by it, in their order. */
  readonly shares: Float64Array;
  readonly gradient: Float64Array;
}

/** Limits farther past the stop than this, m, are not asked about. */
const FARTHEST = 0.08;

/**
 * How sure it is that the chosen stops come first: travel left to each hard limit with its ±, by linear propagation; the
 * chance from the normal law. How far a limit's or stop's travel moves follows from how its spare changes there: with
 * spare(t, p) = 0, dt/dp = −(∂spare/∂p) / (∂spare/∂t). `near`: limits farther past the stop than this, m, are left out.
 */
export function limitCertainty(
  car: Car,
  inputs: Inputs = uncertainInputs(car),
  report: TravelReport = reportTravel(makeCorner(car), FARTHEST),
  near = FARTHEST,
): readonly LimitCertainty[] {
  const asked = (["bump", "droop"] as const).flatMap((direction) => {
    const { stop, limits } = report[direction];
    const stopId = idOfStop(stop, direction);
    if (!stop.works) return [];
    return limits
      .filter(
        ({ id, nature, pastAtRide, travelLeft }) =>
          nature === "hard" && !pastAtRide && travelLeft < near && id !== stopId,
      )
      .map((limit): Asked => ({ direction, limit, stop, stopId }));
  });
  if (asked.length === 0) return [];
  const slopes = leftSlopes(car, inputs, asked);
  const spreads = spreadOf(slopes, inputs.covariance);
  return asked.map(({ direction, limit }, k) => {
    const { sd, shares } = spreads[k]!;
    return {
      direction,
      limit,
      left: limit.travelLeft,
      sd,
      chance: sd > 0 ? normalShare(-limit.travelLeft / sd) : limit.travelLeft < 0 ? 1 : 0,
      causes: mostOf(inputs, shares, 0.05, 3),
      shares,
      gradient: Float64Array.from(slopes, (row) => row[k]!),
    };
  });
}

interface Asked {
  readonly direction: Direction;
  readonly limit: LimitReport;
  readonly stop: ResolvedStop;
  /** The limit that is the stop; none where the travel is only aimed at. */
  readonly stopId: string | null;
}

function idOfStop({ by }: ResolvedStop, direction: Direction): string | null {
  if (by === "travel") return null;
  if (by === "shock") return direction === "bump" ? "shock-shortest" : "shock-longest";
  return by === "strap" ? "strap" : "bump-stop-solid";
}

/** Where one limit is met on the plan. */
interface Meeting {
  readonly id: string;
  readonly travel: number;
}

/** Half of a step of travel, m. */
const STEP = 2e-4;

/** How the travel left to each limit follows each input: a row an input. */
function leftSlopes(car: Car, inputs: Inputs, asked: readonly Asked[]): readonly Float64Array[] {
  const corner = makeCorner(car);
  const all = asked.flatMap(({ limit, stop, stopId }): Meeting[] => [
    { id: limit.id, travel: limit.travel },
    ...(stopId === null ? [] : [{ id: stopId, travel: stop.travel }]),
  ]);
  const keyOf = ({ id, travel }: Meeting): string => `${id} ${travel}`;
  const meetings = [...new Map(all.map((each) => [keyOf(each), each])).values()];
  const starts = meetings.map(({ travel }) => solveAt(corner, travel)?.state);
  const spares = slopesOf(car, inputs.list, (of) => sparesAt(makeCorner(of, {}, corner), meetings, starts));
  const [out, back] = [STEP, -STEP].map((h) =>
    sparesAt(
      corner,
      meetings.map(({ id, travel }) => ({ id, travel: travel + h })),
      starts,
    ),
  );
  const byTravel = meetings.map((_, m) => ((out![m] ?? 0) - (back![m] ?? 0)) / (2 * STEP));
  const place = new Map(meetings.map((each, m) => [keyOf(each), m]));
  return spares.map((row) => {
    const moved = (meeting: Meeting): number => {
      const m = place.get(keyOf(meeting))!;
      return byTravel[m] ? -row[m]! / byTravel[m]! : 0;
    };
    return Float64Array.from(asked, ({ direction, limit, stop, stopId }) => {
      const outward = direction === "bump" ? 1 : -1;
      const stopMoved = stopId === null ? 0 : moved({ id: stopId, travel: stop.travel });
      return outward * (moved({ id: limit.id, travel: limit.travel }) - stopMoved);
    });
  });
}

/** What is left of each limit where the plan meets it; of the linkage's own end how much farther it goes. */
function sparesAt(
  corner: Corner,
  meetings: readonly Meeting[],
  starts: readonly (MotionState | undefined)[],
): readonly (number | null)[] {
  const needsSolids = meetings.some(({ id }) => id.startsWith("clearance:"));
  const limits = new Map<string, Limit>(
    (needsSolids ? limitsOf(corner) : plainLimitsOf(corner)).map((limit) => [limit.id, limit]),
  );
  const { range } = meetings.some(({ id }) => id.startsWith("linkage")) ? corner.mechanism : { range: null };
  return meetings.map(({ id, travel }, m) => {
    if (range && id.startsWith("linkage")) {
      const end = travel > 0 ? range.bump : range.droop;
      const at = id === "linkage" ? end.travel : end.toggles[0];
      return at === undefined ? null : Math.abs(at) - Math.abs(travel);
    }
    const limit = limits.get(id);
    const solved = limit && solveNear(corner, travel, starts[m]);
    return solved ? limit.spare(lookAt(corner, solved.state, solved.row, travel)) : null;
  });
}

/** Share of a standard normal deviate below `u`: half of what chi-square with one degree of freedom leaves above u². */
function normalShare(u: number): number {
  const tail = chiSquareTail(u * u, 1) / 2;
  return u < 0 ? tail : 1 - tail;
}
