import type { Sheet } from "@armwright/drawing";
import type { Study } from "@armwright/engine";
import type { ComponentType } from "react";
import { createStore } from "zustand/vanilla";
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
}

/** What a step's own work lays over the large view while it is open; none as a rule. */
export const laidOver = createStore<{ readonly Over: ComponentType<OverProps> | null }>(() => ({ Over: null }));
