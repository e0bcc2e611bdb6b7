import type { Page } from "../text/page.ts";
import { type Column, table } from "../text/table.ts";
import { hang } from "../text/wrap.ts";
import type { Comparison } from "./compare.ts";

/** Two kinds of linkage by what has to be made for them, and what must be held true in a jig. */
export function partLines({ parts: { a, b } }: Comparison, page: Page): readonly string[] {
  const rows = (
    [
      ["linkage", a.title, b.title],
      ["arms", a.arms, b.arms],
      ["links", a.links, b.links],
      ["rod ends", a.rodEnds, b.rodEnds],
      ["U-joints", a.uJoints, b.uJoints],
      ["chassis brackets", a.chassisPivots, b.chassisPivots],
    ] as const
  ).map(([name, inA, inB]) => ({ cells: [name, String(inA), String(inB)] }));
  const columns: readonly Column[] = [
    { head: [""], align: "left" },
    { head: ["A"], align: "left" },
    { head: ["B"], align: "left", gives: true },
  ];
  const jigs = (lead: string, list: readonly string[]) => [
    `${lead} wants in a jig (common practice):`,
    ...list.flatMap((words) => hang("  - ", words, page.width)),
  ];
  return [...table(columns, rows, page.width), ...jigs("A", a.jigged), ...jigs("B", b.jigged)];
}
