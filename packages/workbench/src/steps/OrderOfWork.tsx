import type { ReactNode } from "react";
import { StepMark } from "../app/Mark.tsx";
import { useBench } from "../app/use-bench.ts";
import { chooseStep } from "../store/bench.ts";
import { stepState } from "./step-state.ts";
import { STEPS, type StepId } from "./steps.ts";

/** The builder's own sequence: what each step needs, whether it is sound, how much waits. */
export function OrderOfWork({ onChosen }: { readonly onChosen?: (step: StepId) => void }): ReactNode {
  const document = useBench((state) => state.document);
  const live = useBench((state) => state.live);
  const chosen = useBench(({ step }) => step);
  return (
    <nav className="order" aria-labelledby="order-of-work">
      <h2 id="order-of-work">Order of work</h2>
      <ol>
        {STEPS.map((step, index) => {
          const state = stepState(step, document, live, step.id === chosen);
          return (
            <li key={step.id} className={state.shape}>
              <button
                type="button"
                aria-current={step.id === chosen ? "step" : undefined}
                onClick={() => {
                  chooseStep(step.id);
                  onChosen?.(step.id);
                }}
              >
                <b aria-hidden="true">{index + 1}</b>
                <span>{step.title}</span>
                <em>{state.word}</em>
                <StepMark shape={state.shape} />
              </button>
            </li>
          );
        })}
      </ol>
    </nav>
  );
}
