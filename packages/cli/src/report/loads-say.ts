import { type CaseForces, type CaseNote, sayCaseNote } from "@armwright/engine";
import type { Page } from "../text/page.ts";

/** What has to be known of a case, a sentence each. */
export const sayNote = (note: CaseNote, { units }: Page): string => sayCaseNote(note, units);

/** Force of the part that holds the wheel; null where there is no balance. */
export const carriedBy = ({ balance, held }: CaseForces): number | null =>
  balance.ok ? (balance.forces.struts.find(({ name }) => name === held.carrier)?.magnitude ?? null) : null;
