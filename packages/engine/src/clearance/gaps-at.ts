import type { Corner } from "../cycle/corner.ts";
import type { Position } from "../cycle/position.ts";
import type { Vec3 } from "../geometry/vec3.ts";
import { movingSolids } from "./moving-solids.ts";
import { clearancePairs } from "./pairs.ts";

/** The gap of one pair in one position. */
export interface PairGap {
  readonly id: string;
  readonly label: string;
  /** m, negative when they overlap. */
  readonly gap: number;
  /** Clearance wanted, m. */
  readonly wanted: number;
  /** Middle of the nearest places, vehicle axes, m. */
  readonly at: Vec3;
}

/** Every pair of things that could meet, as they are in one position. */
export function gapsAt(corner: Corner, position: Position): readonly PairGap[] {
  const solids = movingSolids(corner, position);
  return clearancePairs(corner).map((pair) => ({
    id: pair.id,
    label: pair.label,
    wanted: pair.wanted,
    ...pair.measure(solids),
  }));
}
