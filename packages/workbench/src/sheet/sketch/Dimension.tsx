import { textParts } from "@armwright/drawing";
import type { ReactNode } from "react";

interface Props {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly text: string;
  /** Where the text stands; otherwise in the middle of the line. */
  readonly at?: readonly [number, number];
}

/** Where the tape goes: a line with an arrow at both ends, and what was read. */
export function Dimension({ from, to, text, at }: Props): ReactNode {
  const [x1, y1] = from;
  const [x2, y2] = to;
  const size = Math.hypot(x2 - x1, y2 - y1) || 1;
  const ux = (x2 - x1) / size;
  const uy = (y2 - y1) / size;
  const arrow = (x: number, y: number, way: 1 | -1): string =>
    `M${x} ${y}L${x + way * ux * 9 - uy * 2.6} ${y + way * uy * 9 + ux * 2.6}L${x + way * ux * 9 + uy * 2.6} ${y + way * uy * 9 - ux * 2.6}Z`;
  const [tx, ty] = at ?? [(x1 + x2) / 2, (y1 + y2) / 2];
  return (
    <g className="sketch-dimension">
      <path d={`M${x1} ${y1}L${x2} ${y2}`} />
      <path className="arrow" d={arrow(x1, y1, 1) + arrow(x2, y2, -1)} />
      {text !== "" && (
        <text x={tx} y={ty + 5} textAnchor="middle">
          {textParts(text).map(({ text: part, fraction, isBehindWhole }) => (
            <tspan key={part} className={fraction ? "q" : undefined} dx={isBehindWhole ? "0.13em" : undefined}>
              {part}
            </tspan>
          ))}
        </text>
      )}
    </g>
  );
}
