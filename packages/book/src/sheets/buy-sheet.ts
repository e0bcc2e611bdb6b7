import { type BuyLine, buyList, type Study, sayFinding } from "@armwright/engine";
import { flowSheets } from "./flow-sheets.ts";
import type { Makings, Sheet } from "./sheet.ts";

/** What is safe to buy now, in the order to buy, and what the rest waits for. */
export const buySheets = (makings: Makings): readonly Sheet[] =>
  flowSheets(
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
          { head: "part", share: 18, bold: true },
          { head: "by the design", share: 12 },
          { head: "buy it when", share: 20 },
          { head: "what is open", share: 50 },
        ],
        rows: buyList(makings.study).map((line) => [
          line.part,
          line.isSettled ? "settled" : "WAIT",
          line.after,
          whyOpen(line, makings.study),
        ]),
        style: { isForm: true, size: "label" },
      },
    ],
    makings,
  );

function whyOpen({ findings, missing, assumed }: BuyLine, { car }: Study): string {
  const reasons = [
    ...findings.slice(0, 2).map((finding) => sayFinding(finding, car.units).sentence),
    ...(findings.length > 2 ? [`${findings.length - 2} more findings.`] : []),
    ...(missing.length > 0 ? [`Not entered: ${missing.join(", ")}.`] : []),
    ...(assumed.length > 0 ? [`Assumed, enter your own: ${assumed.join(", ")}.`] : []),
  ];
  return reasons.length === 0 ? "nothing" : reasons.join(" ");
}
