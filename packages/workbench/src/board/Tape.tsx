import { type Box, drawTape, heightOf, tapeScale, travelAt } from "@armwright/drawing";
import type { Study, UnitSystem } from "@armwright/engine";
import {
  type KeyboardEvent,
  type PointerEvent,
  type ReactNode,
  type RefObject,
  useEffect,
  useLayoutEffect,
  useRef,
} from "react";
import { useBench } from "../app/use-bench.ts";
import { beginMove, bench, endMove, giveUpMove, hold, move, setTravel } from "../store/bench.ts";
import { cycleEnds } from "../store/travel.ts";
import { bigStepOf, snapped, stepOf, travelWords } from "../words/shown.ts";
import { oncePerFrame } from "./once-per-frame.ts";
import { paint } from "./paint.ts";
import { StopGrips } from "./StopGrips.tsx";
import { shownIn } from "./shown-in.ts";
import { stopAt } from "./stop-drag.ts";
import { useTapeRange } from "./use-tape-range.ts";

interface Props {
  readonly study: Study;
  readonly width: number;
  readonly height: number;
  /** Where the tape with its flags stands on the sheet; otherwise it fills it. */
  readonly rect?: Box;
  readonly bladeWidth?: number;
  readonly loupe: boolean;
  readonly words: boolean;
}

type Direction = "bump" | "droop";

/** A stop's block is taken within this of its edge, px; a finger covers more. */
const BLOCK = 16;
const FINGER_BLOCK = 24;

/** The travel tape: the wheel pulled along it by mouse, finger, wheel or keys; the chosen stops dragged on it. */
export function Tape({ study, width, height, rect: given, bladeWidth, loupe, words }: Props): ReactNode {
  const svg = useRef<SVGSVGElement>(null);
  const ink = useRef<SVGGElement>(null);
  const taken = useRef<Direction | "travel" | null>(null);
  const offset = useRef(0);
  const travel = useBench((state) => state.travel);
  const units = useBench((state) => state.units);
  const held = useBench((state) => state.held);
  const range = useTapeRange(study);
  const options = {
    loupe,
    words,
    range,
    ...(bladeWidth !== undefined && { bladeWidth }),
    ...(held && held.as !== "field" && { held: held.place }),
  };
  const rect = given ?? { x: 0, y: 0, width, height };
  const shown = shownIn(study, units);
  const scale = tapeScale(shown, rect, options);
  const drawing = drawTape(shown, travel, rect, options);
  useLayoutEffect(() => {
    if (ink.current) paint(ink.current, drawing.parts, drawing.sheet.pen);
  });

  const take = (event: PointerEvent<SVGSVGElement>): void => {
    if (event.button !== 0) return;
    const { x, y } = onTape(event);
    const stop = drawing.handles.find(
      ({ path, at }) =>
        path !== "travel" &&
        Math.abs(at.y - y) < (event.pointerType === "mouse" ? BLOCK : FINGER_BLOCK) &&
        x > scale.blade.x - 24 &&
        (loupe || x > scale.blade.x),
    );
    const isMarker = Math.abs(heightOf(scale, travel) - y) < BLOCK / 2 && x > scale.blade.x + scale.blade.width / 2;
    event.preventDefault();
    event.currentTarget.setPointerCapture(event.pointerId);
    event.currentTarget.focus({ preventScroll: true });
    if (stop && !isMarker) {
      const direction = stop.path === "stops.bump" ? "bump" : "droop";
      taken.current = direction;
      offset.current = heightOf(scale, study.travel[direction].stop.travel) - y;
      hold({ place: stop.path, as: "stop" });
      beginMove(`${stop.label} moved`);
      return;
    }
    taken.current = "travel";
    hold({ place: "travel", as: "stop" });
    setTravel(snapped(travelAt(scale, y), units));
  };
  const drag = (event: PointerEvent<SVGSVGElement>): void => {
    const what = taken.current;
    if (what === null) return;
    const { y } = onTape(event);
    oncePerFrame(() => {
      if (what === "travel") setTravel(snapped(travelAt(scale, y), units));
      else moveStop(what, snapped(travelAt(scale, y + offset.current), units));
    });
  };
  const letGo = (): void => {
    if (taken.current === null) return;
    oncePerFrame.now();
    if (taken.current !== "travel") endMove();
    taken.current = null;
    if (bench.getState().held?.place === "travel") hold(null);
  };
  useWheel(svg, units);

  return (
    <>
      <svg
        ref={svg}
        className="tape"
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: no input can carry a drawn tape.
        role="slider"
        tabIndex={0}
        aria-label="Wheel travel"
        aria-orientation="vertical"
        aria-valuemin={round(scale.lowest, units)}
        aria-valuemax={round(scale.highest, units)}
        aria-valuenow={round(travel, units)}
        aria-valuetext={travelWords(travel, units)}
        onPointerDown={take}
        onPointerMove={drag}
        onPointerUp={letGo}
        onPointerCancel={() => {
          if (taken.current !== "travel") giveUpMove();
          taken.current = null;
        }}
        onKeyDown={(event) => press(event, study, units)}
      >
        {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in a painted drawing takes the keyboard. */}
        <g ref={ink} aria-hidden="true" />
      </svg>
      <StopGrips study={study} scale={scale} />
    </>
  );
}

/** Moves a chosen stop as the car stood when it was taken: only the last place counts. */
function moveStop(direction: Direction, travel: number): void {
  const { moving, live, units } = bench.getState();
  if (!moving || !live.study) return;
  const change = stopAt(direction, travel, moving.from, live.study, units);
  if (change) move(change.operations, change.words);
}

function press(event: KeyboardEvent, study: Study, units: UnitSystem): void {
  const { travel } = bench.getState();
  const fine = stepOf(units);
  const step = event.shiftKey ? bigStepOf(units) : fine;
  const ends = cycleEnds(study);
  const to: Readonly<Record<string, number>> = {
    ArrowUp: snapped(travel + step, units),
    ArrowDown: snapped(travel - step, units),
    PageUp: snapped(travel + bigStepOf(units), units),
    PageDown: snapped(travel - bigStepOf(units), units),
    Home: ends.bump,
    End: ends.droop,
  };
  const target = to[event.key];
  if (target === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
  event.preventDefault();
  event.stopPropagation();
  setTravel(target);
}

/** A mouse wheel moves by steps; it must be allowed to keep the page from scrolling. */
function useWheel(svg: RefObject<SVGSVGElement | null>, units: UnitSystem): void {
  useEffect(() => {
    const element = svg.current;
    if (!element) return;
    const turn = (event: WheelEvent): void => {
      event.preventDefault();
      const step = (event.shiftKey ? bigStepOf(units) : 2 * stepOf(units)) * -Math.sign(event.deltaY || event.deltaX);
      setTravel(snapped(bench.getState().travel + step, units));
    };
    element.addEventListener("wheel", turn, { passive: false });
    return () => element.removeEventListener("wheel", turn);
  }, [svg, units]);
}

const round = (metres: number, units: UnitSystem): number =>
  Math.round((metres / (units === "metric" ? 0.001 : 0.0254)) * 1000) / 1000;

function onTape(event: PointerEvent<SVGSVGElement>): { readonly x: number; readonly y: number } {
  const box = event.currentTarget.getBoundingClientRect();
  return { x: event.clientX - box.left, y: event.clientY - box.top };
}
