import { withSurvey } from "virtual:survey-later";
import { JOBS } from "./catalogue.ts";
import type { Job } from "./job.ts";
import { type Catalogue, makePerformer } from "./perform.ts";
import type { FromWorker, ToWorker } from "./protocol.ts";

// One worker for every kind of job; what a job needs is fetched when it is first asked for.

/** A job that reads a car with a survey finds that its solver is still to be fetched, and is then done once more. */
const jobs: Catalogue = Object.fromEntries(
  Object.entries(JOBS as Catalogue).map(([name, fetch]) => {
    const ready = async (): Promise<Job<never, unknown, unknown>> => {
      const job = await fetch();
      return (input, tools) => withSurvey(async () => job(input, tools));
    };
    return [name, ready];
  }),
);

const perform = makePerformer(jobs, (message, moved) => {
  (self as unknown as { postMessage(message: FromWorker, moved: Transferable[]): void }).postMessage(message, moved);
});

self.addEventListener("message", (event: MessageEvent<ToWorker>) => void perform(event.data));
