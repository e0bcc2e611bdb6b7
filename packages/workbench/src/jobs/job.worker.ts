import { JOBS } from "./catalogue.ts";
import { makePerformer } from "./perform.ts";
import type { FromWorker, ToWorker } from "./protocol.ts";

// One worker for every kind of job; what a job needs is fetched when it is first asked for.

const perform = makePerformer(JOBS, (message, moved) => {
  (self as unknown as { postMessage(message: FromWorker, moved: Transferable[]): void }).postMessage(message, moved);
});

self.addEventListener("message", (event: MessageEvent<ToWorker>) => void perform(event.data));
