import type { Car } from "../car/car.ts";
import type { PairGap } from "../clearance/gaps-at.ts";
import { movingSolids } from "../clearance/moving-solids.ts";
import { type ClearancePair, clearancePairs } from "../clearance/pairs.ts";
import { makeCorner, solveAt } from "../cycle/corner.ts";
import { positionOf } from "../cycle/position.ts";
import { type Inputs, uncertainInputs } from "./inputs.ts";
import { slopesOf, spreadOf } from "./slopes.ts";

/** What stands nearest to the tyre at a travel, and how sure the gap is. */
export interface TyreGap {
  /** m, as asked for. */
  readonly travel: number;
  /** `shock to tyre`, `tyre to fuel tank`. */
  readonly label: string;
  /** m, negative when they overlap. */
  readonly gap: number;
  /** Standard deviation from the corner's points, m; how true a keep-out was measured is not in it. */
  readonly sd: number;
}

/** The tyre's nearest neighbour at each travel (m), by linear propagation like every ±; null where nothing stands near it. */
export function tyreGaps(
  car: Car,
  travels: readonly number[],
  inputs: Inputs = uncertainInputs(car),
): readonly (TyreGap | null)[] {
  const nearest = readGaps(car, travels, isOfTyre).map((gaps) =>
    gaps.reduce<TyrePair | null>((least, each) => (least && least.gap <= each.gap ? least : each), null),
  );
  // The same pair is followed as the points move: the nearest of all has a kink where two pairs change places.
  const followed = new Set(nearest.map((each) => each?.id));
  const results = (of: Car): readonly (number | null)[] =>
    readGaps(of, travels, ({ id }) => followed.has(id)).map(
      (gaps, t) => gaps.find(({ id }) => id === nearest[t]?.id)?.gap ?? null,
    );
  const spreads = spreadOf(slopesOf(car, inputs.list, results), inputs.covariance);
  return travels.map((travel, t) => {
    const found = nearest[t];
    return found ? { travel, label: found.label, gap: found.gap, sd: spreads[t]?.sd ?? 0 } : null;
  });
}

type TyrePair = Pick<PairGap, "id" | "label" | "gap">;

const isOfTyre = ({ id }: Pick<ClearancePair, "id">): boolean => /(^|:)(tyre|sidewall)(:|$)/.test(id);

/** The gaps of the wanted pairs at each travel. */
function readGaps(
  car: Car,
  travels: readonly number[],
  isWanted: (pair: Pick<ClearancePair, "id">) => boolean,
): readonly (readonly TyrePair[])[] {
  const corner = makeCorner(car);
  const pairs = clearancePairs(corner).filter(isWanted);
  return travels.map((travel) => {
    const solved = solveAt(corner, travel);
    if (!solved) return [];
    const solids = movingSolids(corner, positionOf(corner, solved.state));
    return pairs.map(({ id, label, measure }) => ({ id, label, gap: measure(solids).gap }));
  });
}
