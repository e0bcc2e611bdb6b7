import { type BuyLine, buyList, placeInWords, type Study, sayFinding } from "@armwright/engine";
import type { ReactNode } from "react";
import { Reading } from "../words/Reading.tsx";

/** What is safe to buy now, in the order to buy; what the rest waits for is said once and pointed at by its number. */
export function BuyTable({ study }: { readonly study: Study }): ReactNode {
  const lines = buyList(study);
  const open = [...new Set(lines.flatMap(({ findings }) => findings))];
  return (
    <section className="buy" aria-labelledby="buy-head">
      <h3 id="buy-head">What is safe to buy now</h3>
      <ol>
        {lines.map((line) => (
          <li key={line.part}>
            <b>{line.part}</b>
            <span className={line.isSettled ? "" : "fault"}>{line.isSettled ? "settled" : "WAIT"}</span>
            <span className="small quiet">buy it when {line.after}</span>
            {!line.isSettled && <p className="small">{whyOpen(line, (finding) => open.indexOf(finding) + 1)}</p>}
          </li>
        ))}
      </ol>
      {open.length > 0 && (
        <>
          <h4>Findings they wait for</h4>
          <ol className="small">
            {open.map((finding, index) => (
              <li key={`${finding.code} ${finding.place}`}>
                {index + 1} <Reading text={sayFinding(finding, study.car.units).sentence} />
              </li>
            ))}
          </ol>
        </>
      )}
    </section>
  );
}

function whyOpen(
  { findings, missing, assumed }: BuyLine,
  numberOf: (finding: BuyLine["findings"][number]) => number,
): string {
  const names = (places: readonly string[]): string => places.map(placeInWords).join("; ");
  return [
    ...(findings.length === 0
      ? []
      : [`${findings.length === 1 ? "Finding" : "Findings"} ${findings.map(numberOf).join(", ")} below.`]),
    ...(missing.length === 0 ? [] : [`Not entered: ${names(missing)}.`]),
    ...(assumed.length === 0 ? [] : [`Assumed, enter your own: ${names(assumed)}.`]),
  ].join(" ");
}
