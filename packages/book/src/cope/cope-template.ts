import { type Box, line, type PathStep, type Primitive, polyline, spot, stroke, text } from "@armwright/drawing";
import { wrapped } from "../paper/words.ts";
import type { CopePoint } from "./cope-line.ts";

/** A coped end as paper to wrap round the tube, true size, mm. */
export interface CopeTemplate {
  readonly parts: readonly Primitive[];
  readonly box: Box;
  /** From the template's straight edge back to the origin that the tube's length counts to, mm. */
  readonly edgeToOrigin: number;
}

export interface CopeTemplateFacts {
  /** Printed on it: which tube, which end. */
  readonly title: string;
  /** Under the title, e.g. `1 1/2 × .120, onto lower arm front tube`. */
  readonly under: string;
  /** mm */
  readonly outerDiameter: number;
}

/** Paper between the shortest part of the cut and the words under it, mm: room for the marks. */
const MARKS = 6.5;
/** From one line of words to the next, mm. */
const LEAD = 4.7;
/** Beyond the seam, to glue the paper's ends over each other, mm. */
const FLAP = 6;

/**
 * The cut line rolled out: across the paper the way round the tube's outside, from the seam; up the paper along the tube,
 * the cut at the top. What is above the line is ground away. (left, top): where it stands on the sheet, mm.
 */
export function copeTemplate(
  cope: readonly CopePoint[],
  facts: CopeTemplateFacts,
  left: number,
  top: number,
): CopeTemplate {
  const round = Math.PI * facts.outerDiameter;
  const cuts = cope.map(({ cut }) => (cut === null ? null : cut * 1000));
  const known = cuts.filter((cut): cut is number => cut !== null);
  const highest = Math.max(...known);
  const lowest = Math.min(...known);
  // Where the tube passes beside everything it is left long: the paper ends a little above the highest cut.
  const ceiling = highest + 4;
  // The words stay on the paper that is wrapped round, however thin the tube.
  const words = [
    ...wrapped(facts.title, round - 4, "text").map((line) => ({ line, style: { size: "text", bold: true } as const })),
    ...wrapped(facts.under, round - 4, "label").map((line) => ({ line, style: {} })),
    ...wrapped("this edge square round the tube; seam at both paper ends", round - 4, "label").map((line) => ({
      line,
      style: { ink: "ink-2" } as const,
    })),
  ];
  const edge = lowest - MARKS - words.length * LEAD - 1.5;
  const height = ceiling - edge;
  const x = (index: number): number => left + (round * index) / (cope.length - 1);
  const y = (along: number): number => top + (ceiling - along);
  const bottom = top + height;
  const right = left + round;
  const steps = polyline(cuts.map((cut, index) => spot(x(index), y(cut ?? ceiling))));
  const outline: PathStep[] = [
    ...steps,
    { to: "line", at: spot(right, bottom) },
    { to: "line", at: spot(left, bottom) },
    { to: "close" },
  ];
  const quarters = [0.25, 0.5, 0.75].map((share) => ({ at: left + round * share, name: share === 0.5 ? "half" : "" }));
  const parts: Primitive[] = [
    line("cut", outline, { weight: "thin" }),
    line(
      "flap",
      polyline([
        spot(right, bottom - 2),
        spot(right + FLAP, bottom - 5),
        spot(right + FLAP, y(lowest)),
        spot(right, y(lowest)),
      ]),
      {
        weight: "hair",
        dash: "short",
      },
    ),
    text("mark", spot(right + FLAP - 1.2, bottom - 7), "glue", { ink: "ink-2", turn: -Math.PI / 2 }),
    // Quarters of the way round: marked above the words and at the straight edge, not through the words.
    ...quarters.flatMap(({ at, name }) => [
      stroke("mark", spot(at, y(lowest) + MARKS - 1), spot(at, y(lowest) + 1), { weight: "thin" }),
      stroke("mark", spot(at, bottom), spot(at, bottom - 1.2), { weight: "thin" }),
      ...(name === "" ? [] : [text("mark", spot(at + 1, y(lowest) + 4), name, { ink: "ink-2", halo: "paper" })]),
    ]),
    text("mark", spot(left + 1, y(lowest) + 4), "seam", { ink: "ink-2", halo: "paper" }),
    ...words.map(({ line: each, style }, index) =>
      text("mark", spot(left + 2, y(lowest) + MARKS + LEAD * (index + 0.8)), each, {
        ink: "ink",
        halo: "paper",
        ...style,
      }),
    ),
  ];
  return {
    parts,
    box: { x: left, y: top, width: round + FLAP, height },
    edgeToOrigin: -edge,
  };
}
