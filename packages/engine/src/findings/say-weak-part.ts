import type { SaidFinding } from "./say-finding.ts";

type Words = Record<string, string>;

/** Sentences on parts that do not bear a load case. */
export const WEAK_PART_SENTENCES = {
  "part-weak": (w: Words): SaidFinding => ({
    sentence: `${capital(w["part"])}${w["where"] ? ` ${w["where"]}` : ""}: factor ${w["factor"]} in the case "${w["case"]}" (${w["load"]}; ${w["from"]}). It has to bear ${w["demand"]} and may bear ${w["allowable"]}: ${w["basis"]}.`,
    remedy: `${helpOf(w)} Factors hold for the stated cases only; this is a screen, a licensed engineer decides.`,
  }),
};

/** What was reckoned to help, or in general what does. */
function helpOf(w: Words): string {
  const sizes = [
    tube(w, "main", "the arm's own tubes"),
    tube(w, "cross", "its cross tubes"),
    tube(w, "under", "its second tubes"),
  ]
    .filter((each) => each !== "")
    .join(", ");
  const ways = [
    sizes && `make ${sizes}${bought(w, "size")}`,
    w["gussetThickness"] &&
      `weld a plate ${w["gussetThickness"]} thick and ${w["gussetDepth"]} deep on edge under it, ${w["gussetReach"]} either way of the mount${bought(w, "gusset")}`,
    w["secondDiameter"] &&
      `weld a second tube ${size(w, "second")} under each tube that shock or stop press on, ${w["secondDrop"]} below it, with a post${bought(w, "second")}`,
  ].filter((each) => each);
  return ways.length > 0 ? `${capital(ways.join("; or "))}.` : `What would help: ${w["help"]}.`;
}

const tube = (w: Words, role: string, name: string): string => (w[`${role}Diameter`] ? `${name} ${size(w, role)}` : "");

/** `1 1/2 × .120 in` out of a diameter and a wall with their units. */
const size = (w: Words, role: string): string =>
  `${w[`${role}Diameter`]?.replace(/ (?:in|mm)$/, "")} × ${w[`${role}Wall`]}`;

const bought = (w: Words, way: string): string =>
  ` (then factor ${w[`${way}Factor`] ?? "far above 1"}, ${w[`${way}Added`]} more)`;

const capital = (text: string | undefined): string => (text ? text.charAt(0).toUpperCase() + text.slice(1) : "");
