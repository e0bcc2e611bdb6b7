import {
  type Box,
  drawLeft,
  drawRear,
  drawTop,
  fitLeft,
  fitRear,
  fitTop,
  gapsFromStudy,
  type Primitive,
  type Sheet,
} from "@armwright/drawing";
import type { Study } from "@armwright/engine";
import { type ReactNode, useMemo } from "react";
import { useStore } from "zustand";
import { useBench } from "../app/use-bench.ts";
import { meshGapsNow, useMesh } from "../mesh/mesh-store.ts";
import type { ViewName } from "../store/bench-state.ts";
import type { Solved } from "../store/position.ts";
import { cornerPlace } from "../store/sides.ts";
import { clearOf } from "./clear-of.ts";
import { DrawingView } from "./DrawingView.tsx";
import { laidOver } from "./laid-over.ts";
import { footOf, placeRear, placeView } from "./place-views.ts";
import { shownIn } from "./shown-in.ts";
import { spotMark } from "./spot-mark.ts";
import type { Size } from "./use-size.ts";
import { useStanding } from "./use-standing.ts";

interface Props {
  readonly view: ViewName;
  readonly study: Study;
  readonly solved: Solved;
  readonly size: Size;
  /** Height at which the wheel centre stands at ride, px: the tape's zero. */
  readonly zero: number | null;
  readonly isBig: boolean;
  /** Without dimensions and notes, where there is no room for them. */
  readonly isBare?: boolean;
  readonly label: string;
  /** Where something is laid over the view: no words run under it. */
  readonly covered?: Box;
}

/** One view of the car at the present travel. */
export function View({ view, study, solved, size, zero, isBig, isBare = false, label, covered }: Props): ReactNode {
  const units = useBench((state) => state.units);
  const isMirrored = useBench(({ side }) => side === "right");
  const held = useBench((state) => state.held?.place);
  const spot = useBench((state) => state.spot);
  const measured = useMesh((state) => state.measured);
  const sheet = useStanding(study, `${view} ${size.width} ${size.height} ${isBig ? zero : ""} ${isBare}`, () =>
    sheetOf(view, study, size, isBig ? zero : null, isBare),
  );
  const inSpace = useStore(laidOver, (state) => state.inSpace);
  const groundZ = inSpace?.(study, solved).groundZ;
  const drawing = useMemo(() => {
    const shown = shownIn(study, units);
    const over: readonly Primitive[] = spot ? spotMark(view, spot, sheet) : [];
    const bare = isBare || groundZ !== undefined ? { dimensions: false, notes: false, title: false } : {};
    const options = {
      ...bare,
      ...(held !== undefined && { held: heldPart(held) }),
      ...(groundZ !== undefined && { groundZ }),
      over,
      isMirrored,
      gaps: [...gapsFromStudy(study, solved.position), ...meshGapsNow(measured, solved.travel)],
      detail: isBig ? ("full" as const) : ("small" as const),
    };
    if (view === "top") return drawTop(shown, solved.position, sheet, options);
    if (view === "left") return drawLeft(shown, solved.position, sheet, options);
    return drawRear(
      shown,
      solved.position,
      sheet,
      isBig ? options : { ...options, ghosts: false, dimensions: false, notes: false },
    );
  }, [view, study, solved, sheet, units, held, spot, measured, isBig, isBare, groundZ, isMirrored]);
  const clear = useMemo(
    () => (covered ? { ...drawing, parts: clearOf(drawing.parts, covered) } : drawing),
    [drawing, covered],
  );
  const Over = useStore(laidOver, (state) => state.Over);
  return (
    <>
      <DrawingView drawing={clear} size={size} view={view} label={label} canGrab={isBig} />
      {isBig && Over && (
        <Over view={view} sheet={sheet} size={size} study={study} solved={solved} {...(covered && { covered })} />
      )}
    </>
  );
}

function sheetOf(view: ViewName, study: Study, { width, height }: Size, zero: number | null, isBare: boolean): Sheet {
  // A small view from behind is drawn large and shown small: its signs are made for a large one.
  if (view === "rear" && zero === null && !isBare) return fitRear(study, width * SHRINK, height * SHRINK);
  if (isBare) return placeView(view, study, { width, height });
  if (view === "top") return fitTop(study, width, height);
  if (view === "left") return fitLeft(study, width, height);
  return placeRear(study, { width, height }, zero ?? height / 2, footOf(height));
}

const SHRINK = 2.2;

/** A field of a part stands for the part: the strap is drawn as held while its length is typed. */
const heldPart = (given: string): string => {
  const place = cornerPlace(given);
  if (place.startsWith("stops.")) return place;
  return place.replace(/\.(length|shortest|longest|diameter|reach|solid|angleLimit|x|y|z|on)$/, "");
};
