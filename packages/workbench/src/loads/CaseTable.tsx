import { type CaseGround, type LoadCase, placeTravel } from "@armwright/engine";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { setTravel } from "../store/bench.ts";
import { Reading } from "../words/Reading.tsx";
import { shownTravel } from "../words/shown.ts";
import { chooseCase } from "./loads-store.ts";
import { factorWords } from "./words.ts";

/** The table of cases: pressing one chooses it and brings the wheel to where it stands. */
export function CaseTable({ ground, chosen }: { readonly ground: CaseGround; readonly chosen: string }): ReactNode {
  const units = useBench((state) => state.units);
  const choose = ({ name, at }: LoadCase): void => {
    chooseCase(name);
    setTravel(placeTravel(at, ground.stops));
  };
  return (
    <table className="compare-table cases">
      <thead>
        <tr>
          <th scope="col">case</th>
          <th scope="col">wheel at</th>
          <th scope="col">up, g</th>
          <th scope="col">inward, g</th>
          <th scope="col">forward, g</th>
        </tr>
      </thead>
      <tbody>
        {ground.loads.cases.map((loadCase) => {
          const { name, at, vertical, inward, forward, from, isLimited } = loadCase;
          return (
            <tr key={name} className={name === chosen ? "is-chosen" : ""}>
              <th scope="row">
                <button type="button" aria-pressed={name === chosen} onClick={() => choose(loadCase)}>
                  {name}
                  {from === "common practice" ? "" : " *"}
                </button>
              </th>
              <td>
                <Reading text={shownTravel(placeTravel(at, ground.stops), units)} />
              </td>
              <td>{factorWords(vertical)}</td>
              <td>{factorWords(inward)}</td>
              <td>
                {factorWords(forward)}
                {isLimited && forward !== 0 && <span className="quiet"> at most</span>}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
