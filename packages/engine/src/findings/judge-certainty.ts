import { uncertainInputs } from "../certainty/inputs.ts";
import { type LimitCertainty, limitCertainty } from "../certainty/limit-certainty.ts";
import { INCH } from "../units/convert.ts";
import { count, type Finding, length } from "./finding.ts";
import type { Judged } from "./judge.ts";
import { sayInput } from "./say-certainty.ts";
import { STOP_NAME } from "./stop-name.ts";

/** Limits farther past the stop than this, m, are safe with any care taken. */
const NEAR = 0.04;
/** Fewer cars than this in a hundred are said as one. */
const LEAST = 1;

/** How sure each near limit is, for the findings on travel. */
export const nearLimits = ({ car, travel }: Judged): readonly LimitCertainty[] => {
  const isNear = (["bump", "droop"] as const).some((direction) =>
    travel[direction].limits.some(
      ({ nature, pastAtRide, travelLeft }) => nature === "hard" && !pastAtRide && travelLeft < NEAR,
    ),
  );
  return isNear ? limitCertainty(car, uncertainInputs(car), travel, NEAR) : [];
};

/** Hard limits that the stop comes before by less than building and measuring leave open. */
export function judgeCertainty({ car, travel }: Judged, near: readonly LimitCertainty[]): Finding[] {
  const isGiven = car.tolerances !== undefined || car.survey !== undefined || car.ownTolerances !== undefined;
  return near.filter(isUncertain).map(
    ({ direction, limit, left, sd, chance, causes }): Finding => ({
      code: "limit-uncertain",
      gravity: "mind",
      place: limit.place,
      travel: limit.travel,
      source: isGiven
        ? "your tolerances and readings, through the solved motion"
        : "common practice for what building leaves open",
      values: {
        limit: limit.label,
        way: direction,
        stop: STOP_NAME[travel[direction].stop.by],
        left: length(left),
        plusMinus: length(2 * sd),
        cars: count(Math.max(LEAST, Math.round(100 * chance))),
        cause: causes[0] ? sayInput(causes[0].input) : "many things at once",
      },
    }),
  );
}

/** Not before the stop, but nearer to it than its ±. */
export const isUncertain = ({ left, sd }: LimitCertainty): boolean => left >= -SAME && left < 2 * sd;

/** Nearer to the stop than a tape can tell is at the stop, m: half of a sixteenth. */
const SAME = INCH / 32;
