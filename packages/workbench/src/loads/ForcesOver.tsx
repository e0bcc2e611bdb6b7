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
  return <ArrowsOver {...props} arrows={forcesNow(study, chosen, solved.travel, units)?.arrows ?? []} />;
}

/** Arrows over a view; the drawing under them is drawn back. */
export function ArrowsOver({
  view,
  sheet,
  size,
  arrows,
  covered,
}: OverProps & { readonly arrows: readonly ForceArrow[] }): ReactNode {
  const ink = useRef<SVGGElement>(null);
  useLayoutEffect(() => {
    if (ink.current) paint(ink.current, drawForces(VIEWS[view](sheet), arrows, covered), sheet.pen);
  });
  if (arrows.length === 0) return null;
  return (
    <svg
      className="forces-over"
      width={size.width}
      height={size.height}
      viewBox={`0 0 ${sheet.width} ${sheet.height}`}
      role="img"
      aria-label={`Forces: ${arrows.map(({ label }) => label).join(", ")}`}
    >
      {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in a painted drawing takes the keyboard. */}
      <g ref={ink} aria-hidden="true" />
    </svg>
  );
}
