import { REQUIREMENTS } from "@armwright/engine";
import type { ReactNode } from "react";
import type { Judgement } from "./judge-job.ts";
import { counted, RULED_OUT } from "./words.ts";

/** What rules the other places out: each counts once, for the first thing that it fails. */
export function RuledOut({ found }: { readonly found: Judgement }): ReactNode {
  const reasons = REQUIREMENTS.filter((code) => found.killedBy[code] > 0);
  const inTheWay = found.inTheWay.filter(({ count }) => count > 0).sort((a, b) => b.count - a.count);
  if (reasons.length === 0) return null;
  return (
    <section className="ruled-out" aria-label="What rules the others out">
      <h3>What rules the others out</h3>
      <table>
        <thead>
          <tr className="quiet small">
            <th scope="col">the first thing that each fails</th>
            <th scope="col">places</th>
          </tr>
        </thead>
        <tbody>
          {reasons.map((code) => (
            <tr key={code}>
              <th scope="row">{RULED_OUT[code]}</th>
              <td>{counted(found.killedBy[code])}</td>
            </tr>
          ))}
          {inTheWay.map(({ id, label, count }) => (
            <tr key={id} className="quiet small">
              <th scope="row">of these, the {label}</th>
              <td>{counted(count)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
