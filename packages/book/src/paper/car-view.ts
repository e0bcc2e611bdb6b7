import {
  type Drawing,
  type Sheet as DrawingSheet,
  drawLeft,
  drawRear,
  drawTop,
  fitLeft,
  fitRear,
  fitTop,
} from "@armwright/drawing";
import type { Position, Study } from "@armwright/engine";
import { PEN } from "./leaf.ts";
import { atNamedScale } from "./true-scale.ts";

export type ViewName = "rear" | "top" | "left";

const FITS = { rear: fitRear, top: fitTop, left: fitLeft } as const;
const DRAWS = { rear: drawRear, top: drawTop, left: drawLeft } as const;

/** The corner in one view, as on the screen, at a scale that can be named: 1 to `ratio`. Width and height in mm. */
export function carView(
  study: Study,
  position: Position,
  name: ViewName,
  width: number,
  height: number,
): { readonly drawing: Drawing; readonly ratio: number } {
  const fitted: DrawingSheet = FITS[name](study, width, height, PEN);
  const { sheet, ratio } = atNamedScale(fitted);
  return { drawing: DRAWS[name](study, position, sheet, { ghosts: name === "rear", detail: "full" }), ratio };
}
