import type { SolveInput, SolveQuestion } from "@armwright/engine";
import type { ReactNode } from "react";
import { ValueEntry } from "../mounts/ValueEntry.tsx";

type Given = Readonly<Record<string, number | string>>;

interface Props {
  readonly inputs: ReturnType<SolveQuestion["inputs"]>;
  /** What the builder has set himself; the rest has its default. */
  readonly given: Given;
  readonly onGive: (given: Given) => void;
}

/** Everything that a question can be asked with, typed as a builder types it. */
export function QuestionInputs({ inputs, given, onGive }: Props): ReactNode {
  const give = (input: SolveInput, value: number | string): void => onGive({ ...given, [input.id]: value });
  return (
    <div className="question-inputs">
      {inputs.map((input) =>
        "choices" in input ? (
          <label className="field wide" key={input.id}>
            <span>{capital(input.label)}</span>
            <span className="entry">
              <select
                value={given[input.id] ?? input.default}
                data-question-input={input.id}
                onChange={(event) => give(input, event.target.value)}
              >
                {input.choices.map(({ id, label }) => (
                  <option key={id} value={id}>
                    {label}
                  </option>
                ))}
              </select>
            </span>
          </label>
        ) : (
          <ValueEntry
            key={input.id}
            label={capital(input.label)}
            dimension={input.dimension}
            value={Number(given[input.id] ?? input.default)}
            least={input.least}
            most={input.most}
            {...(input.dimension === "angle" && { decimals: 2 })}
            onEnter={(value) => give(input, value)}
          />
        ),
      )}
    </div>
  );
}

const capital = (label: string): string => `${label.charAt(0).toUpperCase()}${label.slice(1)}`;
