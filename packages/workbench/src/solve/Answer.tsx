import {
  type Dimension,
  formatNumber,
  type SolveAnswer,
  type SolveCurve,
  type SolveReading,
  sayFinding,
  saySolveNote,
  toUnit,
  type UnitSystem,
} from "@armwright/engine";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { CurveChart } from "../curve/CurveChart.tsx";
import { roomAbove } from "../curve/ticks.ts";
import { edit } from "../store/bench.ts";
import { Reading } from "../words/Reading.tsx";
import { shown, tidy } from "../words/shown.ts";

const OUTCOMES: Readonly<Record<SolveAnswer["outcome"], string>> = {
  reached: "Reached.",
  already: "It is so already.",
  nearest: "Not reached; this is the best there is.",
  none: "Nothing better than now was found.",
};

/** What was found: whether it is reached, what to change, what changes with it. */
export function Answer({ answer, title }: { readonly answer: SolveAnswer; readonly title: string }): ReactNode {
  const units = useBench((state) => state.units);
  const { aim, changes, operations, findings, notes, outcome, curves, choices } = answer;
  return (
    <div className="solve-answer">
      <p className="outcome">
        {outcome === "already" && operations.length > 0 ? "It is so already; this betters it." : OUTCOMES[outcome]}
      </p>
      <Aim answer={answer} />
      {changes.length > 0 && (
        <table className="figures">
          <thead>
            <tr>
              <th scope="col">change</th>
              <th scope="col">now</th>
              <th scope="col">to</th>
            </tr>
          </thead>
          <tbody>
            {changes.map(({ path, label, before, after, dimension }) => (
              <tr key={path}>
                <th scope="row">{label}</th>
                <td>
                  <Value value={before} dimension={dimension} />
                </td>
                <td>
                  <Value value={after} dimension={dimension} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {operations.length > 0 && (
        <p className="adders">
          <button type="button" className="pressable take" onClick={() => edit(operations, title.toLowerCase())}>
            Take it
          </button>
        </p>
      )}
      <Effects answer={answer} />
      {(findings.appeared.length > 0 || findings.gone.length > 0 || notes.length > 0) && (
        <ul className="facts">
          {findings.appeared.map((finding) => (
            <li
              key={`new ${finding.code} ${finding.place}`}
              className={finding.gravity === "must" ? "short" : undefined}
            >
              New: <Reading text={tidy(sayFinding(finding, units).sentence)} />
            </li>
          ))}
          {findings.gone.map((finding) => (
            <li key={`gone ${finding.code} ${finding.place}`}>
              Gone: <Reading text={tidy(sayFinding(finding, units).sentence)} />
            </li>
          ))}
          {notes.map((note) => {
            const words = tidy(saySolveNote(note, { units }));
            return (
              <li key={words}>
                <Reading text={words} />
              </li>
            );
          })}
        </ul>
      )}
      {curves.map((curve) => (
        <AimCurve key={curve.label} curve={curve} aim={aim} />
      ))}
      <Choices choices={choices} aim={aim} />
    </div>
  );
}

/** The number that it was about: now, then, what was wanted, and what there is before readings are set to the tape's marks. */
function Aim({ answer: { aim, operations } }: { readonly answer: SolveAnswer }): ReactNode {
  const { label, dimension, before, after, best, wanted, sense } = aim;
  const rows: readonly (readonly [string, number | null])[] = [
    ["now", before],
    ...(operations.length > 0 ? ([["then", after]] as const) : []),
    ...(best === null ? [] : ([["then, before rounding to the tape", best]] as const)),
    ...(wanted === null ? [] : ([[sense === "at-least" ? "wanted, at least" : "wanted, at most", wanted]] as const)),
  ];
  return (
    <table className="figures aim">
      <caption>{label}</caption>
      <tbody>
        {rows.map(([name, value]) => (
          <tr key={name} className={name === "then" ? "main" : undefined}>
            <th scope="row">{name}</th>
            <td>
              <Value value={value} dimension={dimension} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Effects({ answer: { readings, effects } }: { readonly answer: SolveAnswer }): ReactNode {
  const units = useBench((state) => state.units);
  const all = [...readings, ...effects];
  if (all.length === 0) return null;
  return (
    <table className="figures effects">
      <thead>
        <tr>
          <th scope="col">what it does</th>
          <th scope="col">now</th>
          <th scope="col">then</th>
        </tr>
      </thead>
      <tbody>
        {all.map((reading) => (
          <EffectRow key={`${reading.label} ${reading.at ?? ""}`} reading={reading} units={units} />
        ))}
      </tbody>
    </table>
  );
}

function EffectRow({ reading, units }: { readonly reading: SolveReading; readonly units: UnitSystem }): ReactNode {
  const { label, dimension, before, after, nameBefore, nameAfter, signed, at } = reading;
  const say = (value: number | null, name: string | undefined): ReactNode => (
    <>
      <Value value={value} dimension={dimension} signed={signed} />
      {name !== undefined && <small>{name}</small>}
    </>
  );
  return (
    <tr>
      <th scope="row">
        {label}
        {at !== undefined && (
          <>
            {" "}
            at <Reading text={shown(at, "length", units, { sign: true })} />
          </>
        )}
      </th>
      <td>{say(before, nameBefore)}</td>
      <td>{say(after, nameAfter)}</td>
    </tr>
  );
}

/** Angles to a hundredth of a degree, because an answer is held against a limit that fine. */
function Value({
  value,
  dimension,
  signed = false,
}: {
  readonly value: number | null;
  readonly dimension: Dimension;
  readonly signed?: boolean;
}): ReactNode {
  const units = useBench((state) => state.units);
  if (value === null) return "none";
  if (dimension === "angle") return tidy(`${formatNumber(toUnit(value, "angle", units), 2, signed)} deg`);
  return <Reading text={shown(value, dimension, units, { sign: signed })} />;
}

/** How the number goes as the point is moved one way, the rest at its best. */
function AimCurve({ curve, aim }: { readonly curve: SolveCurve; readonly aim: SolveAnswer["aim"] }): ReactNode {
  const { label, offsets, values } = curve;
  const known = values.filter((value) => value !== null);
  const [from, to] = [offsets[0], offsets.at(-1)];
  if (known.length < 2 || from === undefined || to === undefined) return null;
  const lowest = known.indexOf(Math.min(...known));
  const at = values.indexOf(known[lowest]!);
  return (
    <CurveChart
      label={`${aim.label} over where the ${label} is`}
      across={{ title: `${label}, from now`, dimension: "length", from, to }}
      up={{ title: aim.label, dimension: aim.dimension, from: 0, to: roomAbove(known) }}
      curves={[
        {
          name: aim.label,
          points: offsets.map((x, i) => ({ x, y: values[i] ?? null })),
          dot: { x: offsets[at]!, y: known[lowest]! },
        },
      ]}
      uprights={aim.wanted === null ? [] : [{ x: 0, label: "now" }]}
    />
  );
}

function Choices({ choices, aim }: Pick<SolveAnswer, "choices" | "aim">): ReactNode {
  if (choices.length === 0) return null;
  const isWay = choices.some(({ value }) => value !== null);
  return (
    <table className="figures">
      <thead>
        <tr>
          <th scope="col">{isWay ? "other ways, each by itself" : "nearer than wanted on the way forward"}</th>
          <th scope="col">{isWay ? "moved by" : "after"}</th>
          {isWay && <th scope="col">{aim.label}</th>}
        </tr>
      </thead>
      <tbody>
        {choices.map(({ label, offset, value }) => (
          <tr key={label}>
            <th scope="row">{label}</th>
            <td>
              <Value value={offset} dimension="length" signed />
            </td>
            {isWay && (
              <td>
                <Value value={value} dimension={aim.dimension} />
              </td>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
