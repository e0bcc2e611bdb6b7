import type { SaidFinding } from "./say-finding.ts";

type Words = Record<string, string>;

/** Sentences on strap and bump stop. */
export const STOPS_SENTENCES = {
  "strap-stretches-past": (w: Words): SaidFinding => ({
    sentence: `Snatched with ${w["force"]} the strap stretches ${w["stretch"]}: ${w["limit"]} is reached, ${w["past"]} of wheel travel too far.`,
    remedy: `Make the strap ${w["shorter"]} shorter, or mount it farther out. Tape it again after the first outing.`,
  }),
  "strap-across": (w: Words): SaidFinding => ({
    sentence: `When taut the strap pulls ${w["angle"]} across its mount's path: more than ${w["most"]} wastes pull and loads its tabs sideways (from memory).`,
    remedy: "Move its upper hole so that it lies more in line with the way the wheel falls.",
  }),
  "bump-stop-off-square": (w: Words): SaidFinding => ({
    sentence: `The bump stop lands ${w["angle"]} off square, ${w["travel"]} up; up to ${w["most"]} is common practice.`,
    remedy: "Lean its foot, or move it, so that it points along the way the strike plate comes.",
  }),
  "bump-stop-overrun": (w: Words): SaidFinding => ({
    sentence: `Dropped flat from ${w["height"]} the bump stop goes solid with ${w["left"]} left over; it takes ${w["takes"]}.`,
    remedy: `It is good for ${w["most"]}, tyre left out. Take a longer or stiffer stop, land it farther out on the arm, or stiffen springs and bump damping.`,
  }),
};
