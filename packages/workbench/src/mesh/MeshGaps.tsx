import type { UnitSystem } from "@armwright/engine";
import { type ReactNode, useMemo } from "react";
import { GravityMark } from "../app/Mark.tsx";
import { useBench } from "../app/use-bench.ts";
import { bench, setTravel } from "../store/bench.ts";
import { Reading } from "../words/Reading.tsx";
import { shown, shownLength, shownTravel } from "../words/shown.ts";
import { useMesh } from "./mesh-store.ts";
import { type LeastGap, leastGaps } from "./samples.ts";

/** How near each moving part comes to the scan between the stops, and what is too near. */
export function MeshGaps(): ReactNode {
  const measured = useMesh((state) => state.measured);
  const study = useBench(({ live }) => live.study);
  const units = useBench((state) => state.units);
  const rows = useMemo(() => (measured ? leastGaps(measured.samples) : []), [measured]);
  if (!measured) return <p className="small quiet">Gaps are being measured.</p>;
  const wanted = measured.study.car.chassisMesh?.clearance ?? 0;
  const close = rows.filter(({ gap }) => gap !== null && gap < wanted);
  return (
    <>
      {close.length > 0 && (
        <ol className="findings-list">
          {close.map((row) => (
            <li key={row.id}>
              <button type="button" className="finding" onClick={() => goTo(row)}>
                <GravityMark gravity={isIn(row) ? "must" : "mind"} />
                <span>
                  <b>{isIn(row) ? "Must." : "Mind."}</b> <Reading text={sentenceOf(row, wanted, units)} />
                </span>
              </button>
            </li>
          ))}
        </ol>
      )}
      <table className="stops-table mesh-gaps">
        <caption className="unseen">Least gaps to the scan between the stops</caption>
        <tbody>
          <tr className="head">
            <th scope="col">to the scan</th>
            <th scope="col">least gap</th>
            <th scope="col">at</th>
            <th scope="col">wanted</th>
          </tr>
          {rows.map((row) => (
            <tr key={row.id}>
              <th scope="row">
                <button type="button" onClick={() => goTo(row)}>
                  {row.label}
                </button>
              </th>
              <td className={row.gap !== null && row.gap < wanted ? "bites" : undefined}>
                <Reading text={gapWords(row, units)} />
              </td>
              <td>{row.gap === null ? "" : <Reading text={shownTravel(row.travel, units)} />}</td>
              <td>
                <Reading text={shownLength(wanted, units)} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="small quiet">
        {measured.study !== study && "Of the car as it stood before; measured again when the hand rests. "}
        Left rear corner, between the stops. <Reading text={units === "metric" ? "76 mm" : "3 in"} /> next to a pivot on
        the chassis are left out: its bracket is there. The scan counts as a skin: a part wholly inside it reads as
        clear.
      </p>
    </>
  );
}

const isIn = ({ gap }: LeastGap): boolean => gap !== null && gap <= 0;

function gapWords({ gap, isCut }: LeastGap, units: UnitSystem): string {
  if (gap === null) return "far";
  if (gap > 0) return shownLength(gap, units);
  return `${shownLength(-gap, units)}${isCut ? " or more" : ""} into it`;
}

function sentenceOf(row: LeastGap, wanted: number, units: UnitSystem): string {
  const where = row.travel === 0 ? "at ride height" : `at ${shownTravel(row.travel, units)} of travel`;
  const found = isIn(row)
    ? `reaches ${shown(-(row.gap ?? 0), "length", units)}${row.isCut ? " or more" : ""} into the scan`
    : `comes within ${shown(row.gap, "length", units)} of the scan`;
  return `The ${row.label} ${found} ${where}; ${shown(wanted, "length", units)} is wanted.`;
}

function goTo({ travel, at }: LeastGap): void {
  bench.setState({ spot: at });
  setTravel(travel);
}
