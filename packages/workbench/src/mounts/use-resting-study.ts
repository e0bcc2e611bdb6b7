import type { Study } from "@armwright/engine";
import { useRef } from "react";
import { useBench } from "../app/use-bench.ts";

/** The study as it was before the hand began to move: forms need not follow every step of a drag. */
export function useRestingStudy(): Study | null {
  const study = useBench(({ live, moving }) => (moving ? null : live.study));
  const last = useRef(study);
  if (study) last.current = study;
  return last.current;
}
