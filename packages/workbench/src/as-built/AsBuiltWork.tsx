import "../styles/survey.css";
import { sayBack, sayOff } from "@armwright/engine";
import { type ReactNode, useEffect, useMemo, useState } from "react";
import { GravityMark } from "../app/Mark.tsx";
import { useBench } from "../app/use-bench.ts";
import { useJob } from "../jobs/use-job.ts";
import { bench, compareWith, edit, showPanel } from "../store/bench.ts";
import { createCar } from "../store/connection.ts";
import { Reading } from "../words/Reading.tsx";
import { capitalised, shownLength, shownTravel, tidy } from "../words/shown.ts";
import type { AsBuiltAnswer, ExplanationSaid } from "./as-built-job.ts";
import { LoggedTable } from "./LoggedTable.tsx";
import { sayCard, sayCardWithin, sayOffWithin, unitOfCard } from "./words.ts";

/** Whether car and plan agree and what explains it if not; the five-minute check; then the log, height by height. */
export function AsBuiltWork(): ReactNode {
  const document = useBench(({ document: shown, moving, live }) => (moving || live.faults.length > 0 ? null : shown));
  const input = useMemo(() => document && { document }, [document]);
  const { last, failed } = useJob("as-built", input);
  useEffect(() => {
    void import("./LogPanel.tsx");
  }, []);
  if (failed !== "") return <p className="fault">{capitalised(failed)}.</p>;
  if (!last) return <p className="quiet">Comparing …</p>;
  const { answer } = last;
  const isOlder = document !== last.input.document;
  return (
    <section className={isOlder ? "as-built-work is-older" : "as-built-work"} aria-label="As built" aria-busy={isOlder}>
      {answer.readings.length > 0 && <Verdict answer={answer} />}
      <FiveMinutes answer={answer} />
      <p className="problem-actions">
        <button type="button" className="pressable take" onClick={() => showPanel({ kind: "log-reading" })}>
          {answer.readings.length === 0 ? "Read the car, height by height" : "Read on"}
        </button>
      </p>
      <LoggedTable readings={answer.readings} />
      <p className="small quiet">
        Body on stands at ride height, springs out, gas let down. ± is two standard deviations,{" "}
        {answer.isGiven ? "from your tolerances and readings" : "from common practice: 1/16 in where welded"}; flex and
        slop of joints are not in it.
      </p>
    </section>
  );
}

/** The one thing to measure before any welding. */
function FiveMinutes({ answer: { check } }: { readonly answer: AsBuiltAnswer }): ReactNode {
  const units = useBench((state) => state.units);
  if (!check) return null;
  const { card, travel, reads, plusMinus } = check;
  const unit = units === "metric" ? "mm" : "in";
  return (
    <section className="five-minutes" aria-label="Five-minute check">
      <h3>Before any welding: the five-minute check</h3>
      <p>
        Block the hub <Reading text={`${shownLength(Math.abs(travel), units)} ${unit}`} /> {travel > 0 ? "up" : "down"}{" "}
        from ride height. {capitalised(card.label)} should read{" "}
        <b>
          <Reading
            text={`${sayCard(reads, card, units)}${unitOfCard(card, units)} ± ${sayCardWithin(plusMinus, card, units)}`}
          />
        </b>
        {". "}
        <button
          type="button"
          className="pressable link"
          onClick={() => showPanel({ kind: "log-reading", travel, card })}
        >
          It reads …
        </button>
      </p>
    </section>
  );
}

function Verdict({ answer }: { readonly answer: AsBuiltAnswer }): ReactNode {
  const { agrees, explanations, readings } = answer;
  const isCompared = readings.some(({ misfit }) => misfit !== null);
  if (!isCompared) {
    return (
      <p role="status">Nothing could be compared: the plan does not reach the heights at which the car was read.</p>
    );
  }
  const [best, ...others] = explanations;
  return (
    <>
      <ul className="survey-problems">
        <li>
          <GravityMark gravity={agrees ? "note" : "mind"} />
          <div>
            <p role="status">
              <b>
                {agrees
                  ? "Car and plan agree as well as tape and building allow."
                  : "Something is off by more than tape and building allow."}
              </b>{" "}
              {!best && !agrees && "No single cause explains it: look for a reading that is wrong, and read it again."}
              {best && (agrees ? "If something is off, likeliest:" : "Likeliest:")}
            </p>
            {best && <Explained explanation={best} isFirst isAlone={others.length === 0} />}
          </div>
        </li>
      </ul>
      {others.length > 0 && (
        <details className="point-sources" open={others.length < 3}>
          <summary className="pressable">
            The readings cannot tell it from {others.length === 1 ? "one other" : `${others.length} others`}
          </summary>
          <ul className="survey-problems alternatives">
            {others.map((each) => (
              <li key={each.operations.map(({ path }) => path).join()}>
                <span />
                <Explained explanation={each} />
              </li>
            ))}
          </ul>
          <p className="small quiet">
            One more reading tells them apart: another height, or the place itself, taped from floor, centreline or
            mark.
          </p>
        </details>
      )}
      {!agrees && <Together answer={answer} />}
    </>
  );
}

/** Nothing single, a little of everything: the least that explains the readings. */
function Together({ answer: { together } }: { readonly answer: AsBuiltAnswer }): ReactNode {
  const units = useBench((state) => state.units);
  if (together.length < 2) return null;
  return (
    <p className="small quiet">
      Or a little of each: <Reading text={tidy(together.map((each) => sayOff(each, units)).join("; "))} />.
    </p>
  );
}

function Explained({
  explanation,
  isFirst = false,
  isAlone = false,
}: {
  readonly explanation: ExplanationSaid;
  readonly isFirst?: boolean;
  /** The readings tell it from every other. */
  readonly isAlone?: boolean;
}): ReactNode {
  const units = useBench((state) => state.units);
  const { cause, by, proof, operations, turns, stops } = explanation;
  const words = capitalised(tidy(sayOff(explanation, units)));
  return (
    <div className="explained">
      <p>
        {isFirst ? (
          <b>
            <Reading text={words} />
          </b>
        ) : (
          <Reading text={words} />
        )}
        <span className="quiet">
          {" "}
          <Reading text={`± ${sayOffWithin(explanation, units)}`} />.
        </span>
        {proof && !isAlone && (
          <>
            {" "}
            <button
              type="button"
              className="pressable link"
              onClick={() => showPanel({ kind: "log-reading", card: proof })}
            >
              Read that place<span className="unseen">: {proof.label}</span>
            </button>
          </>
        )}
      </p>
      {isFirst && (
        <>
          <ul className="small what-to-do">
            {cause.kind === "point" ? (
              <li>
                To come back to the plan, move it <Reading text={sayBack(cause.input.axis, by, units)} />, then set
                camber and toe again.
              </li>
            ) : (
              turns.map(({ label, change, turns: count }) => (
                <li key={label}>
                  To come back to the plan, make the {label} <Reading text={sayTurns(change, count, units)} />.
                </li>
              ))
            )}
            {stops.map((each) => (
              <li key={each.direction}>
                <Reading text={sayStop(each, units)} />
              </li>
            ))}
          </ul>
          <Keep operations={operations} />
        </>
      )}
      {!isFirst && (
        <button
          type="button"
          className="pressable link"
          onClick={() => edit(operations, `${words}: taken as built; the plan is in the history`)}
        >
          Take this one as built
        </button>
      )}
    </div>
  );
}

const sayTurns = (change: number, turns: number | null, units: "inch-pound" | "metric"): string => {
  const way = change > 0 ? "longer" : "shorter";
  const length = `${shownLength(Math.abs(change), units, { denominator: 32 })} ${units === "metric" ? "mm" : "in"}`;
  return turns === null ? `${length} ${way}` : `${Math.abs(turns).toFixed(1)} turns ${way} (${length})`;
};

function sayStop(
  { direction, planned, built, first }: ExplanationSaid["stops"][number],
  units: "inch-pound" | "metric",
): string {
  const unit = units === "metric" ? "mm" : "in";
  const stop =
    shownTravel(planned, units) === shownTravel(built, units)
      ? `${capitalised(direction)} stays at ${shownTravel(built, units)} ${unit}`
      : `${capitalised(direction)} comes to ${shownTravel(built, units)} in place of ${shownTravel(planned, units)} ${unit}`;
  if (!first) return `${stop}.`;
  return `${stop}; past it ${shownLength(first.built, units)} ${unit} to ${first.label}, planned ${shownLength(first.planned, units)}.`;
}

/** The car as it was built: beside the plan as a car of its own, or into this one. */
function Keep({ operations }: { readonly operations: ExplanationSaid["operations"] }): ReactNode {
  const [refused, setRefused] = useState("");
  const beside = async (): Promise<void> => {
    const { document, live } = bench.getState();
    if (!document) return;
    const { keptBeside } = await import("./keep-beside.ts");
    const plan = live.study;
    const because = await createCar(keptBeside(document, operations));
    if (because !== null) setRefused(because);
    else if (plan) compareWith({ label: `plan, ${document.name}`, study: plan });
  };
  return (
    <>
      <p className="problem-actions">
        <button type="button" className="pressable take" onClick={() => void beside()}>
          Keep as built, beside the plan
        </button>
        <button
          type="button"
          className="pressable quiet"
          onClick={() => edit(operations, "the car as it was built; the plan is in the history")}
        >
          Take it into this car
        </button>
      </p>
      {refused !== "" && <p className="fault">Not kept: {refused}.</p>}
    </>
  );
}
