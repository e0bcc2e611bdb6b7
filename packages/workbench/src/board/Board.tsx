import { type Box, constructionLines, drawTape, heightOf, type TapeScale, titleOf } from "@armwright/drawing";
import type { Study } from "@armwright/engine";
import { lazy, type ReactNode, Suspense, useDeferredValue, useLayoutEffect, useRef } from "react";
import { stepWheel } from "../app/keys.ts";
import { CycleMark, DownMark, SpaceMark, StandMark, UpMark } from "../app/Mark.tsx";
import { useBench } from "../app/use-bench.ts";
import { chartIds } from "../sheet/chart-ids.ts";
import { setCycling, setView, showScene } from "../store/bench.ts";
import type { ViewName } from "../store/bench-state.ts";
import { type Solved, solvedAt } from "../store/position.ts";
import { cornerPlace } from "../store/sides.ts";
import { Reading } from "../words/Reading.tsx";
import { shownTravel } from "../words/shown.ts";
import { Charts } from "./Charts.tsx";
import { freeHeight } from "./free-height.ts";
import { HandNote } from "./HandNote.tsx";
import { CHART_GAP, CHART_WIDTH, layBoard, TAPE_WIDTH } from "./layout.ts";
import { Nothing } from "./Nothing.tsx";
import { paint } from "./paint.ts";
import { footOf, placeRear } from "./place-views.ts";
import { shownIn } from "./shown-in.ts";
import { Tape } from "./Tape.tsx";
import { useCycling } from "./use-cycling.ts";
import { type Size, useSize } from "./use-size.ts";
import { useStanding } from "./use-standing.ts";
import { useTapeRange } from "./use-tape-range.ts";
import { View } from "./View.tsx";

const SceneView = lazy(() => import("./SceneView.tsx").then((m) => ({ default: m.SceneView })));

/** Tape with flags, drawing with its views, charts bolted to the tape's scale. */
export function Board({ charts }: { readonly charts: "beside" | "none" }): ReactNode {
  const [ref, size] = useSize();
  const study = useBench(({ live }) => live.study);
  const isOlder = useBench(({ live, unreadable }) => live.isOlder || unreadable.length > 0);
  useCycling();
  return (
    <div ref={ref} className="board-area">
      {isOlder && study && (
        <p className="older-note">Of the last state that could be read: an entry has to be mended.</p>
      )}
      {study && size ? <Laid study={study} size={size} hasCharts={charts === "beside"} /> : <Nothing />}
    </div>
  );
}

interface LaidProps {
  readonly study: Study;
  readonly size: Size;
  readonly hasCharts: boolean;
}

function Laid({ study, size, hasCharts }: LaidProps): ReactNode {
  const travel = useBench((state) => state.travel);
  const units = useBench((state) => state.units);
  const step = useBench((state) => state.step);
  const picked = useBench((state) => state.pickedCharts);
  const big = useBench((state) => state.view);
  const isScene = useBench((state) => state.isScene);
  const range = useTapeRange(study);
  const solved = solvedAt(study, travel);
  const shown = shownIn(study, units);
  const ids = hasCharts ? chartIds(study, step, picked) : [];
  const { tape, scale, chartsWidth, room } = layBoard(shown, size, ids.length, range);
  if (!solved || room.width < 80) return null;
  return (
    <>
      <div className="place tape-place" style={{ left: 0, top: 0, width: TAPE_WIDTH, height: size.height }}>
        <Tape study={study} width={TAPE_WIDTH} height={size.height} rect={tape} loupe words />
      </div>
      <TravelNow />
      <MoveWheel study={shown} tape={tape} range={range} zero={heightOf(scale, 0)} height={size.height} />
      {isScene ? (
        <div className="place" style={{ left: TAPE_WIDTH, top: 0, width: room.width, height: room.height }}>
          <Suspense fallback={<p className="scene-trouble">The scene is being fetched.</p>}>
            <SceneView study={shown} solved={solved} size={room} />
          </Suspense>
        </div>
      ) : (
        <Views study={study} solved={solved} left={TAPE_WIDTH} room={room} zero={heightOf(scale, 0)} big={big} />
      )}
      {big === "rear" && !isScene && <Construction study={study} scale={scale} room={room} size={size} />}
      {ids.length > 0 && (
        <Charts
          study={study}
          ids={ids}
          scale={scale}
          left={size.width - chartsWidth}
          width={chartsWidth}
          height={size.height}
          chart={CHART_WIDTH}
          gap={CHART_GAP}
        />
      )}
    </>
  );
}

interface ConstructionProps {
  readonly study: Study;
  readonly scale: TapeScale;
  /** Of the drawing beside the tape. */
  readonly room: Size;
  readonly size: Size;
}

/** Dotted lines that carry the tape's heights to the wheel centres. */
function Construction({ study, scale, room, size }: ConstructionProps): ReactNode {
  const zero = heightOf(scale, 0);
  const sheet = useStanding(study, `${room.width} ${room.height} ${zero}`, () =>
    placeRear(study, room, zero, footOf(room.height)),
  );
  const ink = useRef<SVGGElement>(null);
  useLayoutEffect(() => {
    if (ink.current) paint(ink.current, constructionLines(study, scale, sheet, { x: TAPE_WIDTH, y: 0 }), scale.pen);
  });
  return (
    <svg className="construction" width={size.width} height={size.height} aria-hidden="true">
      <g ref={ink} />
    </svg>
  );
}

interface ViewsProps {
  readonly study: Study;
  readonly solved: Solved;
  readonly left: number;
  readonly room: Size;
  readonly zero: number;
  readonly big: ViewName;
}

const VIEW_NAMES = {
  rear: "from behind",
  top: "from above",
  left: "from the left",
} as const satisfies Readonly<Record<ViewName, string>>;

/** One view large, to be worked in; the other two small at the foot, each a press away from being the large one. */
function Views({ study, solved, left, room, zero, big }: ViewsProps): ReactNode {
  const isMirrored = useBench(({ side }) => side === "right");
  const nameOf = (view: ViewName): string => titleOf(VIEW_NAMES[view], isMirrored);
  const others = (["rear", "top", "left"] as const).filter((view) => view !== big);
  // The small views carry no numbers: they follow right after everything else, in a step of their own.
  const smallStudy = useDeferredValue(study);
  const smallSolved = useDeferredValue(solved);
  const small = { width: Math.min(footOf(room.height) * 1.5, room.width * 0.3), height: footOf(room.height) - 4 };
  const covered = {
    x: room.width - 2 * (small.width + 8),
    y: room.height - small.height - 4,
    width: 2 * (small.width + 8),
    height: small.height + 4,
  };
  const held = useBench((state) => state.held?.place);
  return (
    <>
      <HandNote left={left + 8} label={labelOf(study, held)} />
      <div className="place" style={{ left, top: 0, width: room.width, height: room.height }}>
        <View
          view={big}
          study={study}
          solved={solved}
          size={room}
          zero={zero}
          isBig
          covered={covered}
          label={isMirrored ? nameOf(big) : `Left rear corner ${nameOf(big)}`}
        />
      </div>
      {others.map((view, index) => (
        <button
          key={view}
          type="button"
          className="view-pick"
          style={{
            left: left + room.width - (2 - index) * (small.width + 8),
            top: room.height - small.height - 4,
            width: small.width,
            height: small.height,
          }}
          onClick={() => setView(view)}
          aria-label={`Work in the view ${nameOf(view)}`}
        >
          <View
            view={view}
            study={smallStudy}
            solved={smallSolved}
            size={small}
            zero={zero}
            isBig={false}
            label={nameOf(view)}
          />
        </button>
      ))}
    </>
  );
}

const labelOf = (study: Study, held: string | undefined): string | undefined => {
  if (held === undefined) return undefined;
  const place = cornerPlace(held);
  const pivot = study.corner.pivots.find(({ id }) => `linkage.${id}` === place);
  return pivot?.label ?? place.replace(/[.[\]]+/g, " ").replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
};

function TravelNow(): ReactNode {
  const travel = useBench((state) => state.travel);
  const units = useBench((state) => state.units);
  return (
    <p className="travel-now">
      <span className="small quiet">Travel now</span>
      <span className="big">
        <Reading text={shownTravel(travel, units)} />{" "}
        <small>{travel === 0 ? "ride height" : travel > 0 ? "bump" : "droop"}</small>
      </span>
    </p>
  );
}

interface MoveWheelProps {
  readonly study: Study;
  readonly tape: Box;
  readonly range: { readonly lowest: number; readonly highest: number };
  readonly zero: number;
  readonly height: number;
}

interface ButtonsPlace {
  readonly left: number;
  readonly top: number;
  readonly isTight: boolean;
}

const BESIDE_FLAGS = 10;

/** With no room at all beside the flags the buttons stand at the foot, right of the blade. */
const tightPlace = (free: number | null, height: number): ButtonsPlace =>
  free === null
    ? { left: TAPE_WIDTH - 86, top: height - 104, isTight: true }
    : { left: BESIDE_FLAGS, top: free, isTight: true };

/** Four buttons in the free room beside the flags: one over another, or two by two where the flags crowd. */
function MoveWheel({ study, tape, range, zero, height }: MoveWheelProps): ReactNode {
  const isMoving = useBench(({ moving }) => moving !== null);
  const kept = useRef<ButtonsPlace | null>(null);
  if (!isMoving || kept.current === null) {
    const { parts } = drawTape(study, 0, tape, { range });
    const room = { width: 118, top: 92, bottom: height };
    const tall = freeHeight(parts, room, 196, zero - 60);
    kept.current =
      tall === null
        ? tightPlace(freeHeight(parts, room, 98, zero - 49), height)
        : { top: tall, left: BESIDE_FLAGS, isTight: false };
  }
  const { top, left, isTight } = kept.current;
  const units = useBench((state) => state.units);
  const isCycling = useBench((state) => state.isCycling);
  const isScene = useBench((state) => state.isScene);
  const step = units === "metric" ? "1" : "1/16";
  return (
    <fieldset className={isTight ? "move-wheel tight" : "move-wheel"} style={{ left, top }}>
      <legend className="unseen">Move the wheel</legend>
      <button type="button" onClick={() => stepWheel(1)}>
        <UpMark /> up {!isTight && <Reading text={step} />}
      </button>
      <button type="button" onClick={() => stepWheel(-1)}>
        <DownMark /> down {!isTight && <Reading text={step} />}
      </button>
      <button type="button" onClick={() => setCycling(!isCycling)} aria-pressed={isCycling}>
        {isCycling ? <StandMark /> : <CycleMark />} {isCycling ? (isTight ? "stand" : "stand still") : "cycle"}
      </button>
      <button type="button" onClick={() => showScene(!isScene)} aria-pressed={isScene}>
        <SpaceMark /> {isScene ? "drawing" : isTight ? "space" : "in space"}
      </button>
    </fieldset>
  );
}
