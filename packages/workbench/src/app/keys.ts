import { useEffect } from "react";
import { STEPS, type StepId } from "../steps/steps.ts";
import {
  bench,
  carryTravel,
  chooseStep,
  giveUpMove,
  redo,
  setCycling,
  setTravel,
  setUnits,
  setView,
  showPanel,
  showScene,
  undo,
} from "../store/bench.ts";
import { cycleEnds } from "../store/travel.ts";
import { bigStepOf, stepOf } from "../words/shown.ts";

/** Keys that work wherever no field has the keyboard; the `?` panel lists them. */
export const KEYS: readonly (readonly [string, string])[] = [
  ["↑ ↓", "move the wheel by a sixteenth, or a millimetre"],
  ["Shift ↑ ↓", "move it by an inch, or ten millimetres"],
  ["Home, End", "to full bump, to full droop"],
  ["0", "to ride height"],
  ["Space", "cycle the wheel; again to stop"],
  ["Alt 1 to 9, 0", "choose a step, also out of a field; 0 is the tenth"],
  ["Alt Shift 1 to 5", "choose the eleventh to the fifteenth step"],
  ["Alt ↑ ↓", "the step before, the step after"],
  ["c", "choose charts"],
  ["r, t, l", "from behind, from above, from the left"],
  ["3", "the car in space, and back to the drawing"],
  ["u", "inches or millimetres"],
  ["Ctrl Z, Ctrl Y", "undo, redo"],
  ["Tab", "to the points of the drawing; arrows move them, Shift by more"],
  ["Esc", "let go of what is in the hand"],
  ["?", "this list"],
];

export function useKeys(): void {
  useEffect(() => {
    addEventListener("keydown", press);
    return () => removeEventListener("keydown", press);
  }, []);
}

function press(event: KeyboardEvent): void {
  const { target, key } = event;
  const isTyping = target instanceof HTMLElement && target.matches(TYPED_IN);
  const isPanel = bench.getState().panel !== null;
  if (
    (event.ctrlKey || event.metaKey) &&
    !event.altKey &&
    !(isTyping && (target as HTMLInputElement).value !== (target as HTMLInputElement).defaultValue)
  ) {
    if (key === "z" && !event.shiftKey) {
      done(event, undo);
      return;
    }
    if (key === "y" || (key.toLowerCase() === "z" && event.shiftKey)) {
      done(event, redo);
      return;
    }
  }
  if (event.altKey && !event.ctrlKey && !event.metaKey && !isPanel) {
    const step = stepOfKey(event);
    // A field gives up what was typed in it when it loses the keyboard.
    if (step) done(event, () => leaveFieldFor(step));
    return;
  }
  if (event.ctrlKey || event.metaKey || event.altKey || isTyping || isPanel) return;
  if (key === "Escape") {
    done(event, giveUpMove);
    return;
  }
  if (target instanceof Element && target.matches(CHOSEN) && (OWN.has(key) || key === " ")) return;
  // These the tape and a point in the drawing take for themselves; every other key works there too.
  if (OWN.has(key) && target instanceof Element && target.matches("[role=slider], [data-handle]")) return;
  const action = actionOf(event);
  if (action) done(event, action);
}

/**
 * Alt with a digit: by the key's place, since some keyboards write a sign with it; with Shift ten steps on. Alt with an
 * arrow: the step beside.
 */
function stepOfKey({ code, key, shiftKey }: KeyboardEvent): StepId | undefined {
  const digit = /^(?:Digit|Numpad)(\d)$/.exec(code)?.[1];
  if (digit !== undefined) return STEPS[((Number(digit) + 9) % 10) + (shiftKey ? 10 : 0)]?.id;
  const way = key === "ArrowDown" ? 1 : key === "ArrowUp" ? -1 : 0;
  const now = STEPS.findIndex(({ id }) => id === bench.getState().step);
  return way === 0 ? undefined : STEPS[now + way]?.id;
}

function leaveFieldFor(step: StepId): void {
  if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
  chooseStep(step);
}

/** Where letters and digits are typed, and what only arrows and the space bar change. */
const CHOSEN = "input[type=radio], input[type=checkbox]";
const TYPED_IN = "input:not([type=radio], [type=checkbox]), select, textarea, [contenteditable]";

const OWN: ReadonlySet<string> = new Set(["ArrowUp", "ArrowDown", "ArrowLeft", "ArrowRight", "Home", "End"]);

function actionOf({ key, shiftKey, target }: KeyboardEvent): (() => void) | undefined {
  switch (key) {
    case "ArrowUp":
    case "ArrowDown":
      return () => stepWheel(key === "ArrowUp" ? 1 : -1, shiftKey);
    case "Home":
      return () => toStop("bump");
    case "End":
      return () => toStop("droop");
    case "0":
      return () => setTravel(0);
    case " ":
      return target instanceof HTMLButtonElement ? undefined : () => setCycling(!bench.getState().isCycling);
    case "r":
      return () => setView("rear");
    case "t":
      return () => setView("top");
    case "l":
      return () => setView("left");
    case "c":
      return () => showPanel({ kind: "charts" });
    case "3":
      return () => showScene(!bench.getState().isScene);
    case "u":
      return () => setUnits(bench.getState().units === "metric" ? "inch-pound" : "metric");
    case "?":
      return () => showPanel({ kind: "keys" });
    default:
      return undefined;
  }
}

/** Moves the wheel by one step on the step's own grid. */
export function stepWheel(way: 1 | -1, isBig = false): void {
  const { travel, units } = bench.getState();
  const step = isBig ? bigStepOf(units) : stepOf(units);
  const fine = stepOf(units);
  setTravel(Math.round((travel + way * step) / fine) * fine);
}

export function toStop(direction: "bump" | "droop"): void {
  const { live } = bench.getState();
  if (live.study) carryTravel(cycleEnds(live.study)[direction]);
}

function done(event: KeyboardEvent, action: () => void): void {
  event.preventDefault();
  action();
}
