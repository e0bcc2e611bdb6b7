import { drawLeft, drawRear, drawTop, fitLeft, fitRear, fitTop, type Primitive, type Sheet } from "@armwright/drawing";
import type { Study } from "@armwright/engine";
import { type ReactNode, useMemo } from "react";
import { useBench } from "../app/use-bench.ts";
import type { ViewName } from "../store/bench-state.ts";
import type { Solved } from "../store/position.ts";
import { DrawingView } from "./DrawingView.tsx";
import { placeRear } from "./place-views.ts";
import { shownIn } from "./shown-in.ts";
import { spotMark } from "./spot-mark.ts";
import type { Size } from "./use-size.ts";

interface Props {
  readonly view: ViewName;
  readonly study: Study;
  readonly solved: Solved;
  readonly size: Size;
  /** Height at which the wheel centre stands at ride, px: the tape's zero. */
  readonly zero: number | null;
  readonly isBig: boolean;
  readonly label: string;
}

/** One view of the car at the present travel. */
export function View({ view, study, solved, size, zero, isBig, label }: Props): ReactNode {
  const units = useBench((state) => state.units);
  const held = useBench((state) => state.held?.place);
  const spot = useBench((state) => state.spot);
  const sheet = useMemo(() => sheetOf(view, study, size, isBig ? zero : null), [view, study, size, zero, isBig]);
  const drawing = useMemo(() => {
    const shown = shownIn(study, units);
    const over: readonly Primitive[] = spot ? spotMark(view, spot, sheet) : [];
    const options = { ...(held !== undefined && { held: heldPart(held) }), over, detail: isBig ? ("full" as const) : ("small" as const) };
    if (view === "top") return drawTop(shown, solved.position, sheet, options);
    if (view === "left") return drawLeft(shown, solved.position, sheet, options);
    return drawRear(shown, solved.position, sheet, isBig ? options : { ...options, ghosts: false, dimensions: false, notes: false });
  }, [view, study, solved, sheet, units, held, spot, isBig]);
  return <DrawingView drawing={drawing} view={view} study={study} solved={solved} label={label} canGrab={isBig} />;
}

function sheetOf(view: ViewName, study: Study, { width, height }: Size, zero: number | null): Sheet {
  if (view === "top") return fitTop(study, width, height);
  if (view === "left") return fitLeft(study, width, height);
  return zero === null ? fitRear(study, width, height) : placeRear(study, { width, height }, zero);
}

/** A field of a part stands for the part: the strap is drawn as held while its length is typed. */
const heldPart = (place: string): string => {
  if (place.startsWith("stops.")) return place;
  return place.replace(/\.(length|shortest|longest|diameter|reach|solid|angleLimit|x|y|z|on)$/, "");
};
