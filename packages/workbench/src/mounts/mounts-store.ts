import {
  COMMON_REQUIREMENTS,
  COMMON_RESERVE,
  type MountRequest,
  type MountRequirements,
  type Opening,
  OWN_SHOCK,
  type ShockOption,
  type ShockShelf,
} from "@armwright/engine";
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { Judgement } from "./judge-job.ts";
import { keptShelf } from "./kept-shelf.ts";
import type { Zones } from "./zone.ts";

/** What the finder is asked, apart from what the car itself gives. */
export interface Wishes {
  /** Names on the shelf, `OWN_SHOCK` for the car's own. */
  readonly chosen: readonly string[];
  readonly zones: Zones | null;
  /** m; null: between the car's own stops. */
  readonly travel: MountRequest["travel"] | null;
  readonly reserve: MountRequest["reserve"];
  readonly requirements: MountRequirements;
  /** Of the grid, m. */
  readonly step: number;
}

/** How far a search has come, 0…1; none while nothing is looked for. */
export interface Running {
  readonly what: "coarse" | "whole" | "openings";
  readonly done: number;
}

export interface MountsBench extends Wishes {
  readonly isOpen: boolean;
  /** Which car the zones were drawn for: its file and kind of linkage. */
  readonly madeFor: string;
  readonly shelf: ShockShelf | null;
  /** What is wrong with a file of shocks, in words. */
  readonly shelfTrouble: string;
  /** Shocks that a change asked for, beside the shelf: not yet owned. */
  readonly wanted: readonly ShockOption[];
  readonly running: Running | null;
  /** The answer to the last search, and whether it was on the coarse grid. */
  readonly found: Judgement | null;
  readonly isCoarse: boolean;
  readonly trouble: string;
  readonly openings: readonly Opening[] | null;
  /** Place in the short list that is looked at; and whether it is laid over the drawing. */
  readonly looked: number;
  readonly isTried: boolean;
  /** Grip of a zone in the hand. */
  readonly held: string | null;
  readonly isDragging: boolean;
}

const INCH = 0.0254;
export const STEPS_OF_GRID = [1, 0.5, 0.25].map((inches) => inches * INCH);

export const FIRST_WISHES: Wishes = {
  chosen: [OWN_SHOCK],
  zones: null,
  travel: null,
  reserve: COMMON_RESERVE,
  requirements: COMMON_REQUIREMENTS,
  step: 0.5 * INCH,
};

const NOTHING_FOUND = {
  running: null,
  found: null,
  isCoarse: false,
  trouble: "",
  openings: null,
  looked: 0,
  isTried: false,
  held: null,
  isDragging: false,
} as const;

export const mountsBench = createStore<MountsBench>(() => ({
  ...FIRST_WISHES,
  ...NOTHING_FOUND,
  isOpen: false,
  madeFor: "",
  shelf: keptShelf(),
  shelfTrouble: "",
  wanted: [],
}));

export const useMounts = <T>(part: (state: MountsBench) => T): T => useStore(mountsBench, part);

const { setState: set } = mountsBench;

export const openFinder = (isOpen: boolean): void => set(isOpen ? { isOpen } : { isOpen, ...NOTHING_FOUND });

/** Begins anew for another car: with what was asked when it was last looked at, or with zones drawn for it. */
export const beginFor = (madeFor: string, wishes: Partial<Wishes> & { readonly zones: Zones }): void =>
  set(({ chosen }) => ({ ...FIRST_WISHES, ...NOTHING_FOUND, chosen, madeFor, wanted: [], ...wishes }));

export const wish = (wishes: Partial<Wishes>): void => set(wishes);

export const look = (looked: number): void => set({ looked });
export const tryIt = (isTried: boolean): void => set({ isTried });
export const holdZone = (held: string | null): void => set({ held });

/** The place that is laid over the drawing; undefined where none is. */
export const triedOf = ({ found, looked, isTried, isOpen }: MountsBench): Judgement["best"][number] | undefined =>
  isOpen && isTried ? found?.best[looked] : undefined;
