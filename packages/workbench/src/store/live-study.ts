import { type Car, type Study, study } from "@armwright/engine";
import { type CarDocument, type Fault, readCarValue } from "@armwright/engine/document";
import type { Side } from "./sides.ts";

/** What a document came to: its study, or its faults beside the last study that could be made. */
export interface Live {
  readonly faults: readonly Fault[];
  readonly car: Car | null;
  readonly study: Study | null;
  /** True where the study is of an earlier state, because the present one has faults. */
  readonly isOlder: boolean;
  /** Set where the study itself failed: a fault of the program, said as such. */
  readonly failure: string | null;
  /** Time that reading and study took, ms. */
  readonly took: number;
}

/** As far past a stop as the tape shows, m. */
const BEYOND_STOPS = 0.05;

export const NOT_READ: Live = { faults: [], car: null, study: null, isOlder: false, failure: null, took: 0 };

/**
 * Reads and studies a document at once. `before` is kept, and marked as older, where the document has faults. While the hand
 * is moving, things that could meet are looked for no farther than a little past the stops; at rest, all the way.
 */
export function studied(document: CarDocument, before: Live, hand: "moving" | "at rest", side: Side): Live {
  const started = performance.now();
  const reading = readCarValue(document);
  if (!reading.ok) {
    return { ...before, faults: reading.faults, isOlder: before.study !== null, took: performance.now() - started };
  }
  try {
    const car = side === "right" ? (reading.car.right ?? reading.car) : reading.car;
    const made = study(car, hand === "moving" ? { beyondStops: BEYOND_STOPS } : {});
    return {
      faults: [],
      car,
      study: made,
      isOlder: false,
      failure: null,
      took: performance.now() - started,
    };
  } catch (error) {
    const failure = error instanceof Error ? error.message : String(error);
    return { ...before, faults: [], isOlder: before.study !== null, failure, took: performance.now() - started };
  }
}
