import type { CarDocument } from "@armwright/engine/document";

/**
 * sound: a car. faulty: work in progress, kept and edited with its faults. broken: cannot be edited without losing
 * something of what stands there (not JSON, a key twice, a newer form, not text): only mended or replaced as a whole.
 */
export type Condition = "sound" | "faulty" | "broken";

export interface SaidFault {
  readonly code: string;
  readonly path: string;
  readonly says: string;
  readonly line?: number;
  readonly column?: number;
}

export interface Judgement {
  readonly condition: Condition;
  readonly faults: readonly SaidFault[];
  /** What edits are made to, in the present form; absent where broken. */
  readonly fields?: CarDocument;
}

/** Reading and writing of documents, handed in: the keeping of files is the same for all. */
export interface Forms {
  readonly judge: (text: string) => Judgement;
  readonly write: (fields: CarDocument) => string;
}

/** Largest car document, bytes. */
export const LARGEST_DOCUMENT = 1_000_000;

export const unreadable = (because: string): Judgement => ({
  condition: "broken",
  faults: [{ code: "unreadable", path: "", says: `the file cannot be read: ${because}` }],
});
