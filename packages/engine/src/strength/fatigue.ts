/**
 * Welds under repeated load. EN 1993-1-9:2005: a detail category is the stress range that 2 million repeats may have, the
 * slope is 3; Table 8.4 puts attachments welded across or along a tube or plate at 80 (up to 50 mm long), 71 (to 80 mm),
 * 63 (to 100 mm) and 56 (longer). Category and table from memory of the standard.
 */
export interface DetailClass {
  readonly name: string;
  /** Pa at two million. */
  readonly range: number;
  readonly source: string;
}

export const WELDED_ATTACHMENT: DetailClass = {
  name: "71",
  range: 71e6,
  source: "EN 1993-1-9 Table 8.4, attachment 50 to 80 mm long (from memory), factor 1.35: safe life, grave consequence",
};

/** Partial factor of EN 1993-1-9 Table 3.1, safe life, high consequence. */
export const FATIGUE_FACTOR = 1.35;
/** Below this share of the category (5 million repeats) a steady range does no harm. */
const ENDLESS = (2 / 5) ** (1 / 3);

/** Repeats of one stress range (Pa) that the class gives; null where a steady one goes on for ever. */
export function repeatsOf(range: number, detail: DetailClass): number | null {
  const allowed = detail.range / FATIGUE_FACTOR;
  if (range <= ENDLESS * allowed) return null;
  return 2e6 * (allowed / range) ** 3;
}
