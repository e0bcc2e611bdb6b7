import { formatNumber, type StrengthStudy, type UnitSystem } from "@armwright/engine";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { Reading } from "../words/Reading.tsx";
import { shown } from "../words/shown.ts";
import { showCase, useStrength } from "./strength-store.ts";

/** Smaller turns than a hundredth of a degree are none, rad. */
const NOTHING = (0.005 * Math.PI) / 180;

/** Toe and camber that the bending costs in each case: a press shows the arm bent in it. */
export function WheelGives({
  found,
  tyreRadius,
}: {
  readonly found: StrengthStudy;
  readonly tyreRadius: number;
}): ReactNode {
  const units = useBench((state) => state.units);
  const chosen = useStrength((state) => state.chosen);
  if (found.give.length === 0) return null;
  return (
    <>
      <h3>
        What it costs the wheel <small>bent arms and stretched links alone</small>
      </h3>
      <table className="compare-table gives">
        <thead>
          <tr>
            <th scope="col">case</th>
            <th scope="col">toe</th>
            <th scope="col">across the tyre</th>
            <th scope="col">camber</th>
          </tr>
        </thead>
        <tbody>
          {found.give.map(({ loadCase, toe, camber }) => (
            <tr key={loadCase} className={loadCase === chosen ? "is-present" : ""} data-give={loadCase}>
              <th scope="row">
                <button type="button" className="to-case" onClick={() => showCase(loadCase)}>
                  {loadCase}
                </button>
              </th>
              <td>{turnWords(toe, "in", "out")}</td>
              <td>
                <Reading text={acrossWords(2 * tyreRadius * Math.sin(Math.abs(toe)), units)} />
              </td>
              <td>{turnWords(camber, "top out", "top in")}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="small quiet">Spindle, rod ends, tabs and chassis are taken as stiff: the car’s own give is more.</p>
    </>
  );
}

const turnWords = (radians: number, plus: string, minus: string): string =>
  Math.abs(radians) < NOTHING
    ? "none"
    : `${radians > 0 ? plus : minus} ${formatNumber((Math.abs(radians) * 180) / Math.PI, 2)}°`;

const acrossWords = (metres: number, units: UnitSystem): string => {
  const text = shown(metres, "length", units, { denominator: 32 });
  return /^0 /.test(text) ? "" : text;
};
