import type { Drawing, Handle } from "@armwright/drawing";
import type { Study } from "@armwright/engine";
import { type KeyboardEvent, memo, type PointerEvent, type ReactNode, useLayoutEffect, useRef } from "react";
import { useBench } from "../app/use-bench.ts";
import { beginMove, bench, edit, endMove, giveUpMove, hold, move, setTravel } from "../store/bench.ts";
import type { ViewName } from "../store/bench-state.ts";
import { type Solved, solvedAt } from "../store/position.ts";
import { cornerPlace, placeOnSide } from "../store/sides.ts";
import { bigStepOf, stepOf } from "../words/shown.ts";
import { type Grip, gripOf, inCar, locked, moveBy } from "./handle-drag.ts";
import { oncePerFrame } from "./once-per-frame.ts";
import { paint } from "./paint.ts";
import type { Size } from "./use-size.ts";

interface Props {
  readonly drawing: Drawing;
  /** On the page, px; the drawing is fitted to it. */
  readonly size: Size;
  readonly view: ViewName;
  readonly label: string;
  /** Handles can be grabbed; a small view beside the drawing is only looked at. */
  readonly canGrab: boolean;
}

/** A finger covers this much; the nearest handle within it is taken, px. */
const REACH = 24;

/** One view of the car: painted from its primitives, its points to be grabbed by mouse, finger or keys. */
export function DrawingView({ drawing, size, view, label, canGrab }: Props): ReactNode {
  const ink = useRef<SVGGElement>(null);
  const grip = useRef<{
    readonly grip: Grip | "travel";
    readonly x: number;
    readonly y: number;
    readonly travel: number;
  } | null>(null);
  const { sheet } = drawing;
  useLayoutEffect(() => {
    if (ink.current) paint(ink.current, drawing.parts, sheet.pen);
  }, [drawing, sheet.pen]);

  const take = (event: PointerEvent<SVGSVGElement>): void => {
    const at = onSheet(event);
    const handle = nearest(drawing.handles, at);
    const { document, units } = bench.getState();
    const now = shownNow();
    if (!handle || !document || !now || event.button !== 0) return;
    const { study, solved } = now;
    const taken =
      handle.path === "travel"
        ? "travel"
        : gripOf(handle.path, document, study, solved.position, bench.getState().side);
    if (!taken) return;
    event.preventDefault();
    event.currentTarget.setPointerCapture(event.pointerId);
    grip.current = { grip: taken, x: at.x, y: at.y, travel: solved.travel };
    if (taken === "travel") return;
    holdPoint(handle.path);
    beginMove(`${handle.label} moved`);
    bench.setState({ said: `${handle.label} in hand, ${units === "metric" ? "snaps to 1 mm" : "snaps to 1/16 in"}` });
  };
  const drag = (event: PointerEvent<SVGSVGElement>): void => {
    const taken = grip.current;
    if (!taken) return;
    const at = onSheet(event);
    const isLocked = event.shiftKey;
    oncePerFrame(() => {
      const right = (at.x - taken.x) / sheet.scale;
      const down = (at.y - taken.y) / sheet.scale;
      if (taken.grip === "travel") setTravel(taken.travel - down);
      else
        move(
          moveBy(
            taken.grip,
            inCar(view, ...(isLocked ? locked(right, down) : ([right, down] as const))),
            bench.getState().units,
          ),
        );
    });
  };
  const letGo = (): void => {
    if (!grip.current) return;
    const { grip: held } = grip.current;
    grip.current = null;
    oncePerFrame.now();
    if (held !== "travel") endMove();
  };

  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing is no set of fields.
    <svg
      className="drawing"
      width={size.width}
      height={size.height}
      viewBox={`0 0 ${sheet.width} ${sheet.height}`}
      onPointerDown={canGrab ? take : undefined}
      onPointerMove={canGrab ? drag : undefined}
      onPointerUp={letGo}
      onPointerCancel={() => {
        grip.current = null;
        giveUpMove();
      }}
      role="group"
      aria-label={label}
    >
      {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in a painted drawing takes the keyboard. */}
      <g ref={ink} aria-hidden="true" />
      {canGrab &&
        drawing.handles.map((handle) => (
          <Grab key={handle.path} path={handle.path} label={handle.label} x={handle.at.x} y={handle.at.y} view={view} />
        ))}
    </svg>
  );
}

/** What the page shows at this moment; asked for when a hand or a key comes, so that nothing waits for it before. */
function shownNow(): { readonly study: Study; readonly solved: Solved } | null {
  const { live, travel } = bench.getState();
  const solved = live.study && solvedAt(live.study, travel);
  return live.study && solved ? { study: live.study, solved } : null;
}

interface GrabProps {
  readonly path: string;
  readonly label: string;
  readonly x: number;
  readonly y: number;
  readonly view: ViewName;
}

/** A handle as the keyboard and a screen reader know it. */
const Grab = memo(function Grab({ path, label, x, y, view }: GrabProps): ReactNode {
  const isHeld = useBench(({ held }) => held !== null && cornerPlace(held.place) === path);
  const press = (event: KeyboardEvent<SVGCircleElement>): void => {
    const way = ARROWS[event.key];
    if (event.key === "Escape") giveUpMove();
    if (!way) return;
    event.preventDefault();
    event.stopPropagation();
    const { document, units } = bench.getState();
    const now = shownNow();
    if (!now) return;
    const { study, solved } = now;
    const step = event.shiftKey ? bigStepOf(units) : stepOf(units);
    if (path === "travel") {
      setTravel(Math.round(solved.travel / stepOf(units)) * stepOf(units) - way[1] * step);
      return;
    }
    const grip = document && gripOf(path, document, study, solved.position, bench.getState().side);
    if (!grip) return;
    const operations = moveBy(grip, inCar(view, way[0] * step, way[1] * step), units);
    if (operations.length > 0) edit(operations, `${label} moved`);
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a button cannot stand in a drawing.
    <circle
      className={isHeld ? "grab is-held" : "grab"}
      cx={x}
      cy={y}
      r={12}
      tabIndex={0}
      role="button"
      aria-label={`${label}: arrow keys move it`}
      data-handle={path}
      onFocus={() => holdPoint(path)}
      onKeyDown={press}
    />
  );
});

function holdPoint(path: string): void {
  const { side, document } = bench.getState();
  hold({ place: placeOnSide(path, side, document), as: "point" });
}

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

function onSheet(event: PointerEvent<SVGSVGElement>): { readonly x: number; readonly y: number } {
  const box = event.currentTarget.getBoundingClientRect();
  return { x: event.clientX - box.left, y: event.clientY - box.top };
}

function nearest(handles: readonly Handle[], at: { readonly x: number; readonly y: number }): Handle | undefined {
  let best: Handle | undefined;
  let gap = REACH;
  for (const handle of handles) {
    const away = Math.hypot(handle.at.x - at.x, handle.at.y - at.y) + (handle.path === "travel" ? 6 : 0);
    if (away >= gap) continue;
    best = handle;
    gap = away;
  }
  return best;
}
