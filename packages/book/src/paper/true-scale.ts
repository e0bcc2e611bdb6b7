import type { Sheet } from "@armwright/drawing";

/** Scales of a drawing, 1 to so many, as ISO 5455 and inch rules have them. */
const RATIOS = [1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 16, 20, 24, 30, 32, 40, 50];

/** The next larger ratio that a scale is named by. */
export const namedRatio = (wanted: number): number =>
  RATIOS.find((each) => each >= wanted) ?? Math.ceil(wanted / 10) * 10;

/** The sheet at the next smaller scale that can be named, its middle staying where it is. Sheet units are mm. */
export function atNamedScale(sheet: Sheet): { readonly sheet: Sheet; readonly ratio: number } {
  const wanted = 1000 / sheet.scale;
  const ratio = namedRatio(wanted);
  const k = wanted / ratio;
  const middle = { x: sheet.width / 2, y: sheet.height / 2 };
  return {
    ratio,
    sheet: {
      ...sheet,
      scale: 1000 / ratio,
      origin: {
        x: middle.x + (sheet.origin.x - middle.x) * k,
        y: middle.y + (sheet.origin.y - middle.y) * k,
      },
    },
  };
}
