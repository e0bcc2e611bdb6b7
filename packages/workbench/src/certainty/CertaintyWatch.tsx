import { useEffect, useMemo } from "react";
import { useBench } from "../app/use-bench.ts";
import { useJob } from "../jobs/use-job.ts";
import { takeCertainty } from "./certainty-store.ts";

/** It takes a second: what is typed or pressed quickly one after the other is waited for, ms. */
const REST = 600;

/** Works out in a worker how sure the car on the bench is, whenever the hand rests; shows nothing itself. */
export function CertaintyWatch(): null {
  const document = useBench(({ document: shown, moving, live }) =>
    moving || live.faults.length > 0 || !live.study ? null : shown,
  );
  const side = useBench((state) => state.side);
  const input = useMemo(() => document && { document, side }, [document, side]);
  const { last } = useJob("certainty", input, REST);
  useEffect(() => {
    if (last) takeCertainty(last.input, last.answer);
  }, [last]);
  return null;
}
