import type { StrengthStudy } from "@armwright/engine";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { capital } from "../form/schema-fields.ts";
import { shownFigures, threeFigures } from "../words/three-figures.ts";
import { massWords } from "./tube-words.ts";

/** What each part weighs, what swings most at a weld, and what all of it takes for granted. */
export function Masses({ found }: { readonly found: StrengthStudy }): ReactNode {
  const units = useBench((state) => state.units);
  return (
    <>
      <h3>
        What they weigh <small>one of each, tubes alone</small>
      </h3>
      <table className="compare-table">
        <tbody>
          {found.masses.map(({ part, label, mass }) => (
            <tr key={part}>
              <th scope="row">{capital(label)}</th>
              <td>{massWords(mass, units)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <h3>Blow after blow</h3>
      <ul className="small plain">
        {found.arms.flatMap(({ frame, fatigue }) =>
          fatigue
            ? [
                <li key={frame.arm}>
                  {capital(fatigue.label)}
                  {fatigue.where !== "" && `, ${fatigue.where}`}: the stress swings by{" "}
                  {shownFigures(fatigue.range, "stress", units)} from hanging free to {fatigue.loadCase};{" "}
                  {fatigue.repeats === null
                    ? "no crack is to be reckoned with at that"
                    : `a crack has to be reckoned with after about ${threeFigures(10 ** Math.floor(Math.log10(Math.max(fatigue.repeats, 1))))} such blows, give or take`}
                  . Welded attachment, EN 1993-1-9 detail class 71, from memory. How often it comes is unknown.
                </li>,
              ]
            : [],
        )}
      </ul>
      <details className="small">
        <summary className="pressable">What this takes for granted</summary>
        <ul className="plain">
          <li>A factor is as good as its load case: common practice, in g, yours to change in the step Loads.</li>
          <li>
            Arms are reckoned as welded frames of straight tubes, stiff at every node. Where you drew none, one is made
            from the car’s points: its tubes, cross tubes by the mounts, shock and stop bearing on plain tube.
          </li>
          <li>Beside a weld a tube is held against its strength as welded, not as bought.</li>
          <li>Forces at rest: stiff, weightless arms, joints without friction or slop.</li>
        </ul>
      </details>
    </>
  );
}
