import type { UnitSystem } from "../../car/car.ts";
import { formatLength } from "../../units/format.ts";
import type { PointDocument, Typed } from "../schema.ts";

/** Types lengths given in inches as a builder of that unit system would: on a sixteenth, or on a whole millimetre. */
export interface Typist {
  readonly system: UnitSystem;
  readonly size: (inches: number) => Typed;
  readonly at: (x: number, y: number, z: number) => PointDocument;
}

export function typist(system: UnitSystem): Typist {
  const size = (inches: number): Typed => {
    if (system === "metric") return Math.round(inches * 25.4);
    return Number.isInteger(inches) ? inches : formatLength(inches * 0.0254, "inch-pound");
  };
  return { system, size, at: (x, y, z) => ({ x: size(x), y: size(y), z: size(z) }) };
}
