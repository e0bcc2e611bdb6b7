import { drawPoints } from "@armwright/drawing";
import type { CarSurvey } from "@armwright/engine";
import { type PointerEvent, type ReactNode, useLayoutEffect, useMemo, useRef, useState } from "react";
import { useBench } from "../app/use-bench.ts";
import { paint } from "../board/paint.ts";
import { NewPoint } from "./NewPoint.tsx";
import { factsOf, nameIn, type PointEntry, type ReadingEntry, type Slot, withField } from "./survey-document.ts";

interface Props {
  readonly draft: ReadingEntry;
  readonly points: readonly PointEntry[];
  readonly car: CarSurvey | null;
  readonly onDraft: (draft: ReadingEntry) => void;
  readonly onNewPoint: (point: PointEntry) => void;
}

const NEW = "\n";

/** Which points a reading is between: by name, or touched in the picture, the open one first. */
export function WhichPoints({ draft, points, car, onDraft, onNewPoint }: Props): ReactNode {
  const { slots } = factsOf(draft.kind);
  const [asked, setAsked] = useState<Slot["field"]>(slots[0]!.field);
  const [naming, setNaming] = useState<Slot["field"] | null>(null);
  const open = slots.find(({ field }) => field === asked) ?? slots[0]!;
  const name = (slot: Slot, chosen: string | undefined): void => {
    onDraft(withField(draft, slot.field, chosen));
    const next = slots.find(
      (each) => each.field !== slot.field && nameIn(draft, each) === "" && each.without === undefined,
    );
    if (chosen !== undefined && next) setAsked(next.field);
  };
  return (
    <>
      <div className="which-points">
        {slots.map((slot) => (
          <div key={slot.field} className={slot.field === open.field ? "field held" : "field"}>
            <label htmlFor={`slot-${slot.field}`}>{slot.label}</label>
            <div className="entry">
              <select
                id={`slot-${slot.field}`}
                value={nameIn(draft, slot)}
                onFocus={() => setAsked(slot.field)}
                onChange={({ target: { value } }) => {
                  if (value === NEW) setNaming(slot.field);
                  else name(slot, value === "" ? undefined : value);
                }}
              >
                <option value="">{slot.without ?? "choose, or touch it in the picture"}</option>
                {points.map((point) => (
                  <option key={point.name} value={point.name}>
                    {point.name}
                  </option>
                ))}
                <option value={NEW}>a new point …</option>
              </select>
            </div>
          </div>
        ))}
      </div>
      {naming !== null && (
        <NewPoint
          taken={points.map((point) => point.name)}
          onName={(point) => {
            onNewPoint(point);
            const slot = slots.find(({ field }) => field === naming);
            if (slot) name(slot, point.name);
            setNaming(null);
          }}
          onGiveUp={() => setNaming(null)}
        />
      )}
      {car && car.result.points.length > 0 && (
        <PointsPicture
          car={car}
          held={slots.flatMap((slot) => nameIn(draft, slot) || [])}
          onTouch={(touched) => name(open, touched)}
          words={open.label}
        />
      )}
    </>
  );
}

const WIDTH = 360;
const HEIGHT = 300;
const VIEWS = ["from behind", "from above", "from the left"] as const;
/** A finger covers this much, px. */
const REACH = 30;

function PointsPicture({
  car,
  held,
  onTouch,
  words,
}: {
  readonly car: CarSurvey;
  readonly held: readonly string[];
  readonly onTouch: (name: string) => void;
  readonly words: string;
}): ReactNode {
  const study = useBench(({ live, moving }) => (moving ? null : live.study));
  const [view, setView] = useState<(typeof VIEWS)[number]>("from behind");
  const { points } = car.result;
  const key = held.join("\n");
  const drawing = useMemo(
    () => drawPoints({ study, points, held: key.split("\n"), view }, WIDTH, HEIGHT),
    [study, points, key, view],
  );
  const ink = useRef<SVGGElement>(null);
  useLayoutEffect(() => {
    if (ink.current) paint(ink.current, drawing.parts, drawing.sheet.pen);
  }, [drawing]);
  const touch = (event: PointerEvent<SVGSVGElement>): void => {
    const box = event.currentTarget.getBoundingClientRect();
    const at = {
      x: ((event.clientX - box.left) / box.width) * WIDTH,
      y: ((event.clientY - box.top) / box.height) * HEIGHT,
    };
    const away = (spot: { readonly x: number; readonly y: number }): number => Math.hypot(spot.x - at.x, spot.y - at.y);
    const [nearest] = [...drawing.handles].sort((a, b) => away(a.at) - away(b.at));
    if (nearest && away(nearest.at) < REACH) onTouch(nearest.label);
  };
  return (
    <div className="points-picture">
      <p className="small quiet">Touch a point for “{words}”, or choose it by name above.</p>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} width={WIDTH} height={HEIGHT} aria-hidden="true" onPointerDown={touch}>
        <g ref={ink} />
      </svg>
      <div className="problem-actions">
        {VIEWS.map((each) => (
          <button
            key={each}
            type="button"
            className="pressable link"
            aria-pressed={each === view}
            onClick={() => setView(each)}
          >
            {each}
          </button>
        ))}
      </div>
    </div>
  );
}
