import type { Primitive } from "@armwright/drawing";
import type { PageSize } from "./page-size.ts";

/** One side of paper: what is drawn on it, in mm from its top left corner, y down. */
export interface Leaf {
  /** Unique in the book and stable, e.g. `car`, `jig`, `part-lower-arm-left`: names files and links. */
  readonly id: string;
  readonly title: string;
  readonly page: PageSize;
  readonly parts: readonly Primitive[];
  /** Printed at true size: it carries a ruler to check the printer by. */
  readonly isTrueSize: boolean;
}

/** Sheet units (mm) a px of the look's line weights and type. */
export const PEN = 0.2646;
