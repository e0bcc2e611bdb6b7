import { type Dimension, hangShock, type Proposal, type UnitSystem } from "@armwright/engine";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { bench, edit, say } from "../store/bench.ts";
import { Reading } from "../words/Reading.tsx";
import { bare, shown, shownLength, unitShown } from "../words/shown.ts";
import type { Judgement } from "./judge-job.ts";
import { look, tryIt, useMounts } from "./mounts-store.ts";

/** The best places side by side, so that a person can choose; under them what the tape reads for the one that is looked at. */
export function ShortList({ found }: { readonly found: Judgement }): ReactNode {
  const { best, request } = found;
  const units = useBench((state) => state.units);
  const looked = useMounts((state) => state.looked);
  const place = best[looked] ?? best[0];
  if (!place) return null;
  const hasSeveral = request.shocks.length > 1;
  return (
    <section className="short-list" aria-label="The best places">
      <h3>The best places, each truly another</h3>
      <div className="scrolls">
        <table>
          <thead>
            <tr>
              <th scope="col" className="quiet">
                place
              </th>
              {best.map((each, i) => (
                <th
                  scope="col"
                  key={`${each.upper.x} ${each.upper.y} ${each.lower.point.y}`}
                  className={mark(i, looked)}
                >
                  <button
                    type="button"
                    aria-pressed={i === looked}
                    onClick={() => look(i)}
                    aria-label={`Look at place ${i + 1}`}
                  >
                    {i + 1}
                  </button>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {hasSeveral && (
              <tr>
                <th scope="row">shock</th>
                {best.map(({ shock }, i) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: a place's number is its name.
                  <td key={i} className={mark(i, looked)}>
                    {shock.name}
                  </td>
                ))}
              </tr>
            )}
            {ROWS.filter(({ of }) => best.some((each) => of(each) !== null)).map((row) => {
              const values = best.map(row.of);
              const finest = bestOf(values, row.better);
              return (
                <tr key={row.label}>
                  <th scope="row">
                    {row.label}
                    {UNITS_SHOWN.includes(row.dimension) && (
                      <span className="quiet"> {unitShown(row.dimension, units)}</span>
                    )}
                  </th>
                  {values.map((value, i) => (
                    // biome-ignore lint/suspicious/noArrayIndexKey: a place's number is its name.
                    <td key={i} className={`${mark(i, looked)}${value !== null && value === finest ? " finest" : ""}`}>
                      <Reading
                        text={bare(value, row.dimension, units, row.sign ? { sign: true } : {}).replace(" °", "°")}
                      />
                    </td>
                  ))}
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
      <p className="small quiet">
        {loadWords(place, units)} Heavier figures are the best of their row. Motion ratio is shock shortening over wheel
        travel. Slack is how far either mount may be off, any way, before a wish breaks.
      </p>
      <Taping place={place} number={looked + 1} />
    </section>
  );
}

/** What the mount load rests on. */
function loadWords({ mountLoad }: Proposal, units: UnitSystem): string {
  if (!mountLoad) return "No mount load: the car gives no weights.";
  const from =
    mountLoad.from === "springs"
      ? "the car's own springs and gas"
      : `a spring for ${shown(mountLoad.frequency ?? 0, "frequency", units)} at ride, common practice`;
  return `Mount load is along the shock at full bump, from ${from}; no damper, no stop.`;
}

const mark = (index: number, looked: number): string => (index === looked ? "looked" : "");

interface Row {
  readonly label: string;
  readonly dimension: Dimension;
  readonly of: (place: Proposal) => number | null;
  /** Which end is the better one; left out where neither is. */
  readonly better?: "less" | "more";
  readonly sign?: boolean;
}

/** Of these the unit stands once, beside the name. */
const UNITS_SHOWN: readonly Dimension[] = ["length", "force", "percent"];

const ROWS: readonly Row[] = [
  { label: "stroke used", dimension: "percent", of: ({ strokeUsed }) => strokeUsed },
  { label: "motion ratio, ride", dimension: "ratio", of: ({ motionRatio }) => motionRatio, better: "more" },
  { label: "motion ratio, bump", dimension: "ratio", of: ({ motionRatioAtBump }) => motionRatioAtBump },
  {
    label: "rises to bump by",
    dimension: "ratio",
    of: ({ progression }) => progression,
    better: "more",
    sign: true,
  },
  { label: "lean, most", dimension: "angle", of: ({ lean }) => lean, better: "less" },
  { label: "off square, bump", dimension: "angle", of: ({ offSquare }) => offSquare, better: "less" },
  { label: "nearest thing", dimension: "length", of: ({ nearest }) => nearest?.gap ?? null, better: "more" },
  {
    label: "to the frame",
    dimension: "length",
    of: ({ loadPath }) => loadPath?.length ?? null,
    better: "less",
  },
  { label: "mount load, bump", dimension: "force", of: ({ mountLoad }) => mountLoad?.atBump ?? null, better: "less" },
  { label: "wrench, to spare", dimension: "length", of: ({ wrenchRoom }) => wrenchRoom, better: "more" },
  { label: "slack", dimension: "length", of: ({ slack }) => slack, better: "more" },
];

function bestOf(values: readonly (number | null)[], better: Row["better"]): number | null {
  const there = values.filter((value) => value !== null);
  if (!better || there.length < 2) return null;
  return better === "less" ? Math.min(...there) : Math.max(...there);
}

/** Where the tape goes for a place, and its two answers: try it, take it. */
function Taping({ place, number }: { readonly place: Proposal; readonly number: number }): ReactNode {
  const units = useBench((state) => state.units);
  const datum = useBench(({ document }) => document?.datum);
  const isTried = useMounts((state) => state.isTried);
  const unit = unitShown("length", units);
  const at = (metres: number): ReactNode => <Reading text={shownLength(metres, units)} />;
  const { upper, lower } = place.tape;
  return (
    <section aria-label={`Place ${number} by the tape`}>
      <p className="adders">
        <button type="button" className="pressable" aria-pressed={isTried} onClick={() => tryIt(!isTried)}>
          {isTried ? `Take place ${number} off the drawing` : `Try place ${number} on the drawing`}
        </button>
        <button type="button" className="pressable take" onClick={() => take(place, number)}>
          Take it
        </button>
      </p>
      <h3>
        Place {number} by the tape, {unit}
      </h3>
      <table className="taping">
        <thead>
          <tr>
            <td />
            <th scope="col">forward</th>
            <th scope="col">out</th>
            <th scope="col">up</th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">upper eye</th>
            <td>{at(upper.forward)}</td>
            <td>{at(upper.out)}</td>
            <td>{at(upper.up)}</td>
          </tr>
          <tr>
            <th scope="row">lower eye</th>
            <td>{at(lower.forward)}</td>
            <td>{at(lower.out)}</td>
            <td>{at(lower.up)}</td>
          </tr>
        </tbody>
        <thead>
          <tr>
            <td />
            <th scope="col">full droop</th>
            <th scope="col">ride</th>
            <th scope="col">full bump</th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">eye to eye</th>
            <td>{at(place.atDroop)}</td>
            <td>{at(place.atRide)}</td>
            <td>{at(place.atBump)}</td>
          </tr>
        </tbody>
      </table>
      <TapeFrom title="upper eye from" readings={place.tapeTo.upper} />
      <TapeFrom title="lower eye from" readings={place.tapeTo.lower} />
      <p className="small quiet">
        At ride height: forward from {datum ?? "the datum"}, out from the centreline, up from the ground. The lower eye
        is on the {place.lower.on.replace("-", " ")}.
        {place.nearest && (
          <>
            {" "}
            Nearest: {place.nearest.label}, <Reading text={shown(place.nearest.gap, "length", units)} />, at a travel of{" "}
            <Reading text={shown(place.nearest.travel, "length", units, { sign: true })} />.
          </>
        )}
      </p>
    </section>
  );
}

/** From pivots that sit on the same part: these hold wherever the wheel is. */
function TapeFrom({
  title,
  readings,
}: {
  readonly title: string;
  readonly readings: Proposal["tapeTo"]["upper"];
}): ReactNode {
  const units = useBench((state) => state.units);
  if (readings.length === 0) return null;
  return (
    <ul className="tape-from" aria-label={title}>
      {readings.map(({ pivot, label, distance }) => (
        <li key={pivot}>
          <span className="quiet">
            {title} {label}
          </span>
          <b>
            <Reading text={shown(distance, "length", units)} />
          </b>
        </li>
      ))}
    </ul>
  );
}

function take(place: Proposal, number: number): void {
  const { document, live } = bench.getState();
  if (!document || !live.car) return;
  const { operations, lost } = hangShock(document, live.car, place);
  edit(operations, `the shock hung at place ${number}`);
  if (lost !== "")
    say(`The shock hangs at place ${number}; its ${lost} went with the shock before. Undo brings all back.`);
  tryIt(false);
}
