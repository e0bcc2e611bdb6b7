import type { Vec3 } from "@armwright/engine";
import type { ReactNode } from "react";
import type { OverProps } from "../board/laid-over.ts";
import { inView } from "../mounts/dots.ts";
import { ellipseOf } from "./ellipsoids.ts";
import { useSurveyShown } from "./survey-shown.ts";

/** The sheet's right and down as directions on the car, by view. */
const WAYS: Readonly<Record<OverProps["view"], readonly [right: Vec3, down: Vec3]>> = {
  rear: [
    { x: 0, y: -1, z: 0 },
    { x: 0, y: 0, z: -1 },
  ],
  top: [
    { x: 0, y: -1, z: 0 },
    { x: -1, y: 0, z: 0 },
  ],
  left: [
    { x: -1, y: 0, z: 0 },
    { x: 0, y: 0, z: -1 },
  ],
};

/** Over the drawing: how sure each surveyed point is, as its 95 % ellipse, enlarged. */
export function SurveyOver({ view, sheet, size }: OverProps): ReactNode {
  const result = useSurveyShown((state) => state.result);
  const chosen = useSurveyShown((state) => state.point);
  if (!result) return null;
  const [right, down] = WAYS[view];
  return (
    <svg
      className="survey-over"
      width={size.width}
      height={size.height}
      viewBox={`0 0 ${sheet.width} ${sheet.height}`}
      aria-hidden="true"
    >
      {result.points.map(({ name, at, isUndetermined }, index) => {
        const { across, up } = inView(view, at);
        const [x, y] = [sheet.origin.x - across * sheet.scale, sheet.origin.y - up * sheet.scale];
        const { major, minor, turn } = ellipseOf(result, index, right, down);
        const isChosen = name === chosen;
        return (
          <g key={name} className={isChosen ? "held" : undefined} transform={`translate(${x} ${y})`}>
            {isUndetermined ? (
              <text x={8} y={-8}>
                ?
              </text>
            ) : (
              <ellipse
                rx={major * sheet.scale}
                ry={minor * sheet.scale}
                transform={`rotate(${(turn * 180) / Math.PI})`}
              />
            )}
            {isChosen && (
              <text x={10} y={-10}>
                {name}
              </text>
            )}
          </g>
        );
      })}
    </svg>
  );
}
