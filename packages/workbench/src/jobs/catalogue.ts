import type { Job } from "./job.ts";

/** Every job, each fetched by a worker when it is first asked for. A new one: a file that exports it, and a line here. */
export const JOBS = {
  "mounts-scan": () => import("../mounts/scan-job.ts").then((m) => m.scanJob),
  "mounts-judge": () => import("../mounts/judge-job.ts").then((m) => m.judgeJob),
  "mounts-open": () => import("../mounts/open-job.ts").then((m) => m.openJob),
  certainty: () => import("../certainty/certainty-job.ts").then((m) => m.certaintyJob),
  "as-built": () => import("../as-built/as-built-job.ts").then((m) => m.asBuiltJob),
  solve: () => import("../solve/solve-job.ts").then((m) => m.solveJob),
  landing: () => import("../landing/landing-job.ts").then((m) => m.landingJob),
  strength: () => import("../strength/strength-job.ts").then((m) => m.strengthJob),
} as const;

export type JobName = keyof typeof JOBS;
type JobOf<Name extends JobName> = Awaited<ReturnType<(typeof JOBS)[Name]>>;
export type InputOf<Name extends JobName> = JobOf<Name> extends Job<infer Input, infer _A, infer _P> ? Input : never;
export type AnswerOf<Name extends JobName> = JobOf<Name> extends Job<infer _I, infer Answer, infer _P> ? Answer : never;
export type ProgressOf<Name extends JobName> =
  JobOf<Name> extends Job<infer _I, infer _A, infer Progress> ? Progress : never;
