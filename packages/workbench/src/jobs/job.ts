/** What a job is given while it runs in its worker. */
export interface JobTools<Progress> {
  /** Told to whoever asked; cheap, but not free: some twenty times a second is plenty. */
  readonly tell: (progress: Progress) => void;
  /**
   * Lets the worker hear whether the job has been given up; it then ends here. Called between slices of some ten
   * milliseconds. A job that never calls it can be given up as well, but its worker is then thrown away with it.
   */
  readonly pause: () => Promise<void>;
}

/** Work for a worker: plain data in, plain data out. Throws an Error whose message is in plain words. */
export type Job<Input, Answer, Progress = number> = (
  input: Input,
  tools: JobTools<Progress>,
) => Answer | Promise<Answer>;

/** What has become of a job. Given up is no failure: something newer was asked for. */
export type Outcome<Answer> =
  | { readonly ok: true; readonly answer: Answer }
  | { readonly ok: false; readonly why: "given up" }
  | { readonly ok: false; readonly why: "failed"; readonly words: string };
