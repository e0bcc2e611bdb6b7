import { useEffect } from "react";
import { useBench } from "../app/use-bench.ts";
import { STILL } from "../app/use-media.ts";
import { bench, carryTravel, setCycling } from "../store/bench.ts";
import { cycleEnds } from "../store/travel.ts";
import { snapped } from "../words/shown.ts";

/** From stop to stop, ms. */
const SWEEP = 6000;

/** Moves the wheel up and down by itself at constant speed while the bench says so; with reduced motion it jumps by steps. */
export function useCycling(): void {
  const isCycling = useBench((state) => state.isCycling);
  useEffect(() => {
    if (!isCycling) return;
    const isStill = matchMedia(STILL).matches;
    let way: 1 | -1 = 1;
    let at = bench.getState().travel;
    let before = performance.now();
    let frame = 0;
    const advance = (share: number): void => {
      const { live, units } = bench.getState();
      if (!live.study) {
        setCycling(false);
        return;
      }
      const { droop, bump } = cycleEnds(live.study);
      at += way * (bump - droop) * share;
      // It stops dead at the first limit, and turns.
      if (at >= bump) way = -1;
      if (at <= droop) way = 1;
      at = Math.min(bump, Math.max(droop, at));
      carryTravel(at === bump || at === droop || !isStill ? at : snapped(at, units));
    };
    if (isStill) {
      const timer = setInterval(() => advance(1 / 6), 1000);
      return () => clearInterval(timer);
    }
    const tick = (now: number): void => {
      advance(Math.min(0.05, (now - before) / SWEEP));
      before = now;
      frame = requestAnimationFrame(tick);
    };
    frame = requestAnimationFrame(tick);
    return () => cancelAnimationFrame(frame);
  }, [isCycling]);
}
