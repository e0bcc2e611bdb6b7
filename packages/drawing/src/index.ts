// The drawings' contents: a study in, primitives out; the same for screen and paper.

export { type BentArm, type BentNode, type BentPiece, bentArm, type UseClass, useClassOf } from "./bent-arm.ts";
export type { ChartOptions } from "./chart/options.ts";
export { type DimensionWish, placeDimension } from "./dimension.ts";
export { drawArm, percent, USE_LOOKS } from "./draw-arm.ts";
export { type Chart, chartCycle, drawChart } from "./draw-chart.ts";
export { constructionLines } from "./draw-construction.ts";
export { drawForces, type ForceArrow } from "./draw-forces.ts";
export {
  drawHistory,
  type HistoryChart,
  type HistoryLevel,
  type HistoryStrip,
  type StripPlace,
} from "./draw-history.ts";
export { drawLeft } from "./draw-left.ts";
export { drawPoints, type PointsPicture } from "./draw-points.ts";
export { drawReading, type ReadingDrawing, type ReadingPicture } from "./draw-reading.ts";
export { drawRear } from "./draw-rear.ts";
export { drawTape } from "./draw-tape.ts";
export { drawTop } from "./draw-top.ts";
export { fitLeft, fitRear, fitTop } from "./fit.ts";
export type { NoteRoom } from "./note.ts";
export type { ViewOptions } from "./options.ts";
export { ghostsOf } from "./parts/ghosts.ts";
export { bar, circle, hull, polyline, rectangle, spot } from "./path.ts";
export { boxesAlong, grown, makePlacement, overlap, type Placement } from "./placement.ts";
export type * from "./primitive.ts";
export { hatchText, pathText, type SvgOptions, svgText } from "./render-svg.ts";
export { area, group, line, patch, stroke, text } from "./sketch.ts";
export {
  CLASSES,
  DASHES,
  DRAWING_CSS,
  FACE,
  FRACTION_SIZE,
  GAP_SIZE,
  HALO,
  HATCHES,
  type HatchStyle,
  hatchId,
  INKS,
  type Theme,
  TOKENS,
  TYPES,
  type TypeStyle,
  tokenCss,
  WEIGHTS,
} from "./style.ts";
export { type Flag, flagsOf } from "./tape/flags.ts";
export {
  heightOf,
  onBlade,
  type TapeOptions,
  type TapeScale,
  tapeScale,
  travelAt,
} from "./tape/scale.ts";
export { boxOfText, widthOf } from "./text-size.ts";
export { type GapNow, gapsFromStudy, hardLimits, type Trouble, troublesAt } from "./trouble.ts";
export { titleOf, viewFromAbove, viewFromBehind, viewFromLeft } from "./view.ts";
export { reading, type TextPart, textParts, travelReading } from "./words.ts";
