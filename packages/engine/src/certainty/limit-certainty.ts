import type { Car } from "../car/car.ts";
import { makeCorner } from "../cycle/corner.ts";
import type { Direction } from "../limits/find-limits.ts";
import { type LimitReport, reportTravel } from "../limits/travel-report.ts";
import { chiSquareTail } from "../survey/distribution.ts";
import { type Inputs, type UncertainInput, uncertainInputs } from "./inputs.ts";
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
  readonly causes: readonly { readonly input: UncertainInput; readonly share: number }[];
}

/** Limits farther past the stop than this, m, are not asked about. */
const FARTHEST = 0.08;

/**
 * How sure it is that the chosen stops come first: travel left to each hard limit with its ±, by linear propagation through
 * the whole travel report; the chance from the normal law.
 */
export function limitCertainty(car: Car, inputs: Inputs = uncertainInputs(car)): readonly LimitCertainty[] {
  const report = reportTravel(makeCorner(car), FARTHEST);
  const near = (["bump", "droop"] as const).flatMap((direction) =>
    report[direction].limits
      .filter(({ nature, travelLeft, pastAtRide }) => nature === "hard" && !pastAtRide && travelLeft < FARTHEST)
      .map((limit) => ({ direction, limit })),
  );
  if (near.length === 0) return [];
  const leftOf = (of: Car): readonly (number | null)[] => {
    const made = reportTravel(makeCorner(of), FARTHEST + 0.02);
    return near.map(
      ({ direction, limit }) => made[direction].limits.find(({ id }) => id === limit.id)?.travelLeft ?? null,
    );
  };
  const spreads = spreadOf(slopesOf(car, inputs.list, leftOf), inputs.covariance);
  return near.map(({ direction, limit }, k) => {
    const { sd, shares } = spreads[k]!;
    return {
      direction,
      limit,
      left: limit.travelLeft,
      sd,
      chance: sd > 0 ? normalShare(-limit.travelLeft / sd) : limit.travelLeft < 0 ? 1 : 0,
      causes: inputs.list
        .map((input, i) => ({ input, share: shares[i]! }))
        .filter(({ share }) => share > 0.05)
        .sort((a, b) => b.share - a.share)
        .slice(0, 3),
    };
  });
}

/** Share of a standard normal deviate below `u`: half of what chi-square with one degree of freedom leaves above u². */
function normalShare(u: number): number {
  const tail = chiSquareTail(u * u, 1) / 2;
  return u < 0 ? tail : 1 - tail;
}
