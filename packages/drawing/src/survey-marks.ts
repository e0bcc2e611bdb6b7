import { positionOf, type Study, solveAt } from "@armwright/engine";
import { drawLeft } from "./draw-left.ts";
import { drawRear } from "./draw-rear.ts";
import { drawTop } from "./draw-top.ts";
import { faded } from "./faded.ts";
import { circle, spot } from "./path.ts";
import type { Primitive, Sheet, Spot } from "./primitive.ts";
import { area, patch, stroke } from "./sketch.ts";
import { type View, viewFromAbove, viewFromBehind, viewFromLeft } from "./view.ts";

export const VIEWS = {
  "from behind": viewFromBehind,
  "from above": viewFromAbove,
  "from the left": viewFromLeft,
} as const;

/** The car in pencil, where there is one: at ride height, or with the wheel where it is said to be. */
export function carBehind(study: Study | null, name: View["name"], sheet: Sheet, travel = 0): Primitive[] {
  const solved = study && solveAt(study.corner, travel);
  if (!study || !solved) return [];
  const position = positionOf(study.corner, solved.state);
  const options = { ghosts: false, dimensions: false, notes: false, title: false, detail: "full" } as const;
  const draw = { "from behind": drawRear, "from above": drawTop, "from the left": drawLeft }[name];
  return faded(draw(study, position, sheet, options).parts);
}

/** A point that is only there. */
export const cross = ({ x, y }: Spot, half: number): Primitive[] => [
  stroke("survey", spot(x - half, y), spot(x + half, y), { ink: "ink-2", weight: "thin" }),
  stroke("survey", spot(x, y - half), spot(x, y + half), { ink: "ink-2", weight: "thin" }),
];

/** A point in hand. */
export const ringed = (at: Spot, pen: number): Primitive[] => [
  area("survey", circle(at, 7 * pen), { ink: "hold", weight: "visible" }),
  patch("survey", circle(at, 2.4 * pen), { fill: "hold" }),
];
