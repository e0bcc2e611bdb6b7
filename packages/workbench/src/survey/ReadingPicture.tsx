import { drawReading } from "@armwright/drawing";
import type { SurveyReading, Vec3 } from "@armwright/engine";
import { type ReactNode, useLayoutEffect, useMemo, useRef } from "react";
import { useBench } from "../app/use-bench.ts";
import { paint } from "../board/paint.ts";
import { useSize } from "../board/use-size.ts";

interface Props {
  readonly points: readonly { readonly name: string; readonly at: Vec3 }[];
  readonly reading: SurveyReading;
  /** What stands on the tape. */
  readonly text: string;
  /** Where the wheel stands in it, m; ride height unless said. */
  readonly travel?: number;
}

/** Which points a reading is between, drawn on the car; as large as the room that it is given. */
export function ReadingPicture({ points, reading, text, travel = 0 }: Props): ReactNode {
  const study = useBench(({ live, moving }) => (moving ? null : live.study));
  const [room, size] = useSize();
  const { width, height } = size ?? NO_SIZE;
  const drawing = useMemo(
    () => (width > 0 && height > 0 ? drawReading({ study, points, reading, text, travel }, width, height) : null),
    [study, points, reading, text, travel, width, height],
  );
  const ink = useRef<SVGGElement>(null);
  useLayoutEffect(() => {
    if (ink.current && drawing) paint(ink.current, drawing.parts, drawing.sheet.pen);
  }, [drawing]);
  return (
    <div className="reading-picture" ref={room}>
      {drawing && (
        <svg viewBox={`0 0 ${width} ${height}`} width={width} height={height} aria-hidden="true">
          <g ref={ink} />
        </svg>
      )}
    </div>
  );
}

const NO_SIZE = { width: 0, height: 0 };
