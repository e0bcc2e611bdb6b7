import { positionOf, type Study, solveAt } from "@armwright/engine";
import { polyline, shift, spot } from "./path.ts";
import type { Primitive, Sheet, Spot } from "./primitive.ts";
import { line } from "./sketch.ts";
import { heightOf, isOnTape, type TapeScale } from "./tape/scale.ts";
import { viewFromBehind } from "./view.ts";

/**
 * Dotted lines that carry the tape's heights of the two stops to the wheel centres in the view from behind. `at` is where
 * that view's sheet stands on the sheet of the tape. They leave the blade past the stops' blocks.
 */
export function constructionLines(study: Study, scale: TapeScale, rear: Sheet, at: Spot): readonly Primitive[] {
  const view = viewFromBehind(rear);
  return (["bump", "droop"] as const).flatMap((direction): Primitive[] => {
    const { travel } = study.travel[direction].stop;
    const solved = solveAt(study.corner, travel);
    if (!solved || !isOnTape(scale, travel)) return [];
    const centre = view.at(positionOf(study.corner, solved.state).wheelCentre);
    const target = shift(centre, at.x, at.y);
    const from = spot(scale.blade.x + scale.blade.width + 12 * scale.pen, heightOf(scale, travel));
    const elbow = spot(at.x + 4 * scale.pen, target.y);
    return [
      line("construction", polyline([from, elbow, target]), {
        ink: "pencil",
        weight: "thin",
        dash: "construction",
        meaning: `stops.${direction}`,
      }),
    ];
  });
}
