import { studyStrength } from "@armwright/engine";
import { type ReactNode, useMemo } from "react";
import { useBench } from "../app/use-bench.ts";
import { shown } from "../words/shown.ts";

/** Whether the parts hold in the load cases, weakest first; found when the hand rests. */
export function StrengthWork(): ReactNode {
  const study = useBench(({ live, moving }) => (moving ? null : live.study));
  const units = useBench((state) => state.units);
  const found = useMemo(() => (study ? studyStrength(study) : null), [study]);
  if (!study) return null;
  if (!found) return <p>Enter the corner weight in the step Stance: load cases count in g of it.</p>;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: nothing in it is pressed, and a sheet that scrolls has to be reached by keys
    <section className="strength-work" aria-label="Strength" tabIndex={0}>
      <h3>Weakest first</h3>
      <table className="compare-table">
        <thead>
          <tr>
            <th scope="col">factor</th>
            <th scope="col">part</th>
            <th scope="col">in the case</th>
            <th scope="col">has to bear</th>
            <th scope="col">may bear</th>
          </tr>
        </thead>
        <tbody>
          {found.checks.map(({ part, label, check, where, factor, loadCase, demand, allowable, dimension }) => (
            <tr key={`${part} ${label} ${check}`}>
              <td>{factor === null ? "–" : factor < 1 ? <b>{factor.toFixed(2)}</b> : factor.toFixed(2)}</td>
              <th scope="row">
                {label}
                {where !== "" && `, ${where}`}
              </th>
              <td>{loadCase ?? "not loaded by these cases"}</td>
              <td>{factor === null ? "" : shown(demand, dimension, units)}</td>
              <td>{shown(allowable, dimension, units)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {found.notEntered.length > 0 && (
        <p className="small">Not judged, because not entered: {found.notEntered.join("; ")}.</p>
      )}
      <p className="small">
        Factors hold for their load case only: common practice, in g. Arms are reckoned as welded frames made from the
        car’s points, shock and stop bearing on plain tube, held against the strength beside a weld. Not covered:
        quality of welds, impact, corrosion, fit and slop, the chassis, rule books and road law. A screen, no approval:
        a licensed engineer decides. Test slowly, inspect, look for cracks.
      </p>
    </section>
  );
}
