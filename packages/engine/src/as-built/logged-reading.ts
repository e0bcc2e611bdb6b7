/** What a cycle card has a line for. */
export const CARD_KINDS = [
  "hub-height",
  "half-track",
  "camber",
  "toe-at-rim",
  "shock",
  "half-shaft",
  "spline",
  "strap",
  "bump-stop",
  "angle",
  "height",
  "out",
  "along",
] as const;
export type CardKind = (typeof CARD_KINDS)[number];

/** What was read on the finished or tacked car. */
export interface LoggedReading {
  readonly kind: CardKind;
  /** Of an angle the tube that the finder was held along, of a place the point, by their labels. */
  readonly of?: string;
  /** Where the wheel was blocked, travel of the plan, m. */
  readonly travel: number;
  /** SI */
  readonly reads: number;
  /** Two standard deviations, SI; the kind's own where the builder says nothing. */
  readonly plusMinus?: number;
  /** Its place in the document. */
  readonly path: string;
}
