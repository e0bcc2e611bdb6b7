import type { Study } from "@armwright/engine";
import { useRef } from "react";
import { useBench } from "../app/use-bench.ts";

/**
 * What `make` gives for a study, made anew when the study is another or the sheet has changed (`fit`: its size, in words).
 * While something is in the hand only the sheet counts, so that nothing slides or grows from under it.
 */
export function useStanding<T>(study: Study, fit: string, make: () => T): T {
  const isMoving = useBench(({ moving }) => moving !== null);
  const kept = useRef<{ readonly study: Study; readonly fit: string; readonly made: T } | null>(null);
  const { current } = kept;
  if (current && current.fit === fit && (isMoving || current.study === study)) return current.made;
  const made = make();
  kept.current = { study, fit, made };
  return made;
}
