import { drawForces, type ForceArrow, viewFromAbove, viewFromBehind, viewFromLeft } from "@armwright/drawing";
import { type ReactNode, useLayoutEffect, useRef } from "react";
import { useBench } from "../app/use-bench.ts";
import type { OverProps } from "../board/laid-over.ts";
import { paint } from "../board/paint.ts";
import { forcesNow } from "./forces-now.ts";
import { useLoads } from "./loads-store.ts";

const VIEWS = { rear: viewFromBehind, top: viewFromAbove, left: viewFromLeft } as const;

/** Over the drawing: the forces of the chosen case where the wheel is now. */
export function ForcesOver(props: OverProps): ReactNode {
  const units = useBench((state) => state.units);
  const chosen = useLoads((state) => state.chosen);
  const { study, solved } = props;
  const arrows = forcesNow(study, chosen, solved.travel, units)?.arrows ?? [];
  return <ArrowsOver {...props} arrows={arrows} label={`Forces: ${arrows.map(({ label }) => label).join(", ")}`} />;
}

interface ArrowsProps extends OverProps {
  readonly arrows: readonly ForceArrow[];
  /** What a screen reader says of them. */
  readonly label: string;
  readonly keepsDrawing?: boolean;
}

/** Arrows over a view; the drawing under them is drawn back, unless it is kept strong. */
export function ArrowsOver({
  view,
  sheet,
  size,
  arrows,
  covered,
  label,
  keepsDrawing = false,
}: ArrowsProps): ReactNode {
  const ink = useRef<SVGGElement>(null);
  useLayoutEffect(() => {
    if (ink.current) paint(ink.current, drawForces(VIEWS[view](sheet), arrows, covered), sheet.pen);
  });
  if (arrows.length === 0) return null;
  return (
    <svg
      className={keepsDrawing ? "forces-over on-strong" : "forces-over"}
      width={size.width}
      height={size.height}
      viewBox={`0 0 ${sheet.width} ${sheet.height}`}
      role="img"
      aria-label={label}
    >
      {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in a painted drawing takes the keyboard. */}
      <g ref={ink} aria-hidden="true" />
    </svg>
  );
}
