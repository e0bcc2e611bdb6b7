import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";

/** Which load case the arm's picture shows; null: that of the weakest place. */
export interface StrengthState {
  readonly chosen: string | null;
}

export const strengthBench = createStore<StrengthState>(() => ({ chosen: null }));

export const useStrength = <T>(part: (state: StrengthState) => T): T => useStore(strengthBench, part);

export const showCase = (chosen: string): void => strengthBench.setState({ chosen });
