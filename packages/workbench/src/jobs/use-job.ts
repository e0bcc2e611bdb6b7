import { useEffect, useRef, useState } from "react";
import type { AnswerOf, InputOf, JobName } from "./catalogue.ts";
import { newestWins } from "./newest-wins.ts";
import { runJob } from "./run-job.ts";

/** What a job last answered, and of which input. */
export interface Answered<Name extends JobName> {
  readonly input: InputOf<Name>;
  readonly answer: AnswerOf<Name>;
}

export interface JobState<Name extends JobName> {
  /** The last answer; of an input of before while a newer one is worked on. */
  readonly last: Answered<Name> | null;
  /** Set where the newest input could not be answered, in words. */
  readonly failed: string;
}

/** Waits so long for the hand to rest, ms, unless told otherwise. */
const REST = 150;

/** Has a job done in a worker for every new input, the newest only; null asks for nothing. */
export function useJob<const Name extends JobName>(
  name: Name,
  input: InputOf<Name> | null,
  rest: number = REST,
): JobState<Name> {
  const [state, setState] = useState<JobState<Name>>({ last: null, failed: "" });
  const newest = useRef(newestWins());
  useEffect(() => {
    const { current } = newest;
    if (input === null) {
      current.giveUp();
      return;
    }
    const signal = current.begin();
    const timer = setTimeout(async () => {
      const outcome = await runJob(name, input, { signal });
      if (!current.isNewest(signal)) return;
      if (outcome.ok) setState({ last: { input, answer: outcome.answer }, failed: "" });
      else if (outcome.why === "failed") setState((before) => ({ ...before, failed: outcome.words }));
    }, rest);
    return () => {
      clearTimeout(timer);
      current.giveUp();
    };
  }, [name, input, rest]);
  return state;
}
