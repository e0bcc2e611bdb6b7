import type { Car } from "../../packages/engine/dist/car/car.js";

/** The hook for the whole study: once this is the engine's `study`, the benchmark times it too. */
export const wholeStudy: ((car: Car) => unknown) | null = null;
