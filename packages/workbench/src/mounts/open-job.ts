import { type Car, type MountRequest, makeCorner, type Opening, whatWouldOpen } from "@armwright/engine";
import type { Job } from "../jobs/job.ts";

export interface OpenInput {
  readonly car: Car;
  readonly request: MountRequest;
}

/** The smallest single changes that open a place, where the request has none. */
export const openJob: Job<OpenInput, readonly Opening[]> = ({ car, request }) =>
  whatWouldOpen(makeCorner(car), request);
