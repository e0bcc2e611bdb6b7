import { type DirectionReport, type Finding, type Study, sayFinding } from "@armwright/engine";
import type { Page } from "../text/page.ts";
import { hang } from "../text/wrap.ts";

/** Findings on what ends the travel, or on what is left there; the others are no matter of one direction's stops. */
const ON_STOPS: ReadonlySet<Finding["code"]> = new Set([
  "past-at-ride",
  "stop-past-at-ride",
  "another-part-stops-first",
  "limit-before-stop",
  "limit-close",
  "limit-uncertain",
  "stop-does-not-work",
  "no-part-stops-the-wheel",
  "shock-is-the-stop",
  "bump-stop-touched-at-ride",
  "clearance-short",
  "travel-short",
  "ground-clearance-short",
]);

/** What to change first in one direction: the worst finding that belongs to it, with its remedy. */
export function changeFirst(report: DirectionReport, findings: Study["findings"], page: Page): readonly string[] {
  const worst = findings.find((finding) => finding.gravity !== "note" && belongsTo(finding, report));
  if (!worst) return hang("Change first: ", "nothing stops the wheel before your stop.", page.width);
  const { sentence, remedy } = sayFinding(worst, page.units);
  return hang("Change first: ", `${sentence} ${remedy}`, page.width);
}

function belongsTo({ code, travel, values }: Finding, { direction, limits }: DirectionReport): boolean {
  if (!ON_STOPS.has(code)) return false;
  const { way, limit, part } = values;
  if (way !== undefined) return way === direction;
  if (code === "stop-past-at-ride") return (part === "strap") === (direction === "droop");
  if (code === "bump-stop-touched-at-ride" || code === "ground-clearance-short") return direction === "bump";
  // What is past at ride height stands in the way of both directions.
  if (code === "past-at-ride") return limits.some(({ label, pastAtRide }) => pastAtRide && label === limit);
  return travel !== undefined && travel !== 0 && travel > 0 === (direction === "bump");
}
