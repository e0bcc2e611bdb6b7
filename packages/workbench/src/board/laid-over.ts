import type { Box, Sheet } from "@armwright/drawing";
import type { Study } from "@armwright/engine";
import type { ComponentType } from "react";
import { createStore } from "zustand/vanilla";
import type { ShowOptions } from "../scene/types.ts";
import type { ViewName } from "../store/bench-state.ts";
import type { Solved } from "../store/position.ts";
import type { Size } from "./use-size.ts";

/** What is known of the view under it. */
export interface OverProps {
  readonly view: ViewName;
  readonly sheet: Sheet;
  readonly size: Size;
  readonly study: Study;
  readonly solved: Solved;
  /** Where other views lie over it: no words go there. */
  readonly covered?: Box;
}

/** What a step's own work adds to the car in space, found anew for every position. */
export type InSpace = (
  study: Study,
  solved: Solved,
) => Pick<ShowOptions, "forces" | "groundZ" | "armFrame" | "moreGrips">;

/** What a step's own work lays over the large view, and adds to the car in space, while it is open; none as a rule. */
export const laidOver = createStore<{
  readonly Over: ComponentType<OverProps> | null;
  readonly inSpace: InSpace | null;
}>(() => ({ Over: null, inSpace: null }));
