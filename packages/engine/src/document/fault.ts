/** What is wrong with a document. Each has its sentence in fault-words.ts. */
export type FaultCode =
  | "bad-json"
  | "nested-too-deep"
  | "not-a-car"
  | "bad-version"
  | "newer-version"
  | "migrated"
  | "duplicate-key"
  | "unknown-key"
  | "missing"
  | "wrong-type"
  | "unknown-word"
  | "empty-text"
  | "bad-quantity"
  | "too-large"
  | "not-positive"
  | "negative"
  | "bad-thread"
  | "zero-direction"
  | "coincide"
  | "zero-axis"
  | "on-axis"
  | "shock-lengths"
  | "loaded-over-free"
  | "not-below"
  | "not-above"
  | "both-given"
  | "wrong-side"
  | "unknown-pivot"
  | "wrong-bolt-body"
  | "wrong-body"
  | "link-count"
  | "mesh-file"
  | "point-count"
  | "duplicate-name"
  | "stop-absent"
  | "gas-too-small"
  | "other-kind"
  | "same-body"
  | "cannot-assemble"
  | "cannot-move"
  | "fitted-length";

/** One fault as data: where, what was found, what would be right. Words are made by `sayFault`. */
export interface Fault {
  readonly code: FaultCode;
  /** E.g. `shock.upper.y`; empty for the document as a whole. */
  readonly path: string;
  /** Counted from 1; left out where the document did not come as text. */
  readonly line?: number;
  readonly column?: number;
  /** What stands there, as typed. */
  readonly found?: string;
  /** What kind of thing belongs there, or the limit that was passed. */
  readonly expected?: string;
  /** What was probably meant. */
  readonly suggestion?: string;
  /** The other place that it goes against. */
  readonly other?: string;
  /** The words or names to choose from. */
  readonly options?: readonly string[];
}

const LONGEST_FOUND = 40;

/** A value as it would be typed, cut short where long. */
export function quote(value: unknown): string {
  if (Number.isNaN(value)) return "no number";
  if (value === Number.POSITIVE_INFINITY || value === Number.NEGATIVE_INFINITY) return "a number without end";
  if (typeof value === "number") return String(value);
  if (Array.isArray(value)) return "a list";
  if (typeof value === "object" && value !== null) return "an object in braces";
  const text = JSON.stringify(value) ?? "nothing";
  return text.length > LONGEST_FOUND ? `${text.slice(0, LONGEST_FOUND - 1)}…` : text;
}
