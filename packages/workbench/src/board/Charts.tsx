import { type Chart, chartCycle, drawChart, heightOf, type TapeScale, travelAt } from "@armwright/drawing";
import type { Study } from "@armwright/engine";
import { type PointerEvent, type ReactNode, useLayoutEffect, useMemo, useRef, useState } from "react";
import { useBench } from "../app/use-bench.ts";
import type { CertaintyAnswer } from "../certainty/certainty-job.ts";
import { useCertainty } from "../certainty/certainty-store.ts";
import { setTravel, showPanel } from "../store/bench.ts";
import { solvedAt, valueIn } from "../store/position.ts";
import { Reading } from "../words/Reading.tsx";
import { shown, shownTravel, snapped } from "../words/shown.ts";
import { CHART_TITLES } from "./chart-titles.ts";
import { HEAD_GAP, NUMERALS } from "./layout.ts";
import { paint } from "./paint.ts";
import { shownIn } from "./shown-in.ts";

interface Props {
  readonly study: Study;
  /** Ids of quantities; two joined by `+` share a chart. */
  readonly ids: readonly string[];
  readonly scale: TapeScale;
  readonly left: number;
  readonly width: number;
  readonly height: number;
  readonly chart: number;
  readonly gap: number;
}

/** Charts bolted to the tape: travel upward on its own scale, so that a level line means one position in all of them. */
export function Charts({ study, ids, scale, left, width, height, chart, gap }: Props): ReactNode {
  const units = useBench((state) => state.units);
  const travel = useBench((state) => state.travel);
  const comparing = useBench((state) => state.comparing);
  const held = useBench((state) => state.held?.place);
  const ink = useRef<SVGGElement>(null);
  const [pointed, setPointed] = useState<{ readonly index: number; readonly travel: number } | null>(null);
  const inUnits = shownIn(study, units);
  const { highest, lowest, top } = scale;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a cycle depends on the tape's ends, not on its size.
  const cycle = useMemo(() => chartCycle(study, scale), [study, highest, lowest]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: as above.
  const over = useMemo(
    () => comparing && { study: comparing.study, cycle: chartCycle(comparing.study, scale) },
    [comparing, highest, lowest],
  );
  const sure = useCertainty();
  const drawn = ids.map((id, index) =>
    drawChart(
      inUnits,
      id.split("+"),
      { x: NUMERALS + index * (chart + gap), y: 0, width: chart, height },
      {
        scale,
        travel,
        cycle,
        room: chart + gap - HEAD_GAP,
        numerals: index === 0,
        ...(over && { over }),
        ...betweenOf(sure, id),
        ...(CHART_TITLES[id] !== undefined && { title: CHART_TITLES[id] }),
        ...(held?.startsWith("stops.") && { held }),
      },
    ),
  );
  useLayoutEffect(() => {
    if (ink.current)
      paint(
        ink.current,
        drawn.flatMap(({ parts }) => parts),
        scale.pen,
      );
  });
  const point = (event: PointerEvent<SVGSVGElement>): void => {
    const box = event.currentTarget.getBoundingClientRect();
    const x = event.clientX - box.left;
    const index = drawn.findIndex(({ frame }) => x >= frame.x - gap / 2 && x <= frame.x + frame.width + gap / 2);
    const at = Math.min(highest, Math.max(lowest, travelAt(scale, event.clientY - box.top)));
    setPointed(index < 0 ? null : { index, travel: snapped(at, units) });
  };
  return (
    <div className="place charts" style={{ left, top: 0, width, height }}>
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: the wheel is moved by keys on the tape. */}
      {/* biome-ignore lint/a11y/useSemanticElements: a drawing is no set of fields. */}
      <svg
        className="chart"
        width={width}
        height={height}
        role="group"
        aria-label="Charts over travel"
        onPointerMove={point}
        onPointerLeave={() => setPointed(null)}
        onClick={() => pointed && setTravel(pointed.travel)}
      >
        <g ref={ink} />
        {pointed && <path className="pointed" d={`M${NUMERALS} ${heightOf(scale, pointed.travel)}H${width}`} />}
      </svg>
      {top >= CHOOSE_ROOM && (
        <button type="button" className="choose-charts small" onClick={() => showPanel({ kind: "charts" })}>
          Choose charts
        </button>
      )}
      {comparing && top >= CHOOSE_ROOM && <p className="compared small quiet">dashed: {comparing.label}</p>}
      {drawn.map((each, index) => (
        <ChartHead key={ids[index]} chart={each} id={ids[index] ?? ""} study={study} top={scale.top} />
      ))}
      {pointed && (
        <Pointed
          study={study}
          id={ids[pointed.index] ?? ""}
          travel={pointed.travel}
          top={heightOf(scale, pointed.travel)}
          right={width - (drawn[pointed.index]?.frame.x ?? 0) + 6}
        />
      )}
    </div>
  );
}

/** What is left open about a chart's first quantity. */
function betweenOf(sure: CertaintyAnswer | null, id: string) {
  const between = sure?.quantities[id.split("+")[0] ?? ""];
  return between ? { between } : {};
}

/** Over the charts' heads, px: less where the charts stand in the bench, beside a button of their own. */
const CHOOSE_ROOM = 64;

/** The head of a chart, pressed to be asked how its number is known. */
function ChartHead({
  chart,
  id,
  study,
  top,
}: {
  readonly chart: Chart;
  readonly id: string;
  readonly study: Study;
  readonly top: number;
}): ReactNode {
  const quantity = study.quantities.find((each) => each.id === id.split("+")[0]);
  if (!quantity) return null;
  return (
    <button
      type="button"
      className="chart-head"
      style={{ left: chart.frame.x - 4, top: top - 58, width: chart.frame.width + 8, height: 54 }}
      aria-label={`${quantity.label}: how do you know?`}
      onClick={() => showPanel({ kind: "how", quantity: quantity.id })}
    />
  );
}

/** The values at the height that is pointed at. */
function Pointed({
  study,
  id,
  travel,
  top,
  right,
}: {
  readonly study: Study;
  readonly id: string;
  readonly travel: number;
  readonly top: number;
  readonly right: number;
}): ReactNode {
  const units = useBench((state) => state.units);
  const solved = solvedAt(study, travel);
  return (
    <p className="pointed-values small" style={{ top: top - 12, right }}>
      <Reading text={shownTravel(travel, units)} />
      {id.split("+").map((each) => {
        const quantity = study.quantities.find((one) => one.id === each);
        return quantity ? (
          <span key={each}>
            {" "}
            {quantity.short}{" "}
            <b>
              <Reading
                text={shown(valueIn(study, quantity, solved), quantity.dimension, units, { sign: quantity.signed })}
              />
            </b>
          </span>
        ) : null;
      })}
    </p>
  );
}
