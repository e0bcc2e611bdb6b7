import { linkageForm } from "../linkages/kinds.ts";
import type { LinkageDocument, RodEndsDocument } from "../schema.ts";
import type { Typist } from "./typed.ts";

/** One rod end a pivot, all of one size as they are bought by the dozen; a left hand at each link's outer end makes it a turnbuckle. */
export function startingRodEnds({ system }: Typist, linkage: LinkageDocument): RodEndsDocument {
  const thread = system === "metric" ? "M20x1.5" : "3/4-16";
  const pivots = linkageForm(linkage.kind)?.pivots(linkage) ?? [];
  return Object.fromEntries(
    pivots.map(({ name, end, along }) => [
      name,
      { misalignmentLimit: 14, thread, hand: "link" in along && end === "outer" ? "left" : "right" },
    ]),
  );
}
