import type { Car } from "../car/car.ts";
import type { Adjuster } from "../linkage/kind.ts";

/**
 * How much longer one turn makes an adjuster, m. A turnbuckle's tube moves both ends: with opposite hands they go apart by
 * both pitches, with the same hand one goes out as the other goes in, which leaves the difference of the pitches (0 with
 * equal ones: it cannot be adjusted by turning). An end that is taken off goes one pitch a turn.
 * Null where a rod end or its pitch is not given.
 */
export function advancePerTurn(car: Car, adjuster: Adjuster): number | null {
  const ends = adjuster.rodEnds.map((pivot) => car.rodEnds.find((end) => end.pivot === pivot));
  const [first, second] = ends;
  if (first?.pitch === undefined) return null;
  if (adjuster.action === "end") return first.pitch;
  if (second?.pitch === undefined) return null;
  return first.hand === second.hand ? Math.abs(first.pitch - second.pitch) : first.pitch + second.pitch;
}
