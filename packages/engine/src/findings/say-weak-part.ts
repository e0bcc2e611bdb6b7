import type { SaidFinding } from "./say-finding.ts";

type Words = Record<string, string>;

/** Sentences on parts that do not bear a load case. */
export const WEAK_PART_SENTENCES = {
  "part-weak": (w: Words): SaidFinding => ({
    sentence: `${capital(w["part"])}${w["where"] ? ` ${w["where"]}` : ""}: factor ${w["factor"]} in the case "${w["case"]}" (${w["load"]}; ${w["from"]}). It has to bear ${w["demand"]} and may bear ${w["allowable"]}: ${w["basis"]}.`,
    remedy: `${helpOf(w)} Factors hold for the stated cases only; this is a screen, a licensed engineer decides.`,
  }),
};

/** What was reckoned to help; else what was tried and how far it comes; else in general what does. */
function helpOf(w: Words): string {
  const sizes = tubes(w, "size");
  const larger = (way: string): string => (tubes(w, way) ? ` and make ${tubes(w, way)}` : "");
  const ways = [
    sizes && `make ${sizes}${bought(w, "size")}`,
    w["gussetThickness"] &&
      `weld a plate ${w["gussetThickness"]} thick and ${w["gussetDepth"]} deep on edge under it, ${w["gussetReach"]} either way of the mount${larger("gusset")}${bought(w, "gusset")}`,
    w["secondDiameter"] &&
      `weld a second tube ${size(w, "second")} under each tube that shock or stop press on, ${w["secondDrop"]} below it, with a post${larger("second")}${bought(w, "second")}`,
  ].filter((each) => each);
  if (ways.length > 0) return `${capital(ways.join("; or "))}.`;
  const tried = [
    w["sizeTried"] && `larger tubes come to factor ${w["sizeTried"]}`,
    w["gussetTried"] && `a plate under the mount with larger tubes to ${w["gussetTried"]}`,
    w["secondTried"] && `a second tube with larger ones to ${w["secondTried"]}`,
  ].filter((each) => each);
  if (tried.length === 0) return `What would help: ${w["help"]}.`;
  return `Tried, and not enough: ${tried.join(", ")}. Bring shock and stop nearer to the wheel, or soften the landing.`;
}

const tubes = (w: Words, way: string): string =>
  [
    tube(w, `${way}Main`, "the arm's own tubes"),
    tube(w, `${way}Cross`, "its cross tubes"),
    tube(w, `${way}Under`, "its second tubes"),
  ]
    .filter((each) => each !== "")
    .join(", ");

const tube = (w: Words, role: string, name: string): string => (w[`${role}Diameter`] ? `${name} ${size(w, role)}` : "");

/** `1 1/2 × .120 in` out of a diameter and a wall with their units. */
const size = (w: Words, role: string): string =>
  `${w[`${role}Diameter`]?.replace(/ (?:in|mm)$/, "")} × ${w[`${role}Wall`]}`;

const bought = (w: Words, way: string): string =>
  ` (then factor ${w[`${way}Factor`] ?? "far above 1"}, ${w[`${way}Added`]} more)`;

const capital = (text: string | undefined): string => (text ? text.charAt(0).toUpperCase() + text.slice(1) : "");
