import { type BuyLine, buyList, placeInWords, sayFinding } from "@armwright/engine";
import type { Block } from "../paper/flow.ts";
import { flowSheets } from "./flow-sheets.ts";
import type { Makings, Sheet } from "./sheet.ts";

/** What is safe to buy now, in the order to buy, and what the rest waits for. */
export function buySheets(makings: Makings): readonly Sheet[] {
  const { study } = makings;
  const lines = buyList(study);
  const open = [...new Set(lines.flatMap(({ findings }) => findings))];
  const findings: Block[] = [
    { kind: "head", words: "Findings they wait for" },
    {
      kind: "table",
      columns: [
        { head: "no.", share: 6, bold: true, align: "end" },
        { head: "", share: 94 },
      ],
      rows: open.map((finding, index) => {
        const { sentence, remedy } = sayFinding(finding, study.car.units);
        return [`${index + 1}`, [sentence, remedy].filter((words) => words).join(" ")];
      }),
      style: { size: "label" },
    },
  ];
  return flowSheets(
    { id: "buy", title: "What is safe to buy now", note: "common practice in the order" },
    [
      {
        kind: "words",
        words:
          "In the order to buy. Settled: nothing in the design speaks against it; it is still your money, and your look at the part.",
        style: { ink: "ink-2" },
      },
      {
        kind: "table",
        columns: [
          { head: "part", share: 20, bold: true },
          { head: "by the design", share: 13 },
          { head: "buy it when", share: 23 },
          { head: "what is open", share: 44 },
        ],
        rows: lines.map((line) => [
          line.part,
          line.isSettled ? "settled" : "WAIT",
          line.after,
          whyOpen(line, (finding) => open.indexOf(finding) + 1),
        ]),
        style: { isForm: true, size: "label" },
      },
      ...(open.length > 0 ? findings : []),
    ],
    makings,
  );
}

function whyOpen(
  { findings, missing, assumed }: BuyLine,
  numberOf: (finding: BuyLine["findings"][number]) => number,
): string {
  const names = (places: readonly string[]): string => places.map(placeInWords).join("; ");
  const reasons = [
    ...(findings.length === 0
      ? []
      : [`${findings.length === 1 ? "Finding" : "Findings"} ${findings.map(numberOf).join(", ")}.`]),
    ...(missing.length > 0 ? [`Not entered: ${names(missing)}.`] : []),
    ...(assumed.length > 0 ? [`Assumed, enter your own: ${names(assumed)}.`] : []),
  ];
  return reasons.length === 0 ? "nothing" : reasons.join(" ");
}
