import { constructionLines, heightOf, type Sheet, type TapeScale, tapeScale } from "@armwright/drawing";
import type { Study } from "@armwright/engine";
import { type ReactNode, useLayoutEffect, useRef } from "react";
import { stepWheel } from "../app/keys.ts";
import { CycleMark, DownMark, StandMark, UpMark } from "../app/Mark.tsx";
import { useBench } from "../app/use-bench.ts";
import { chartIds } from "../sheet/chart-ids.ts";
import { setCycling, setView, showPanel } from "../store/bench.ts";
import type { ViewName } from "../store/bench-state.ts";
import { type Solved, solvedAt } from "../store/position.ts";
import { Reading } from "../words/Reading.tsx";
import { shownTravel } from "../words/shown.ts";
import { Charts } from "./Charts.tsx";
import { paint } from "./paint.ts";
import { placeRear } from "./place-views.ts";
import { shownIn } from "./shown-in.ts";
import { Tape } from "./Tape.tsx";
import { useCycling } from "./use-cycling.ts";
import { type Size, useSize } from "./use-size.ts";
import { useTapeRange } from "./use-tape-range.ts";
import { View } from "./View.tsx";

/** Flags, blade and loupe. */
const TAPE_WIDTH = 386;
/** Space over the blade for the reading of the travel. */
const TAPE_TOP = 36;
const CHART = 58;
const CHART_GAP = 11;

/** Tape with flags, drawing with its views, charts bolted to the tape's scale. */
export function Board({ charts }: { readonly charts: "beside" | "none" }): ReactNode {
  const [ref, size] = useSize();
  const study = useBench(({ live }) => live.study);
  const isOlder = useBench(({ live, unreadable }) => live.isOlder || unreadable.length > 0);
  useCycling();
  return (
    <div ref={ref} className="board-area">
      {isOlder && <p className="older-note">Of the last state that could be read: an entry has to be mended.</p>}
      {study && size ? <Laid study={study} size={size} hasCharts={charts === "beside"} /> : <Nothing />}
    </div>
  );
}

const Nothing = (): ReactNode => (
  <div className="nothing">
    <h2>No car on the bench</h2>
    <p>Open one, bring a file in, or begin a new car with a few questions.</p>
    <button type="button" className="pressable" onClick={() => showPanel({ kind: "new-car" })}>
      New car
    </button>
    <button type="button" className="pressable" onClick={() => showPanel({ kind: "files" })}>
      Cars
    </button>
  </div>
);

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
  const range = useTapeRange(study);
  const solved = solvedAt(study, travel);
  const shown = shownIn(study, units);
  const ids = hasCharts ? chartIds(study, step, picked) : [];
  const chartsWidth = ids.length === 0 ? 0 : ids.length * (CHART + CHART_GAP) + 30;
  const tape = { x: 0, y: TAPE_TOP, width: TAPE_WIDTH, height: size.height - TAPE_TOP - 18 };
  const scale = tapeScale(shown, tape, { range });
  const room = { width: size.width - TAPE_WIDTH - chartsWidth, height: size.height };
  if (!solved || room.width < 80) return null;
  return (
    <>
      <div className="place tape-place" style={{ left: 0, top: 0, width: TAPE_WIDTH, height: size.height }}>
        <Tape study={study} width={TAPE_WIDTH} height={size.height} rect={tape} loupe words />
      </div>
      <TravelNow />
      <MoveWheel top={heightOf(scale, 0) + 44} />
      <Views study={study} solved={solved} left={TAPE_WIDTH} room={room} zero={heightOf(scale, 0)} big={big} />
      {big === "rear" && <Construction study={study} scale={scale} sheet={placeRear(study, room, heightOf(scale, 0))} size={size} />}
      {ids.length > 0 && <Charts study={study} ids={ids} scale={scale} left={size.width - chartsWidth} width={chartsWidth} height={size.height} chart={CHART} gap={CHART_GAP} />}
    </>
  );
}

interface ConstructionProps {
  readonly study: Study;
  readonly scale: TapeScale;
  readonly sheet: Sheet;
  readonly size: Size;
}

/** Dotted lines that carry the tape's heights to the wheel centres. */
function Construction({ study, scale, sheet, size }: ConstructionProps): ReactNode {
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

const VIEW_NAMES: Readonly<Record<ViewName, string>> = { rear: "from behind", top: "from above", left: "from the left" };

/** One view large, to be worked in; the other two small at the foot, each a press away from being the large one. */
function Views({ study, solved, left, room, zero, big }: ViewsProps): ReactNode {
  const others = (["rear", "top", "left"] as const).filter((view) => view !== big);
  const small = { width: Math.min(210, room.width * 0.34), height: Math.min(150, room.height * 0.24) };
  return (
    <>
      <div className="place" style={{ left, top: 0, width: room.width, height: room.height }}>
        <View view={big} study={study} solved={solved} size={room} zero={zero} isBig label={`Left rear corner ${VIEW_NAMES[big]}`} />
      </div>
      {others.map((view, index) => (
        <button
          key={view}
          type="button"
          className="view-pick"
          style={{ left: left + room.width - (2 - index) * (small.width + 8), top: room.height - small.height - 4, width: small.width, height: small.height }}
          onClick={() => setView(view)}
          aria-label={`Work in the view ${VIEW_NAMES[view]}`}
        >
          <View view={view} study={study} solved={solved} size={small} zero={zero} isBig={false} label={VIEW_NAMES[view]} />
        </button>
      ))}
    </>
  );
}

function TravelNow(): ReactNode {
  const travel = useBench((state) => state.travel);
  const units = useBench((state) => state.units);
  return (
    <p className="travel-now">
      <span className="small quiet">Travel now</span>
      <span className="big">
        <Reading text={shownTravel(travel, units)} /> <small>{travel === 0 ? "ride height" : travel > 0 ? "bump" : "droop"}</small>
      </span>
    </p>
  );
}

function MoveWheel({ top }: { readonly top: number }): ReactNode {
  const units = useBench((state) => state.units);
  const isCycling = useBench((state) => state.isCycling);
  const step = units === "metric" ? "1" : "1/16";
  return (
    <fieldset className="move-wheel" style={{ top }}>
      <legend className="unseen">Move the wheel</legend>
      <button type="button" onClick={() => stepWheel(1)}>
        <UpMark /> up <Reading text={step} />
      </button>
      <button type="button" onClick={() => stepWheel(-1)}>
        <DownMark /> down <Reading text={step} />
      </button>
      <button type="button" onClick={() => setCycling(!isCycling)} aria-pressed={isCycling}>
        {isCycling ? <StandMark /> : <CycleMark />} {isCycling ? "stand still" : "cycle"}
      </button>
    </fieldset>
  );
}
