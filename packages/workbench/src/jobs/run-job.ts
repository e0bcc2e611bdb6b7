import type { AnswerOf, InputOf, JobName, ProgressOf } from "./catalogue.ts";
import type { Outcome } from "./job.ts";
import { makePool, type Pool } from "./pool.ts";

export interface RunOptions<Name extends JobName> {
  readonly onProgress?: (progress: ProgressOf<Name>) => void;
  readonly signal?: AbortSignal;
}

let pool: Pool | undefined;

/** How many jobs run at once: as many as the machine has cores. */
export const jobsAtOnce = (): number => Math.max(1, navigator.hardwareConcurrency || 2);

/** Does a job in a worker. Never rejects: what went wrong is in the outcome, in words. */
export async function runJob<const Name extends JobName>(
  name: Name,
  input: InputOf<Name>,
  { onProgress, signal }: RunOptions<Name> = {},
): Promise<Outcome<AnswerOf<Name>>> {
  pool ??= makePool(
    jobsAtOnce(),
    () => new Worker(new URL("./job.worker.ts", import.meta.url), { type: "module", name: "armwright-job" }),
  );
  const outcome = await pool.run({
    name,
    input,
    ...(onProgress && { onProgress: (progress: unknown) => onProgress(progress as ProgressOf<Name>) }),
    ...(signal && { signal }),
  });
  return outcome as Outcome<AnswerOf<Name>>;
}
