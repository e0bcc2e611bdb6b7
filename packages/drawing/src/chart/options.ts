import type { Cycle, Study } from "@armwright/engine";
import type { TapeScale } from "../tape/scale.ts";

export interface ChartOptions {
  /** The tape's scale, to which the chart is bolted. */
  readonly scale: TapeScale;
  /** The wheel now, m. */
  readonly travel: number;
  /** Moved through the tape's travels by `chartCycle`; made here when it is left out. */
  readonly cycle?: Cycle;
  /** A second study laid over in pencil, on the same scale; its cycle likewise. */
  readonly over?: { readonly study: Study; readonly cycle?: Cycle };
  /** Between what the first quantity lies, by travel from the lowest, SI: hatched as uncertain. */
  readonly between?: readonly { readonly travel: number; readonly low: number | null; readonly high: number | null }[];
  /** In place of the quantities' short names. */
  readonly title?: string;
  /** How far name and reading may reach from the frame's left edge, sheet units: to the next chart. */
  readonly room?: number;
  /** `stops.bump` or `stops.droop` while it is in the hand. */
  readonly held?: string;
  /** The tape's numerals at the chart's left edge, for the first of a row. */
  readonly numerals?: boolean;
}
