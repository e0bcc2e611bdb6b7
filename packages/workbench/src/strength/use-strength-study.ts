import type { StrengthStudy, Study } from "@armwright/engine";
import type { CarDocument } from "@armwright/engine/document";
import { useEffect, useRef, useState } from "react";
import { useBench } from "../app/use-bench.ts";
import { newestWins } from "../jobs/newest-wins.ts";
import { runJob } from "../jobs/run-job.ts";

/** A car's strength as far as it is found: other sizes and proposals come after the factors. */
export interface StrengthNow {
  readonly found: StrengthStudy;
  /** The document that it is of; another one since makes it old. */
  readonly of: CarDocument;
  /** Other sizes and proposals are still being looked for. */
  readonly isLooking: boolean;
}

/** Found in a worker whenever the hand rests; what stood before stays until then. `trouble`: in words, where it failed. */
export function useStrengthStudy(study: Study): { readonly now: StrengthNow | null; readonly trouble: string } {
  const document = useBench((state) => (state.moving ? null : state.document));
  const side = useBench((state) => state.side);
  const [now, setNow] = useState<StrengthNow | null>(null);
  const [trouble, setTrouble] = useState("");
  const asked = useRef(newestWins());
  // biome-ignore lint/correctness/useExhaustiveDependencies: another study is another car, or another side.
  useEffect(() => {
    if (!document) return;
    const { begin, isNewest } = asked.current;
    const signal = begin();
    void runJob(
      "strength",
      { document, side },
      {
        signal,
        onProgress: (soFar) => {
          if (isNewest(signal))
            setNow((before) => ({
              found: { ...soFar, alternatives: before?.found.alternatives ?? [], proposals: [], tried: [] },
              of: document,
              isLooking: true,
            }));
        },
      },
    ).then((outcome) => {
      if (!isNewest(signal)) return;
      if (outcome.ok) setNow(outcome.answer && { found: outcome.answer, of: document, isLooking: false });
      setTrouble(outcome.ok || outcome.why === "given up" ? "" : outcome.words);
    });
  }, [study, document, side]);
  useEffect(() => () => asked.current.giveUp(), []);
  return { now, trouble };
}
