import { SOLVE_QUESTIONS, type SolveAnswer, type SolveQuestion, solveContext, solveNeed } from "@armwright/engine";
import { type ReactNode, useEffect, useMemo, useRef, useState } from "react";
import { useBench } from "../app/use-bench.ts";
import { runJob } from "../jobs/run-job.ts";
import { useRestingStudy } from "../mounts/use-resting-study.ts";
import "../styles/figures.css";
import { Answer } from "./Answer.tsx";
import { QuestionInputs } from "./QuestionInputs.tsx";

interface Props {
  /** Ids of the questions that belong to the step. */
  readonly questions: readonly string[];
}

type Given = Readonly<Record<string, number | string>>;

/** How the question that was last asked stands. */
type Asking =
  | { readonly state: "idle" }
  | { readonly state: "looking"; readonly share: number }
  | { readonly state: "said"; readonly words: string }
  | { readonly state: "answered"; readonly of: unknown; readonly answer: SolveAnswer; readonly given: Given };

const IDLE: Asking = { state: "idle" };
const NONE: Given = {};

/** "Find the number that makes this true": what is wanted is typed, the search runs in a worker, its answer is taken as one step. */
export function SolveFor({ questions }: Props): ReactNode {
  const car = useRestingStudy()?.car ?? null;
  const [chosen, setChosen] = useState<string | null>(null);
  const offered = useMemo(() => {
    if (!car) return [];
    const context = solveContext({ car, ownRight: [], carWith: () => null });
    return SOLVE_QUESTIONS.filter((each) => questions.includes(each.id) && solveNeed(context, each) === null).map(
      (question) => ({ question, inputs: question.inputs(context) }),
    );
  }, [car, questions]);
  if (offered.length === 0) return null;
  return (
    <section className="solve-for" aria-label="Solve for">
      <h3>Solve for</h3>
      <ul className="solve-questions">
        {offered.map(({ question: { id, title } }) => (
          <li key={id}>
            <button
              type="button"
              className="pressable"
              aria-expanded={chosen === id}
              onClick={() => setChosen(chosen === id ? null : id)}
            >
              {title}
            </button>
          </li>
        ))}
      </ul>
      {offered.map(
        ({ question, inputs }) =>
          chosen === question.id && <Question key={question.id} question={question} inputs={inputs} />,
      )}
    </section>
  );
}

interface QuestionProps {
  readonly question: SolveQuestion;
  readonly inputs: ReturnType<SolveQuestion["inputs"]>;
}

function Question({ question, inputs }: QuestionProps): ReactNode {
  const document = useBench((state) => state.document);
  const [given, setGiven] = useState<Given>(NONE);
  const [asking, setAsking] = useState<Asking>(IDLE);
  const running = useRef<AbortController | null>(null);
  useEffect(() => () => running.current?.abort(), []);
  if (!document) return null;
  const ask = async (): Promise<void> => {
    running.current?.abort();
    const control = new AbortController();
    running.current = control;
    setAsking({ state: "looking", share: 0 });
    const isNewest = (): boolean => running.current === control;
    const outcome = await runJob(
      "solve",
      { document, question: question.id, values: given },
      {
        signal: control.signal,
        onProgress: (share) => isNewest() && setAsking({ state: "looking", share }),
      },
    );
    if (!isNewest()) return;
    running.current = null;
    if (outcome.ok) setAsking({ state: "answered", of: document, answer: outcome.answer, given });
    else setAsking({ state: "said", words: outcome.why === "given up" ? "Given up." : sentence(outcome.words) });
  };
  const isCurrent = asking.state === "answered" && asking.of === document && asking.given === given;
  return (
    <div className="solve-question">
      <p className="small quiet">{question.meaning}</p>
      <QuestionInputs inputs={inputs} given={given} onGive={setGiven} />
      <p className="adders">
        <button type="button" className="pressable ask" onClick={() => void ask()}>
          Find it
        </button>
        {given !== NONE && (
          <button type="button" className="pressable" onClick={() => setGiven(NONE)}>
            As nobody said
          </button>
        )}
      </p>
      <div role="status">
        {asking.state === "looking" && (
          <p className="working">
            <progress max={1} value={asking.share} aria-label="Looking" />
            <span className="small quiet">looking</span>
            <button type="button" className="pressable" onClick={() => running.current?.abort()}>
              Stop
            </button>
          </p>
        )}
        {asking.state === "said" && <p>{asking.words}</p>}
        {asking.state === "answered" && !isCurrent && (
          <p className="quiet">The car or the question has changed since: find it anew.</p>
        )}
      </div>
      {asking.state === "answered" && isCurrent && <Answer answer={asking.answer} title={question.title} />}
    </div>
  );
}

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1).replace(/\.$/, "")}.`;
