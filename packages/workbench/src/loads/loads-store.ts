import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";

/** Which load case is looked at; null: the first of the table. */
export interface LoadsState {
  readonly chosen: string | null;
}

export const loadsBench = createStore<LoadsState>(() => ({ chosen: null }));

export const useLoads = <T>(part: (state: LoadsState) => T): T => useStore(loadsBench, part);

export const chooseCase = (chosen: string): void => loadsBench.setState({ chosen });
