import type { Primitive } from "@armwright/drawing";
import { type BuyLine, buyList, type Study, sayFinding } from "@armwright/engine";
import { table } from "../paper/table.ts";
import { paragraph } from "../paper/words.ts";
import type { Makings, Sheet } from "./sheet.ts";

/** What is safe to buy now, in the order to buy, and what the rest waits for. */
export function buySheets(makings: Makings): readonly Sheet[] {
  const { room, study } = makings;
  const intro = paragraph(
    "In the order to buy. Settled: nothing in the design speaks against it; it is still your money, and your look at the part.",
    room.x,
    room.y,
    room.width,
    { ink: "ink-2" },
  );
  const parts: Primitive[] = [...intro.parts];
  const list = table(
    [
      { head: "part", share: 20, bold: true },
      { head: "by the design", share: 13 },
      { head: "buy it when", share: 20 },
      { head: "what is open", share: 47 },
    ],
    buyList(study).map((line) => [line.part, line.isSettled ? "settled" : "WAIT", line.after, whyOpen(line, study)]),
    { left: room.x, top: intro.bottom + 2, width: room.width, floor: room.y + room.height },
    { isForm: true, size: "label" },
  );
  parts.push(...list.parts);
  return [{ id: "buy", title: "What is safe to buy now", note: "common practice in the order", parts }];
}

function whyOpen({ findings, missing, assumed }: BuyLine, { car }: Study): string {
  const reasons = [
    ...findings.slice(0, 2).map((finding) => sayFinding(finding, car.units).sentence),
    ...(findings.length > 2 ? [`${findings.length - 2} more findings.`] : []),
    ...(missing.length > 0 ? [`Not entered: ${missing.join(", ")}.`] : []),
    ...(assumed.length > 0 ? [`Assumed, enter your own: ${assumed.join(", ")}.`] : []),
  ];
  return reasons.length === 0 ? "nothing" : reasons.join(" ");
}
