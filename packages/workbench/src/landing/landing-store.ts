import type { LandingEvent, Study } from "@armwright/engine";
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { LandingAnswer, LandingStage } from "./landing-job.ts";

export type EventKind = LandingEvent["kind"];

/** A landing that was made, and of what. */
export interface Made {
  readonly answer: LandingAnswer;
  readonly event: LandingEvent;
  readonly title: string;
  /** The car that it was made of: another one since makes it old. */
  readonly study: Study;
}

export interface LandingState {
  readonly kind: EventKind;
  /** What was typed for the event, by field; what is not typed has its usual value. */
  readonly typed: Readonly<Record<string, string>>;
  readonly oneWheel: boolean;
  /** What a landing under way is doing; null: none is. */
  readonly stage: LandingStage | null;
  /** What came of it in words, where it is not a landing. */
  readonly says: string;
  readonly made: Made | null;
  /** Of the history that is shown, s. */
  readonly time: number;
  readonly isPlaying: boolean;
  /** Seconds of the landing a second. */
  readonly pace: number;
}

export const landingBench = createStore<LandingState>(() => ({
  kind: "drop",
  typed: {},
  oneWheel: false,
  stage: null,
  says: "",
  made: null,
  time: 0,
  isPlaying: false,
  pace: 0.25,
}));

export const useLanding = <T>(part: (state: LandingState) => T): T => useStore(landingBench, part);
