import type { LinkageKindName, UnitSystem } from "@armwright/engine";
import { type FormEvent, type ReactNode, useState } from "react";
import { Dialog } from "../app/Dialog.tsx";
import { bench, chooseStep, setUnits, showPanel } from "../store/bench.ts";
import { createCar } from "../store/connection.ts";
import { type NewCarAnswers, QUESTIONS, scaledStart } from "./new-car.ts";

const KINDS: readonly (readonly [LinkageKindName, string, string])[] = [
  ["h-arm", "H-arm and upper link", "one lower arm hinged at both ends; two rod ends adjust camber"],
  ["double-a-arm", "Two A-arms and a toe link", "best control of camber and toe, most brackets"],
  ["trailing-arm", "Trailing arm", "two pivots, strong, simple to jig; camber follows the body"],
  ["five-link", "Five links", "each with a rod end at both ends; everything adjusts"],
];

/** A new car: kind, units and a few questions, then a layout to measure against, marked as a starting guess. */
export function NewCarPanel(): ReactNode {
  const [answers, setAnswers] = useState<NewCarAnswers>(() => first(bench.getState().units));
  const [fault, setFault] = useState("");
  const put = (change: Partial<NewCarAnswers>): void => setAnswers({ ...answers, ...change });
  const start = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const made = scaledStart(answers);
    if ("fault" in made) {
      setFault(made.fault);
      return;
    }
    const refused = await createCar(made);
    if (refused !== null) {
      setFault(refused);
      return;
    }
    setUnits(answers.units);
    chooseStep("stance");
    showPanel(null);
  };
  return (
    <Dialog title="New car">
      <form className="new-car" onSubmit={(event) => void start(event)}>
        <fieldset className="kinds">
          <legend>How the wheel is held</legend>
          {KINDS.map(([kind, name, what]) => (
            <label key={kind} className="pressable">
              <input type="radio" name="kind" checked={answers.kind === kind} onChange={() => put({ kind })} />
              <span>
                {name} <small className="quiet">{what}</small>
              </span>
            </label>
          ))}
        </fieldset>
        <fieldset className="units">
          <legend>Units</legend>
          {(["inch-pound", "metric"] as const).map((units) => (
            <label key={units} className={answers.units === units ? "on" : undefined}>
              <input
                type="radio"
                name="system"
                className="unseen"
                checked={answers.units === units}
                onChange={() => setAnswers({ ...first(units), name: answers.name, kind: answers.kind })}
              />
              {units === "metric" ? "millimetres, kilograms" : "inches, pounds"}
            </label>
          ))}
        </fieldset>
        <Question label="What it is called" value={answers.name} unit="" onChange={(name) => put({ name })} />
        {QUESTIONS.map(([key, label]) => (
          <Question
            key={key}
            label={label}
            value={answers[key]}
            unit={answers.units === "metric" ? "mm" : "in"}
            onChange={(text) => put({ [key]: text })}
          />
        ))}
        <p className="fault" role="alert">
          {fault}
        </p>
        <button type="submit" className="set">
          Start from a guess
        </button>
        <p className="small quiet">
          The layout is invented and scaled to your answers. Every point is still yours to measure; the shock, the
          joints and the rod ends keep their sizes as sold.
        </p>
      </form>
    </Dialog>
  );
}

function Question({
  label,
  value,
  unit,
  onChange,
}: {
  readonly label: string;
  readonly value: string;
  readonly unit: string;
  readonly onChange: (text: string) => void;
}): ReactNode {
  return (
    <label className="field">
      <span>{label}</span>
      <span className="entry">
        <input type="text" size={1} value={value} onChange={(event) => onChange(event.target.value)} />
        <span className="unit">{unit}</span>
      </span>
    </label>
  );
}

const first = (units: UnitSystem): NewCarAnswers => ({
  name: "",
  kind: "h-arm",
  units,
  ...(Object.fromEntries(QUESTIONS.map(([key, , inch, metric]) => [key, units === "metric" ? metric : inch])) as Omit<
    NewCarAnswers,
    "name" | "kind" | "units"
  >),
});
