import type { Study } from "@armwright/engine";
import { useRef } from "react";
import { useBench } from "../app/use-bench.ts";
import { tapeEnds } from "../store/travel.ts";

interface Range {
  readonly lowest: number;
  readonly highest: number;
}

/** The tape's ends. While something is in the hand they stand still, so that the tape does not slide from under it. */
export function useTapeRange(study: Study): Range {
  const isMoving = useBench(({ moving }) => moving !== null);
  const kept = useRef<Range | null>(null);
  if (!isMoving || kept.current === null) {
    const { droop, bump } = tapeEnds(study);
    kept.current = { lowest: droop, highest: bump };
  }
  return kept.current;
}
