import { type ReactNode, useState } from "react";
import { useBench } from "../app/use-bench.ts";
import { edit } from "../store/bench.ts";

interface Props {
  readonly index: number;
  /** What is read, in words. */
  readonly words: string;
  /** What all readings together make it; empty where it has no number. */
  readonly says: string;
  readonly isUsed: boolean;
}

/** One reading of the survey: what was typed, what the others say, and a way to take it again. */
export function ReadingEntry({ index, words, says, isUsed }: Props): ReactNode {
  const typed = useBench(({ document }) => {
    const readings = document?.survey?.readings as readonly Readonly<Record<string, unknown>>[] | undefined;
    const reads = readings?.[index]?.["reads"];
    return reads === undefined ? null : String(reads);
  });
  const [entry, setEntry] = useState<string | null>(null);
  if (typed === null) return <li>{words}</li>;
  const set = (): void => {
    if (entry !== null && entry.trim() !== "" && entry !== typed) {
      edit([{ path: `survey.readings[${index}].reads`, value: entry.trim() }], `${words}: ${entry.trim()}`);
    }
    setEntry(null);
  };
  return (
    <li>
      <label>
        {words}
        {!isUsed && <b> not used</b>}
        <input
          value={entry ?? typed}
          inputMode="text"
          autoComplete="off"
          onChange={(event) => setEntry(event.target.value)}
          onBlur={set}
          onKeyDown={(event) => {
            if (event.key === "Enter") set();
          }}
        />
      </label>
      {says !== "" && <span className="small quiet"> all together: {says}</span>}
    </li>
  );
}
