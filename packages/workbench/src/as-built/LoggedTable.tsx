import { Fragment, type ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { showPanel } from "../store/bench.ts";
import { Reading } from "../words/Reading.tsx";
import { shownTravel } from "../words/shown.ts";
import type { ComparedSaid } from "./as-built-job.ts";
import { sayCard, sayCardWithin } from "./words.ts";

/** What the car read against the plan, from the top height down; a press reads it again. */
export function LoggedTable({ readings }: { readonly readings: readonly ComparedSaid[] }): ReactNode {
  const units = useBench((state) => state.units);
  if (readings.length === 0) return null;
  const heights = [...new Set(readings.map(({ travel }) => shownTravel(travel, units)))];
  const sorted = heights
    .map((height) => ({ height, rows: readings.filter(({ travel }) => shownTravel(travel, units) === height) }))
    .sort((a, b) => (b.rows[0]?.travel ?? 0) - (a.rows[0]?.travel ?? 0));
  const unit = units === "metric" ? "mm" : "in";
  return (
    <table className="compare-table logged-table">
      <thead>
        <tr>
          <th scope="col">read, {unit}</th>
          <th scope="col">plan</th>
          <th scope="col">car</th>
          <th scope="col">off</th>
        </tr>
      </thead>
      <tbody>
        {sorted.map(({ height, rows }) => (
          <Fragment key={height}>
            <tr className="head">
              <th scope="rowgroup" colSpan={4}>
                at <Reading text={height === "0" ? "ride height" : `${height} ${unit}`} />
              </th>
            </tr>
            {rows.map((row) => (
              <Row key={row.path} row={row} />
            ))}
          </Fragment>
        ))}
      </tbody>
    </table>
  );
}

function Row({ row }: { readonly row: ComparedSaid }): ReactNode {
  const units = useBench((state) => state.units);
  const { card, reads, predicted, predictedSd, misfit, travel, path } = row;
  const isOdd = misfit !== null && Math.abs(misfit) > 2;
  return (
    <tr className={isOdd ? "odd" : undefined}>
      <th scope="row">
        <button type="button" onClick={() => showPanel({ kind: "log-reading", travel, card, path })}>
          {card.label}
        </button>
      </th>
      <td>
        {predicted === null ? (
          "out of reach"
        ) : (
          <>
            <Reading text={sayCard(predicted, card, units)} />
            <small>
              <Reading text={`± ${sayCardWithin(2 * predictedSd, card, units)}`} />
            </small>
          </>
        )}
      </td>
      <td>
        <Reading text={sayCard(reads, card, units)} />
      </td>
      <td>
        {predicted !== null && <Reading text={sayCard(reads - predicted, card, units, true)} />}
        {isOdd && <small>more than ±</small>}
      </td>
    </tr>
  );
}
