import type { Finding, UnitSystem } from "@armwright/engine";
import { applyOperations, type CarDocument, type Fault, type Operation } from "@armwright/engine/document";
import { createStore } from "zustand/vanilla";
import type { StepId } from "../steps/steps.ts";
import type { BenchState, Comparing, Held, Panel, ThemeChoice, ViewName } from "./bench-state.ts";
import { type Live, NOT_READ, studied } from "./live-study.ts";
import { inverseOf, merged } from "./operations.ts";
import { keepPreferences, keepSheetRoom, keptPreferences, keptSheetRoom } from "./preferences.ts";
import type { Side } from "./sides.ts";
import { clampTravel } from "./travel.ts";
import { doAgain, NOTHING_DONE, recorded, takeBack } from "./undo.ts";

/** Where edits go when a movement of the hand has ended: a file, the browser's storage, another screen. */
export type Send = (operations: readonly Operation[], document: CarDocument) => void;

export const bench = createStore<BenchState>(() => ({
  document: null,
  unreadable: [],
  live: NOT_READ,
  travel: 0,
  held: null,
  view: "rear",
  side: "left",
  isScene: false,
  undoing: NOTHING_DONE,
  moving: null,
  comparing: null,
  panel: null,
  said: "",
  takeNewer: null,
  isCycling: false,
  spot: null,
  pickedCharts: null,
  isSheetRoomy: keptSheetRoom(),
  ...keptPreferences(),
}));

let send: Send = () => undefined;
/** Says where finished edits are sent. */
export const sendEditsTo = (to: Send): void => {
  send = to;
};

const { getState: now, setState: set } = bench;

/** The document studied for the side that is shown. */
const studyOf = (document: CarDocument, before: Live, hand: "moving" | "at rest" = "at rest"): Live =>
  studied(document, before, hand, now().side);

/** Puts another car on the bench; what could be undone belonged to the one before. */
export function showCar(document: CarDocument): void {
  set({ side: "left" });
  set({
    document,
    unreadable: [],
    live: studyOf(document, NOT_READ),
    travel: 0,
    held: null,
    moving: null,
    undoing: NOTHING_DONE,
    comparing: null,
    isCycling: false,
    spot: null,
  });
  keepPreferences({ units: now().units, theme: now().theme, step: now().step });
}

/**
 * A file that cannot be read as a document: its faults are shown. The last state of the same car stays, marked as older;
 * of another car that was on the bench before nothing does.
 */
export function showUnreadable(faults: readonly Fault[], whose: "the same car" | "another car"): void {
  const { live } = now();
  set({ unreadable: faults, document: null, moving: null });
  if (whose === "the same car") set({ live: { ...live, faults: [], isOlder: live.study !== null } });
  else
    set({
      live: NOT_READ,
      travel: 0,
      held: null,
      undoing: NOTHING_DONE,
      comparing: null,
      isCycling: false,
      spot: null,
    });
}

/** The same car, changed elsewhere: another screen, another program. A movement of this hand goes on on top of it. */
export function showChangedElsewhere(document: CarDocument): void {
  const { live, moving } = now();
  const shown = moving ? applyOperations(document, moving.operations) : document;
  set({
    document: shown,
    unreadable: [],
    live: studyOf(shown, live),
    ...(moving && { moving: { ...moving, from: document } }),
  });
}

/** Begins a movement of the hand. */
export function beginMove(words: string): void {
  const { document } = now();
  if (document) set({ moving: { words, from: document, operations: [] }, isCycling: false });
}

/** Shows the edits of the movement so far; only the last ones count. */
export function move(operations: readonly Operation[], words?: string): void {
  const { moving, live, travel } = now();
  if (!moving) return;
  const document = applyOperations(moving.from, operations);
  const next = studyOf(document, live, "moving");
  set({
    document,
    live: next,
    travel: clampTravel(travel, next.study),
    moving: { ...moving, words: words ?? moving.words, operations },
  });
}

/** Ends the movement: it is recorded, said and sent. */
export function endMove(): void {
  const { moving, document, undoing, live } = now();
  if (!moving || !document) return;
  if (moving.operations.length === 0) {
    set({ moving: null });
    return;
  }
  const forth = merged(moving.operations);
  const gesture = { words: moving.words, forth, back: inverseOf(moving.from, forth) };
  set({ moving: null, live: studyOf(document, live), undoing: recorded(undoing, gesture), said: moving.words });
  send(forth, document);
}

/** Gives the movement up: everything is as before it. */
export function giveUpMove(): void {
  const { moving, live } = now();
  if (!moving) return;
  set({ moving: null, document: moving.from, live: studyOf(moving.from, live), said: "given up" });
}

/** A movement that is over at once: a typed field, a pressed step. */
export function edit(operations: readonly Operation[], words: string): void {
  if (now().moving) endMove();
  beginMove(words);
  move(operations);
  endMove();
}

export function undo(): void {
  const taken = takeBack(now().undoing);
  if (taken) replay(taken.gesture.back, `undone: ${taken.gesture.words}`, taken.left);
}

export function redo(): void {
  const taken = doAgain(now().undoing);
  if (taken) replay(taken.gesture.forth, `done again: ${taken.gesture.words}`, taken.left);
}

function replay(operations: readonly Operation[], said: string, undoing: BenchState["undoing"]): void {
  const { document, live, travel } = now();
  if (!document) return;
  const next = applyOperations(document, operations);
  const nextLive = studyOf(next, live);
  set({ document: next, live: nextLive, travel: clampTravel(travel, nextLive.study), undoing, said });
  send(operations, next);
}

/** Shows the other side; of a car that is alike on both it stays the left one. */
export function setSide(side: Side): void {
  const { document, live, travel } = now();
  if (now().moving) endMove();
  const has = document?.right !== undefined && side === "right";
  set({ side: has ? "right" : "left", held: null, spot: null });
  if (!document) return;
  const next = studyOf(document, live);
  set({ live: next, travel: clampTravel(travel, next.study), said: `the ${now().side} side` });
}

export const setTravel = (travel: number): void =>
  set((state) => ({ travel: clampTravel(travel, state.live.study), isCycling: false }));
/** As `setTravel`, but a cycle that is running goes on. */
export const carryTravel = (travel: number): void =>
  set((state) => ({ travel: clampTravel(travel, state.live.study) }));
export const setCycling = (isCycling: boolean): void => set({ isCycling });
export const hold = (held: Held | null): void => set({ held });
export const showPanel = (panel: Panel | null): void => set({ panel });
/** Marks the spot of a finding in the drawing; none where it is not at one spot. */
export const showFinding = (finding: Finding): void => set({ spot: finding.at ?? null });
export const setView = (view: ViewName): void => set({ view, isScene: false });
export const showScene = (isScene: boolean): void => set({ isScene });
export const offerNewer = (takeNewer: () => void): void => set({ takeNewer });
export const say = (said: string): void => set({ said });
export const compareWith = (comparing: Comparing | null): void => set({ comparing });
export const pickCharts = (pickedCharts: readonly string[] | null): void => set({ pickedCharts });

export function chooseStep(step: StepId): void {
  set({ step, held: null, spot: null, pickedCharts: null });
  keepPreferences({ units: now().units, theme: now().theme, step });
}

export function giveSheetRoom(isSheetRoomy: boolean): void {
  set({ isSheetRoomy });
  keepSheetRoom(isSheetRoomy);
}

export function setUnits(units: UnitSystem): void {
  set({ units });
  keepPreferences({ units, theme: now().theme, step: now().step });
}

export function setTheme(theme: ThemeChoice): void {
  set({ theme });
  keepPreferences({ units: now().units, theme, step: now().step });
}
