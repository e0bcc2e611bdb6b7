import { formatNumber, LEFT_TO_SOLID, type SpringStudy } from "@armwright/engine";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { Reading } from "../words/Reading.tsx";
import { bare, shown, unitShown } from "../words/shown.ts";

/** Every spring by itself: how long it is at both ends of the travel, and what is left before coil lies on coil. */
export function EachSpring({ springs: made }: { readonly springs: SpringStudy }): ReactNode {
  const units = useBench((state) => state.units);
  const { springs, positions, looseAtDroop } = made;
  const length = (metres: number): ReactNode => <Reading text={bare(metres, "length", units)} />;
  const [droop, , bump] = positions;
  const members = bump?.state.springs.members ?? [];
  const isTight = members.some(({ leftToSolid }) => leftToSolid < LEFT_TO_SOLID);
  const inch = unitShown("length", units);
  return (
    <>
      <h3>Each spring, {inch}</h3>
      <table className="figures">
        <thead>
          <tr>
            <th scope="col">spring</th>
            <th scope="col">rate, {unitShown("rate", units)}</th>
            <th scope="col">free</th>
            <th scope="col">full droop</th>
            <th scope="col">full bump</th>
            <th scope="col">to solid</th>
          </tr>
        </thead>
        <tbody>
          {members.map(({ name, length: atBump, leftToSolid }) => {
            const spring = name === "main" ? springs.main : springs.tender;
            const atDroop = droop?.state.springs.members.find((member) => member.name === name)?.length;
            return (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td>{spring && bare(spring.rate, "rate", units)}</td>
                <td>{spring && length(spring.freeLength)}</td>
                <td>{atDroop !== undefined && length(atDroop)}</td>
                <td>{length(atBump)}</td>
                <td className={leftToSolid < LEFT_TO_SOLID ? "short" : undefined}>
                  {length(Math.max(0, leftToSolid))}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <ul className="facts">
        <li className={looseAtDroop > 0 ? "short" : undefined}>
          {looseAtDroop > 0 ? (
            <>
              At full droop the springs are loose by <Reading text={shown(looseAtDroop, "length", units)} />.
            </>
          ) : (
            "At full droop the springs are held."
          )}
        </li>
        {isTight && (
          <li className="short">
            Common practice leaves <Reading text={shown(LEFT_TO_SOLID, "length", units)} /> before coil lies on coil.
          </li>
        )}
        {springs.tender && (
          <li>
            Both in series: {formatNumber(seriesShare(springs.main.rate, springs.tender.rate), 0)} % of the main
            spring's rate, {shown(1 / (1 / springs.main.rate + 1 / springs.tender.rate), "rate", units)}.
          </li>
        )}
      </ul>
    </>
  );
}

const seriesShare = (main: number, tender: number): number => (100 * tender) / (main + tender);
