import { type CarDocument, parsePath, valueAt } from "@armwright/engine/document";
import type { Live } from "../store/live-study.ts";
import { guessedPoints } from "./guessed-points.ts";
import { stepOfPlace } from "./step-of-place.ts";
import type { Step, StepId } from "./steps.ts";

export type StepShape = "done" | "again" | "bench" | "begun" | "open";

export interface StepState {
  readonly shape: StepShape;
  /** Always written beside the shape. */
  readonly word: string;
  /** Findings that wait: those that must be mended or minded, and faults of entry. */
  readonly waiting: number;
}

/** Places without which a step has nothing to say yet. */
const NEEDS: Partial<Record<StepId, readonly string[]>> = {
  survey: ["survey"],
  loads: ["weights.corner"],
  strength: ["strength"],
  "as-built": ["asBuilt"],
  driveshaft: ["driveshaft"],
  travel: ["strap", "bumpStop"],
  shock: ["shock"],
  springs: ["shock.springs"],
  room: ["underbody", "keepOuts"],
};

export function stepState(step: Step, document: CarDocument | null, live: Live, isChosen: boolean): StepState {
  if (!document) return { shape: isChosen ? "bench" : "open", word: isChosen ? "on the bench" : "open", waiting: 0 };
  // The check looks at the whole car: nothing is sound while an entry anywhere cannot be read.
  const faults = live.faults.filter(({ path }) => step.id === "check" || stepOfPlace(path) === step.id).length;
  const findings = (live.study?.findings ?? []).filter(
    ({ gravity, place }) => gravity !== "note" && (step.id === "check" || stepOfPlace(place) === step.id),
  ).length;
  const waiting = faults + (live.isOlder ? 0 : findings);
  if (isChosen) return { shape: "bench", word: waiting > 0 ? `on the bench, ${waiting}` : "on the bench", waiting };
  if (faults > 0)
    return { shape: "again", word: faults === 1 ? "1 entry to mend" : `${faults} entries to mend`, waiting };
  if (waiting > 0) return { shape: "again", word: `look again, ${waiting}`, waiting };
  if (step.id === "check" && live.study === null) return { shape: "open", word: "open", waiting };
  // Paper and landings are never done: they are made anew whenever the car has changed.
  if (step.id === "book" || step.id === "landing") return { shape: "open", word: "at any time", waiting };
  const needs = NEEDS[step.id] ?? [];
  const absent = needs.filter((place) => valueAt(document, parsePath(place) ?? []) === undefined);
  if (needs.length > 0 && absent.length === needs.length) return { shape: "open", word: "open", waiting };
  const guessed = guessedPoints(step.id, document);
  if (guessed > 0) return { shape: "begun", word: `${guessed} to measure`, waiting };
  const assumed = (live.car?.assumed ?? []).filter(({ path }) => stepOfPlace(path) === step.id).length;
  if (absent.length > 0) return { shape: "begun", word: "begun", waiting };
  if (assumed > 0 && step.id !== "check") return { shape: "done", word: `done, ${assumed} assumed`, waiting };
  return { shape: "done", word: "done", waiting };
}
