import { drawForces, viewFromAbove, viewFromBehind, viewFromLeft } from "@armwright/drawing";
import { type ReactNode, useLayoutEffect, useRef } from "react";
import { useBench } from "../app/use-bench.ts";
import type { OverProps } from "../board/laid-over.ts";
import { paint } from "../board/paint.ts";
import { useLanding } from "./landing-store.ts";
import { landingNow } from "./over-now.ts";

const VIEWS = { rear: viewFromBehind, top: viewFromAbove, left: viewFromLeft } as const;

/** Over the drawing while a landing is looked at: the forces of that moment. */
export function LandingOver(props: OverProps): ReactNode {
  const made = useLanding((state) => state.made);
  const time = useLanding((state) => state.time);
  const units = useBench((state) => state.units);
  const ink = useRef<SVGGElement>(null);
  const { view, sheet, size, study, solved, covered } = props;
  useLayoutEffect(() => {
    if (!ink.current) return;
    if (!made) {
      paint(ink.current, [], sheet.pen);
      return;
    }
    const arrows = landingNow(made, time, study, solved, units)?.arrows ?? [];
    paint(ink.current, drawForces(VIEWS[view](sheet), arrows, covered), sheet.pen);
  });
  if (!made) return null;
  return (
    <svg
      className="forces-over landing-over"
      width={size.width}
      height={size.height}
      viewBox={`0 0 ${sheet.width} ${sheet.height}`}
      role="img"
      aria-label="The forces at this moment of the landing"
    >
      {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in a painted drawing takes the keyboard. */}
      <g ref={ink} aria-hidden="true" />
    </svg>
  );
}
