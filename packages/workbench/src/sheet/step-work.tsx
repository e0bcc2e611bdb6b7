import type { ComponentType, LazyExoticComponent } from "react";
import type { StepId } from "../steps/steps.ts";

/** What a step has beside fields and results: a search, a table, paper. Each is fetched when its step is first opened. */
export const STEP_WORK: Partial<Record<StepId, LazyExoticComponent<ComponentType>>> = {};
