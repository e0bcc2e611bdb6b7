import { area, type Primitive, rectangle, spot, stroke, text } from "@armwright/drawing";

/** Lengths of the two rules, to be checked with the builder's own. */
export const RULER_MM = 100;
export const RULER_INCHES = 3;
const INCH = 25.4;

/** Height that both rules take, and between them, mm. */
export const RULER_HEIGHT = 16;
const BETWEEN = 4.5;

/** Two rules to check the printer by, side by side from their top left corner, mm. */
export function ruler(left: number, top: number): readonly Primitive[] {
  const inches = left + RULER_MM + BETWEEN;
  const inMillimetres = (mark: number): number => (mark % 10 === 0 ? 4 : mark % 5 === 0 ? 3 : 2);
  const inSixteenths = (mark: number): number =>
    mark % 16 === 0 ? 4 : mark % 8 === 0 ? 3.2 : mark % 4 === 0 ? 2.4 : 1.6;
  return [
    text(
      "ruler",
      spot(left, top + 3.4),
      "Printed true? Lay a rule on these. If not, print again at 100 %, without fitting to the page.",
      {
        ink: "ink",
      },
    ),
    ...scale(left, top + 5.5, RULER_MM, 1, inMillimetres),
    ...scale(inches, top + 5.5, RULER_INCHES * INCH, INCH / 16, inSixteenths),
    ...[0, 50, RULER_MM].map((mm) =>
      text("ruler", spot(left + mm, top + 14), mm === 0 ? "0" : `${mm} mm`, {
        ink: "ink",
        anchor: anchorAt(mm, RULER_MM),
      }),
    ),
    ...[0, 1, 2, RULER_INCHES].map((inch) =>
      text("ruler", spot(inches + inch * INCH, top + 14), inch === 0 ? "0" : `${inch} in`, {
        ink: "ink",
        anchor: anchorAt(inch, RULER_INCHES),
      }),
    ),
  ];
}

const anchorAt = (at: number, end: number): "start" | "middle" | "end" =>
  at === 0 ? "start" : at === end ? "end" : "middle";

function scale(left: number, top: number, length: number, step: number, height: (mark: number) => number): Primitive[] {
  const count = Math.round(length / step);
  return [
    area("ruler", rectangle(left, top, length, 4), { fill: "none", weight: "hair" }),
    ...Array.from({ length: count - 1 }, (_, index) => index + 1).map((mark) =>
      stroke("ruler", spot(left + mark * step, top), spot(left + mark * step, top + height(mark)), { weight: "hair" }),
    ),
  ];
}
