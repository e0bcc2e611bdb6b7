import type { Study, UnitSystem } from "@armwright/engine";
import { Fragment, memo, type ReactNode, useState } from "react";
import { goToPlace } from "../app/go-to.ts";
import { Pennant } from "../app/Mark.tsx";
import { useBench } from "../app/use-bench.ts";
import { ofHundred, sureOf, useCertainty } from "../certainty/certainty-store.ts";
import { showPanel } from "../store/bench.ts";
import { plusMinusLength } from "../words/plus-minus.ts";
import { Reading } from "../words/Reading.tsx";
import { shownLength, shownTravel } from "../words/shown.ts";
import { type StopRow, stopRows } from "./stop-rows.ts";

/** How much travel, what stops it, what is left: both ways. */
export function StopsTable(): ReactNode {
  const study = useBench(({ live }) => live.study);
  const units = useBench((state) => state.units);
  const comparing = useBench((state) => state.comparing);
  if (!study) return <p className="quiet">Nothing stops the wheel yet: the car has to be entered first.</p>;
  return (
    <>
      <Summary study={study} units={units} />
      {comparing && <Before study={comparing.study} label={comparing.label} units={units} />}
      <table className="stops-table">
        <tbody>
          {(["droop", "bump"] as const).map((direction) => (
            <Fragment key={direction}>
              <tr className="head">
                <th scope="col">what stops it in {direction}</th>
                <th scope="col">at</th>
                <th scope="col">spare</th>
                <th scope="col">which is</th>
                <td />
              </tr>
              <Rows rows={stopRows(study, direction, units)} direction={direction} />
            </Fragment>
          ))}
        </tbody>
      </table>
    </>
  );
}

/** Those that the tape shows; what lies farther out on demand. */
function Rows({
  rows,
  direction,
}: {
  readonly rows: readonly StopRow[];
  readonly direction: "bump" | "droop";
}): ReactNode {
  const [isOpen, setOpen] = useState(false);
  const far = rows.filter(({ isFar }) => isFar);
  return (
    <>
      {rows
        .filter(({ isFar }) => isOpen || !isFar)
        .map((row) => (
          <Row key={row.key} row={row} direction={direction} />
        ))}
      {far.length > 0 && (
        <tr className="farther">
          <td colSpan={5}>
            <button type="button" onClick={() => setOpen(!isOpen)} aria-expanded={isOpen}>
              {isOpen ? "hide what is farther out" : `${far.length} more, farther out`}
            </button>
          </td>
        </tr>
      )}
    </>
  );
}

function Summary({ study, units }: { readonly study: Study; readonly units: UnitSystem }): ReactNode {
  const bump = study.travel.bump.stop.travel;
  const droop = -study.travel.droop.stop.travel;
  return (
    <p className="sum big">
      <strong>
        <Reading text={shownLength(bump + droop, units)} />
      </strong>{" "}
      <span>of travel:</span>{" "}
      <strong>
        <Reading text={shownLength(bump, units)} />
      </strong>{" "}
      <span>bump and</span>{" "}
      <strong>
        <Reading text={shownLength(droop, units)} />
      </strong>{" "}
      <span>droop{units === "metric" ? ", mm" : ", in"}</span>
    </p>
  );
}

function Before({
  study,
  label,
  units,
}: {
  readonly study: Study;
  readonly label: string;
  readonly units: UnitSystem;
}): ReactNode {
  const { bump, droop } = study.travel;
  return (
    <p className="small quiet">
      {label}: <Reading text={shownTravel(bump.stop.travel, units)} /> bump,{" "}
      <Reading text={shownTravel(droop.stop.travel, units)} /> droop
    </p>
  );
}

interface RowProps {
  readonly row: StopRow;
  readonly direction: "bump" | "droop";
}

const isSameRow = (a: StopRow, b: StopRow): boolean =>
  (Object.keys(a) as (keyof StopRow)[]).every((name) => a[name] === b[name]);

const Row = memo(
  function Row({ row, direction }: RowProps): ReactNode {
    const held = useBench(({ held }) => row.kind === "chosen" && held?.place === `stops.${direction}`);
    const units = useBench((state) => state.units);
    const sure = sureOf(useCertainty(), direction, row.key);
    // Where there is plenty the ± would only be one more number.
    const isTight = sure !== undefined && (row.isFirst || sure.left < 4 * sure.sd);
    const comesFirst = sure && !row.bitesFirst ? ofHundred(sure.chance) : null;
    const names = [row.kind, row.isFirst ? "first" : "", held ? "held" : ""].filter((name) => name !== "").join(" ");
    return (
      <tr className={names}>
        <th scope="row">
          <button type="button" onClick={() => goToPlace(row.place, row.travel)}>
            {row.kind === "chosen" ? <i className="bar" /> : <Pennant order={row.order} isFirst={row.isFirst} />}
            {row.label}
          </button>
        </th>
        <td>
          <Reading text={row.at} />
        </td>
        <td>
          {row.kind === "limit" && (
            <>
              <Reading text={row.spare} />
              {sure && isTight && (
                <small className="within">
                  {" "}
                  <Reading text={`± ${plusMinusLength(2 * sure.sd, units)}`} />
                </small>
              )}
            </>
          )}
        </td>
        <td className={row.bitesFirst ? "bites" : undefined}>
          <Reading text={held ? "chosen, in your hand" : row.whichIs} />
          {comesFirst !== null && <small className="within comes-first"> first in {comesFirst}</small>}
        </td>
        <td className="ask">
          {row.kind === "limit" && (
            <button
              type="button"
              className="how"
              onClick={() => showPanel({ kind: "how-limit", direction, id: row.key })}
            >
              how?<span className="unseen"> {row.label}</span>
            </button>
          )}
        </td>
      </tr>
    );
  },
  (before, now) => before.direction === now.direction && isSameRow(before.row, now.row),
);
