import { type Box, type TapeScale, tapeScale } from "@armwright/drawing";
import type { Study } from "@armwright/engine";
import type { Size } from "./use-size.ts";

/** Flags, blade and loupe, px. */
export const TAPE_WIDTH = 386;
/** Space over the tape for the reading of the travel. */
const TAPE_TOP = 68;
/** For the numbers of the charts' axes, and their units beneath them. */
const TAPE_FOOT = 34;
export const CHART_WIDTH = 57;
export const CHART_GAP = 16;
/** Of a chart's head, left clear before the next one. */
export const HEAD_GAP = 4;
/** For the numerals at the first chart's left edge. */
export const NUMERALS = 40;

/** Where tape, drawing and charts stand on a board. */
export interface BoardLayout {
  readonly tape: Box;
  readonly scale: TapeScale;
  readonly chartsWidth: number;
  /** Of the drawing, right of the tape. */
  readonly room: Size;
}

export interface TapeRange {
  readonly lowest: number;
  readonly highest: number;
}

/** `charts`: how many stand beside the drawing. The study is in the units that are shown. */
export function layBoard(study: Study, size: Size, charts: number, range: TapeRange): BoardLayout {
  const tape = { x: 0, y: TAPE_TOP, width: TAPE_WIDTH, height: size.height - TAPE_TOP - TAPE_FOOT };
  const chartsWidth = charts === 0 ? 0 : charts * (CHART_WIDTH + CHART_GAP) + NUMERALS;
  return {
    tape,
    scale: tapeScale(study, tape, { range }),
    chartsWidth,
    room: { width: size.width - TAPE_WIDTH - chartsWidth, height: size.height },
  };
}
