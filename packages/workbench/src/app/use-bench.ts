import { useStore } from "zustand";
import { bench } from "../store/bench.ts";
import type { BenchState } from "../store/bench-state.ts";

/** A part of the bench's state; the component renders again only when that part changes. */
export const useBench = <T>(part: (state: BenchState) => T): T => useStore(bench, part);
