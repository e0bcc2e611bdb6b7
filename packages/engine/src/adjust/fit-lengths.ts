import type { Car, Linkage } from "../car/car.ts";
import type { Lengths } from "../linkage/kind.ts";
import { kindOf } from "../linkage/kinds.ts";
import { type Change, screwTogether } from "./adjusted.ts";
import { linkLengths } from "./screw-step.ts";

export interface LengthMiss {
  /** Member id and label of the link. */
  readonly member: string;
  readonly label: string;
  /** Length that was asked for, and the nearest at which the linkage goes together at ride height, m. */
  readonly wanted: number;
  readonly nearest: number;
  /** wanted − nearest, m: positive where the link is too long. */
  readonly miss: number;
}

export type FitResult =
  | { readonly ok: true; readonly car: Car }
  | { readonly ok: false; readonly misses: readonly LengthMiss[] };

/**
 * The car put together at ride height with measured eye-to-eye lengths (m, by member id of a link) in place of those that
 * its points give: spindle and arms go where the lengths put them. Where that cannot be, which length misses, and by how
 * much, after all have been brought as near as they go. Throws where the linkage has no such link.
 */
export function fitLengths(car: Car, lengths: Lengths): FitResult {
  const all = changesTo(car, lengths);
  const together = screwTogether(car, all);
  if (together.fraction === 1) return { ok: true, car: together.car };
  // One after the other as far as it goes, the least changed first: the blame falls on the length farthest off its points.
  const inTurn = [...all].sort((a, b) => Math.abs(a.change) - Math.abs(b.change));
  const here = inTurn.reduce((now, change) => screwTogether(now, [change]).car, car);
  const reached = linkLengths(here);
  const labels = new Map(
    kindOf<Linkage>(car.linkage)
      .members(car.linkage)
      .map(({ id, label }) => [id, label]),
  );
  const misses = all.flatMap(({ adjuster: member }): LengthMiss[] => {
    const wanted = lengths[member]!;
    const nearest = reached[member]!;
    if (Math.abs(wanted - nearest) < MET) return [];
    return [{ member, label: labels.get(member)!, wanted, nearest, miss: wanted - nearest }];
  });
  return misses.length > 0 ? { ok: false, misses } : { ok: true, car: here };
}

/** m: lengths that agree to this are met. */
const MET = 1e-9;

/** What each link lacks of its length. A link's adjuster has the link's own id. */
function changesTo(car: Car, lengths: Lengths): readonly Change[] {
  const now = linkLengths(car);
  return Object.entries(lengths).map(([member, length]) => {
    const present = now[member];
    if (present === undefined) throw new Error(`bug in armwright: this ${car.linkage.kind} has no link ${member}`);
    return { adjuster: member, change: length - present };
  });
}
