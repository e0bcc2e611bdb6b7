import { type Box, type Primitive, reading } from "@armwright/drawing";
import { type Dimension, formatLength, NO_VALUE, type Study, unitOf } from "@armwright/engine";
import type { CarDocument } from "@armwright/engine/document";
import type { CutList } from "../cut/cut-list.ts";
import type { SheetFacts } from "../paper/frame.ts";
import type { PageSize } from "../paper/page-size.ts";

/** What every sheet is made from: one study, one paper. */
export interface Makings {
  readonly study: Study;
  readonly document: CarDocument;
  /** The tubes of both sides, as they are cut. */
  readonly cuts: CutList;
  readonly page: PageSize;
  /** Where a sheet's own contents may stand on it, mm. */
  readonly room: Box;
  readonly facts: SheetFacts;
}

/** A sheet before it is framed and numbered. */
export interface Sheet {
  /** Unique in the book and stable: names files and links. */
  readonly id: string;
  readonly title: string;
  /** At the right of the head, e.g. `scale 1 : 8, lengths in inches`. */
  readonly note: string;
  readonly parts: readonly Primitive[];
  readonly isTrueSize?: boolean;
  /** Paper of its own; the book's where left out. */
  readonly page?: PageSize;
}

/** `lengths in inches`, as each head says it. */
export const lengthsIn = ({ study }: Makings): string =>
  study.car.units === "metric" ? "lengths in mm" : "lengths in inches";

/** A length as a tape reads it, its sheet's head saying the unit. */
export const tape = ({ study }: Makings, metres: number | null, denominator: 16 | 32 = 16): string =>
  metres === null ? NO_VALUE : formatLength(metres, study.car.units, { denominator }).replace("-", "−");

/** A value with its unit, in the document's units. */
export function said({ study }: Makings, value: number | null, dimension: Dimension): string {
  const number = reading(value, dimension, study.car.units);
  const unit = unitOf(dimension, study.car.units);
  return dimension === "angle" || unit === "" || value === null ? number : `${number} ${unit}`;
}
