import { tapeScale } from "@armwright/drawing";
import type { DirectionReport, Study } from "@armwright/engine";

/** Travels at the ends of something, m. */
export interface Ends {
  readonly droop: number;
  readonly bump: number;
}

/** How far the tape reaches: past the chosen stops and every limit that is near them. */
export function tapeEnds(study: Study): Ends {
  const { lowest, highest } = tapeScale(study, { x: 0, y: 0, width: 1, height: 1 });
  return { droop: lowest, bump: highest };
}

/** A hair inside the linkage's own ends, where it still assembles. */
const INSIDE = 1 - 1e-6;

/** The travel nearest to the one asked for that the linkage reaches and the tape shows, m. */
export function clampTravel(travel: number, study: Study | null): number {
  if (!study) return 0;
  const ends = tapeEnds(study);
  const low = Math.max(ends.droop, study.range.droop.travel * INSIDE);
  const high = Math.min(ends.bump, study.range.bump.travel * INSIDE);
  return Math.min(high, Math.max(low, travel));
}

/** Where a cycle turns: the chosen stop, or a hard limit that comes before it. */
export function cycleEnds({ travel }: Study): Ends {
  const end = ({ stop, first }: DirectionReport): number =>
    first && Math.abs(first.travel) < Math.abs(stop.travel) ? first.travel : stop.travel;
  return { droop: end(travel.droop), bump: end(travel.bump) };
}
