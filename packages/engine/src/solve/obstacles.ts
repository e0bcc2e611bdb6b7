import type { Car } from "../car/car.ts";
import { keepOutSolid, movingSolids } from "../clearance/moving-solids.ts";
import { separation } from "../clearance/separation.ts";
import type { RoundedSolid } from "../clearance/shapes.ts";
import { makeCorner, solveAt } from "../cycle/corner.ts";
import { positionOf } from "../cycle/position.ts";
import { bareCar } from "./over-travel.ts";

/** A part of the corner beside a thing on the body. */
interface Pair {
  readonly label: string;
  /** Least gap over the travels less what is asked for, m; negative: too near. */
  readonly spare: number;
}

/** What moved points must not bring nearer to the body's keep-outs than they may be. */
export interface Obstacles {
  /** The pair that a changed car brings too near, e.g. `upper link to fuel tank`; null where none is. */
  readonly inTheWay: (car: Car) => string | null;
}

/** Half of the travels at which a search looks will do: parts are thicker than what lies between. */
const EACH = 2;
/** Rounding, m. */
const NOTHING = 1e-9;

/**
 * Tyre, arms, links and half shaft against every keep-out at the travels. A pair that is too near as the car stands only
 * must not come nearer: that is another finding, and no reason against a change. Null where there are no keep-outs.
 */
export function obstaclesOf(car: Car, travels: readonly number[]): Obstacles | null {
  if (car.keepOuts.length === 0) return null;
  const looks = travels.filter((_, i) => i % EACH === 0 || i === travels.length - 1);
  const solids = car.keepOuts.map((keepOut) => ({ keepOut, solid: keepOutSolid(keepOut) }));
  const pairsOf = (each: Car): readonly Pair[] => {
    const corner = makeCorner(bareCar(each));
    const least = solids.flatMap(({ keepOut }) =>
      partLabels(
        corner.members.map(({ label }) => label),
        each,
      ).map((part) => ({
        label: `${part} to ${keepOut.name}`,
        spare: Number.POSITIVE_INFINITY,
      })),
    );
    for (const travel of looks) {
      const solved = solveAt(corner, travel);
      if (!solved) continue;
      const { tyre, members, shaft } = movingSolids(corner, positionOf(corner, solved.state));
      const parts: readonly RoundedSolid[] = [tyre, ...members, ...(shaft ? [shaft] : [])];
      solids.forEach(({ keepOut, solid }, k) => {
        parts.forEach((part, p) => {
          const pair = least[k * parts.length + p]!;
          pair.spare = Math.min(pair.spare, separation(part, solid).distance - keepOut.clearance);
        });
      });
    }
    return least;
  };
  const allowed = pairsOf(car).map(({ spare }) => Math.min(0, spare) - NOTHING);
  return { inTheWay: (changed) => pairsOf(changed).find(({ spare }, i) => spare < allowed[i]!)?.label ?? null };
}

const partLabels = (members: readonly string[], { driveshaft }: Car): readonly string[] => [
  "tyre",
  ...members,
  ...(driveshaft ? ["half shaft"] : []),
];
