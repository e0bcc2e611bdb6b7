import type { Primitive } from "./primitive.ts";
import type { GapNow } from "./trouble.ts";

/** What may be asked of a view. Everything may be left out. */
export interface ViewOptions {
  /** Place in the document that is held, e.g. `linkage.upperLink.inner`, `strap`; drawn violet. */
  readonly held?: string;
  /** Gaps between things at this position; without them only what the study knows of it is marked. */
  readonly gaps?: readonly GapNow[];
  readonly ghosts?: boolean;
  readonly dimensions?: boolean;
  /** Notes about parts; those about trouble are always drawn. */
  readonly notes?: boolean;
  /** Name of the view in its corner. */
  readonly title?: boolean;
  /** The corner is the right one, drawn as a left one: the view is named as what it is, one seen in a mirror. */
  readonly isMirrored?: boolean;
  /** Secondary views only: `full` for one that is drawn large. */
  readonly detail?: "full" | "small";
  /** Height of the ground under this wheel, m, where it is not at the loaded tyre's foot: a wheel in the air. */
  readonly groundZ?: number;
  /** Drawn over everything, e.g. what a sheet's step wants to point at. */
  readonly over?: readonly Primitive[];
}
