import {
  type Dimension,
  SOLVE_QUESTIONS,
  type SolveAnswer,
  type SolveReading,
  sayFinding,
  saySolveNote,
  solveContext,
  solveNeed,
  type UnitSystem,
} from "@armwright/engine";
import { type ReactNode, useEffect, useMemo, useRef, useState } from "react";
import { useBench } from "../app/use-bench.ts";
import { runJob } from "../jobs/run-job.ts";
import { edit } from "../store/bench.ts";
import { Reading } from "../words/Reading.tsx";
import { shown } from "../words/shown.ts";

interface Props {
  /** Ids of the questions that belong to the step. */
  readonly questions: readonly string[];
}

/** "Find the number that makes this true": asked in a worker, taken as one step. */
export function SolveFor({ questions }: Props): ReactNode {
  const document = useBench(({ document: shownDocument, moving }) => (moving ? null : shownDocument));
  const car = useBench(({ live, moving }) => (moving ? null : (live.study?.car ?? null)));
  const [asked, setAsked] = useState<string | null>(null);
  const [answer, setAnswer] = useState<{ readonly of: unknown; readonly answer: SolveAnswer } | null>(null);
  const [says, setSays] = useState("");
  const running = useRef<AbortController | null>(null);
  useEffect(() => () => running.current?.abort(), []);
  const offered = useMemo(() => {
    if (!car) return [];
    const context = solveContext({ car, ownRight: [], carWith: () => null });
    return SOLVE_QUESTIONS.filter((each) => questions.includes(each.id) && solveNeed(context, each) === null);
  }, [car, questions]);
  if (!document || !car || offered.length === 0) return null;
  const ask = async (question: string): Promise<void> => {
    running.current?.abort();
    const control = new AbortController();
    running.current = control;
    setAsked(question);
    setAnswer(null);
    setSays("Looking …");
    const outcome = await runJob("solve", { document, question, values: {} }, { signal: control.signal });
    if (running.current !== control) return;
    running.current = null;
    if (outcome.ok) {
      setAnswer({ of: document, answer: outcome.answer });
      setSays("");
    } else setSays(outcome.why === "given up" ? "Given up." : outcome.words);
  };
  const current = answer && answer.of === document ? answer.answer : null;
  return (
    <section className="solve-for" aria-label="Solve for">
      <h3>Solve for</h3>
      <ul className="solve-questions">
        {offered.map(({ id, title, meaning }) => (
          <li key={id}>
            <button
              type="button"
              className="pressable"
              aria-pressed={asked === id}
              title={meaning}
              onClick={() => void ask(id)}
            >
              {title}
            </button>
          </li>
        ))}
      </ul>
      <p role="status">{says}</p>
      {running.current !== null && says === "Looking …" && (
        <button type="button" className="pressable" onClick={() => running.current?.abort()}>
          Give up
        </button>
      )}
      {answer && !current && <p className="quiet">The car has changed since: ask again.</p>}
      {current && <Answer answer={current} title={offered.find(({ id }) => id === asked)?.title ?? ""} />}
    </section>
  );
}

const OUTCOMES: Readonly<Record<SolveAnswer["outcome"], string>> = {
  reached: "Reached.",
  already: "It is so already.",
  nearest: "Not reached; this is the nearest.",
  none: "Nothing better than now was found.",
};

function Answer({ answer, title }: { readonly answer: SolveAnswer; readonly title: string }): ReactNode {
  const units = useBench((state) => state.units);
  const { aim, changes, operations, readings, effects, findings, notes, outcome } = answer;
  const say = (value: number | null, dimension: Dimension): ReactNode =>
    value === null ? "none" : <Reading text={shown(value, dimension, units)} />;
  return (
    <>
      <p>
        <b>{OUTCOMES[outcome]}</b> {aim.label}: {say(aim.before, aim.dimension)} now, {say(aim.after, aim.dimension)}{" "}
        then.
      </p>
      {changes.length > 0 && (
        <table className="compare-table">
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
                <td>{say(before, dimension)}</td>
                <td>{say(after, dimension)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {operations.length > 0 && (
        <button type="button" className="pressable take" onClick={() => edit(operations, title.toLowerCase())}>
          Take it
        </button>
      )}
      <table className="compare-table">
        <thead>
          <tr>
            <th scope="col">what it does</th>
            <th scope="col">now</th>
            <th scope="col">then</th>
          </tr>
        </thead>
        <tbody>
          {[...readings, ...effects].map((reading) => (
            <EffectRow key={`${reading.label} ${reading.at ?? ""}`} reading={reading} units={units} />
          ))}
        </tbody>
      </table>
      <ul className="small">
        {findings.appeared.map((finding) => (
          <li key={`new ${finding.code} ${finding.place}`}>New: {sayFinding(finding, units).sentence}</li>
        ))}
        {findings.gone.map((finding) => (
          <li key={`gone ${finding.code} ${finding.place}`}>Gone: {sayFinding(finding, units).sentence}</li>
        ))}
        {notes.map((note) => {
          const words = saySolveNote(note, { units });
          return <li key={words}>{words}</li>;
        })}
      </ul>
    </>
  );
}

function EffectRow({ reading, units }: { readonly reading: SolveReading; readonly units: UnitSystem }): ReactNode {
  const { label, dimension, before, after, nameBefore, nameAfter, signed } = reading;
  const say = (value: number | null, name: string | undefined): ReactNode => (
    <>
      {value === null ? "none" : <Reading text={shown(value, dimension, units, { sign: signed })} />}
      {name !== undefined && `, ${name}`}
    </>
  );
  return (
    <tr>
      <th scope="row">{label}</th>
      <td>{say(before, nameBefore)}</td>
      <td>{say(after, nameAfter)}</td>
    </tr>
  );
}
