import { useEffect } from "react";
import { STILL } from "../app/use-media.ts";
import { bench, carryTravel, setCycling } from "../store/bench.ts";
import { endOf, valueAt } from "./at-time.ts";
import { landingBench, useLanding } from "./landing-store.ts";

/** With reduced motion the wheel jumps so many times through the whole event, once a second. */
const JUMPS = 12;

/** Brings history and wheel to a time; the same wheel that the hand moves. */
export function showTime(time: number): void {
  const { made } = landingBench.getState();
  if (!made) return;
  const { history } = made.answer.landing;
  const at = Math.min(endOf(history), Math.max(0, time));
  landingBench.setState({ time: at });
  if (bench.getState().isCycling) setCycling(false);
  carryTravel(valueAt(history, history.travel, at));
}

export function setPlaying(isPlaying: boolean): void {
  const { made, time } = landingBench.getState();
  if (!made) return;
  // At its end it begins anew.
  if (isPlaying && time >= endOf(made.answer.landing.history) - 1e-9) showTime(0);
  landingBench.setState({ isPlaying });
}

/** Plays the landing while the store says so: real time by the pace, and stands still as soon as the hand takes the wheel. */
export function usePlayback(): void {
  const isPlaying = useLanding((state) => state.isPlaying);
  useEffect(() => {
    if (!isPlaying) return;
    let shown: number | null = null;
    const advance = (seconds: number): void => {
      const { made, time } = landingBench.getState();
      const { isCycling, travel } = bench.getState();
      if (!made || isCycling || (shown !== null && travel !== shown)) {
        landingBench.setState({ isPlaying: false });
        return;
      }
      showTime(time + seconds);
      shown = bench.getState().travel;
      if (landingBench.getState().time >= endOf(made.answer.landing.history))
        landingBench.setState({ isPlaying: false });
    };
    if (matchMedia(STILL).matches) {
      const whole = endOf(landingBench.getState().made!.answer.landing.history);
      const timer = setInterval(() => advance(whole / JUMPS), 1000);
      return () => clearInterval(timer);
    }
    let before = performance.now();
    let frame = 0;
    const tick = (now: number): void => {
      advance((Math.min(100, now - before) / 1000) * landingBench.getState().pace);
      before = now;
      frame = requestAnimationFrame(tick);
    };
    frame = requestAnimationFrame(tick);
    return () => cancelAnimationFrame(frame);
  }, [isPlaying]);
}
