import { type Car, type MountRequest, type MountsPart, makeCorner, startSearch } from "@armwright/engine";
import type { Job } from "../jobs/job.ts";

export interface ScanInput {
  readonly car: Car;
  readonly request: MountRequest;
  /** This one of so many equal parts. */
  readonly part: number;
  readonly parts: number;
}

/** Between two pauses, ms. */
const STRETCH = 12;

/** A share of a mount search. Progress: how far it is, 0…1. */
export const scanJob: Job<ScanInput, MountsPart> = async ({ car, request, part, parts }, { tell, pause }) => {
  const run = startSearch(makeCorner(car), request, part, parts);
  let since = performance.now();
  while (run.next()) {
    if (performance.now() - since < STRETCH) continue;
    tell(run.done() / run.slices);
    await pause();
    since = performance.now();
  }
  return run.part();
};
