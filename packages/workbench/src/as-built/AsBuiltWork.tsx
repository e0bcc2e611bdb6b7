import {
  type AsBuiltCause,
  type CARD_KINDS,
  type CardReading,
  cardReadings,
  explainAsBuilt,
  explainedField,
  fiveMinuteCheck,
  formatLength,
  type UnitSystem,
  uncertainInputs,
} from "@armwright/engine";
import { type ReactNode, useMemo, useState } from "react";
import { useBench } from "../app/use-bench.ts";
import { edit } from "../store/bench.ts";
import { Reading } from "../words/Reading.tsx";
import { shown, shownLength, shownTravel, tidy } from "../words/shown.ts";

/** The five-minute check, the cycle log, and what explains the difference between car and plan. */
export function AsBuiltWork(): ReactNode {
  const study = useBench(({ live, moving }) => (moving ? null : live.study));
  const units = useBench((state) => state.units);
  const car = study?.car;
  const found = useMemo(() => {
    if (!car) return null;
    const inputs = uncertainInputs(car);
    return { check: fiveMinuteCheck(car, inputs), built: explainAsBuilt(car, car.asBuilt ?? [], inputs) };
  }, [car]);
  if (!study || !car || !found) return null;
  const { check, built } = found;
  const best = built.explanations[0];
  return (
    <section className="as-built-work" aria-label="As built">
      {check && (
        <p>
          <b>Five-minute check.</b> Block the hub {shownLength(Math.abs(check.travel), units)}{" "}
          {check.travel > 0 ? "up" : "down"} from ride height: {check.card.label} should read{" "}
          <Reading text={say(check.reads, check.card, units)} /> ±{" "}
          <Reading text={say(check.plusMinus, check.card, units)} />.
        </p>
      )}
      <NewReading cards={cardReadings(study.corner)} />
      {built.readings.length > 0 && (
        <table className="compare-table">
          <thead>
            <tr>
              <th scope="col">travel</th>
              <th scope="col">reading</th>
              <th scope="col">plan ±</th>
              <th scope="col">car reads</th>
              <th scope="col">
                <span className="unseen">take off</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {built.readings.map(({ logged, card, predicted, predictedSd, misfit }) => (
              <tr key={logged.path}>
                <th scope="row">{shownTravel(logged.travel, units)}</th>
                <td>{card.label}</td>
                <td>
                  {predicted === null
                    ? "out of reach"
                    : `${say(predicted, card, units)} ± ${say(2 * predictedSd, card, units)}`}
                </td>
                <td>
                  {say(logged.reads, card, units)}
                  {misfit !== null && Math.abs(misfit) > 2 && <b> more than ±</b>}
                </td>
                <td>
                  <button
                    type="button"
                    className="pressable"
                    aria-label={`Take off: ${card.label} at ${shownTravel(logged.travel, units)}`}
                    onClick={() => edit([{ path: logged.path, value: undefined }], "a reading taken off")}
                  >
                    off
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {built.readings.length > 0 && (
        <p role="status">
          {built.agrees
            ? "Car and plan agree as well as tape and building allow."
            : "Something is off by more than tape and building allow."}
        </p>
      )}
      {best && built.readings.length > 0 && Math.abs(best.test) > 2 && (
        <>
          <p>
            Likeliest: {cause(best.cause, best.by, units)} ±{" "}
            {shown(2 * best.sd, best.cause.kind === "point" ? "length" : "angle", units)}.
            {built.alike > 1 && ` The readings cannot tell it from ${built.alike - 1} more:`}
          </p>
          <ul className="small">
            {built.explanations.slice(1, built.alike).map(({ cause: other, by }) => (
              <li key={cause(other, by, units)}>{cause(other, by, units)}</li>
            ))}
          </ul>
          <button
            type="button"
            className="pressable take"
            onClick={() => {
              const { path, value } = explainedField(car, best);
              edit([{ path, value }], "the car as it was built; the plan is in the history");
            }}
          >
            Take the car as built
          </button>
        </>
      )}
      <p className="small quiet">
        Body on stands at ride height, springs out, gas let down. ± is two standard deviations, from your tolerances or
        common practice.
      </p>
    </section>
  );
}

/** One more reading, as it is taken under the car. */
function NewReading({ cards }: { readonly cards: readonly CardReading[] }): ReactNode {
  const count = useBench(({ document }) => document?.asBuilt?.readings.length ?? 0);
  const hasLog = useBench(({ document }) => document?.asBuilt !== undefined);
  const [what, setWhat] = useState<(typeof CARD_KINDS)[number]>("shock");
  const [at, setAt] = useState("");
  const [reads, setReads] = useState("");
  const isReady = at.trim() !== "" && reads.trim() !== "";
  const add = (): void => {
    const value = { what, at: at.trim(), [what === "camber" ? "degrees" : "reads"]: reads.trim() };
    edit(
      hasLog ? [{ path: `asBuilt.readings[${count}]`, value }] : [{ path: "asBuilt", value: { readings: [value] } }],
      "a reading of the car",
    );
    setReads("");
  };
  return (
    <form
      className="new-reading"
      onSubmit={(event) => {
        event.preventDefault();
        if (isReady) add();
      }}
    >
      <label>
        what
        <select value={what} onChange={(event) => setWhat(event.target.value as typeof what)}>
          {cards.map(({ kind, label }) => (
            <option key={kind} value={kind}>
              {label}
            </option>
          ))}
        </select>
      </label>
      <label>
        hub blocked at, from ride
        <input value={at} onChange={(event) => setAt(event.target.value)} placeholder="-4" autoComplete="off" />
      </label>
      <label>
        reads
        <input
          value={reads}
          onChange={(event) => setReads(event.target.value)}
          placeholder="22 3/16"
          autoComplete="off"
        />
      </label>
      <button type="submit" className="pressable take" disabled={!isReady}>
        Write it down
      </button>
    </form>
  );
}

const say = (value: number, { dimension, isFine }: CardReading, units: UnitSystem): string =>
  dimension === "angle"
    ? shown(value, "angle", units)
    : tidy(formatLength(value, units, { denominator: isFine ? 32 : 16 }));

const WAYS = { x: ["farther forward", "farther back"], y: ["farther out", "farther in"], z: ["high", "low"] } as const;

function cause(of: AsBuiltCause, by: number, units: UnitSystem): string {
  if (of.kind === "setting") return `${of.setting} at ride height is ${shown(by, "angle", units)} from the plan`;
  return `${of.input.place.label} is ${shown(Math.abs(by), "length", units)} ${WAYS[of.input.axis][by > 0 ? 0 : 1]}`;
}
