import { type ReactNode, useId } from "react";
import { useBench } from "../app/use-bench.ts";
import { EVENT_FIELDS, EVENT_KINDS, EVENT_WORDS, type EventField, eventOf, unitOfField } from "./event-fields.ts";
import { landingBench, useLanding } from "./landing-store.ts";
import { giveItUp, runIt } from "./run-it.ts";

/** What happens to the wheel: kind, sizes, and the press that lets it happen. */
export function EventForm(): ReactNode {
  const units = useBench((state) => state.units);
  const { kind, oneWheel, typed, stage, says } = useLanding((state) => state);
  const read = eventOf({ kind, oneWheel, typed }, units);
  const canBeOne = kind === "drop" || kind === "bump";
  return (
    <form
      className="event-form"
      onSubmit={(event) => {
        event.preventDefault();
        void runIt();
      }}
    >
      <fieldset className="event-kinds">
        <legend className="unseen">What happens to the wheel</legend>
        {EVENT_KINDS.map((each) => (
          <label key={each} className={each === kind ? "on" : ""}>
            <input
              type="radio"
              name="event"
              className="unseen"
              checked={each === kind}
              onChange={() => landingBench.setState({ kind: each, says: "" })}
            />
            {EVENT_WORDS[each]}
          </label>
        ))}
      </fieldset>
      <div className="factors event-fields">
        {EVENT_FIELDS[kind]
          .filter(({ isForOneWheel }) => !isForOneWheel || oneWheel)
          .map((field) => (
            <OneField key={field.name} field={field} isFaulty={!read.ok && read.field === field.name} />
          ))}
      </div>
      {canBeOne && (
        <label className="one-wheel">
          <input
            type="checkbox"
            checked={oneWheel}
            onChange={(event) => landingBench.setState({ oneWheel: event.target.checked })}
          />{" "}
          {kind === "drop" ? "this wheel lands first" : "under this wheel only"}
        </label>
      )}
      {!read.ok && <p className="fault">{read.words}</p>}
      <p className="adders">
        {stage === null ? (
          <button key="begin" type="submit" className="pressable take" disabled={!read.ok}>
            Let it happen
          </button>
        ) : (
          // Another element than the one that begins: else the press that gives up would begin anew.
          <button key="end" type="button" className="pressable take" onClick={giveItUp}>
            Give up
          </button>
        )}
        <span role="status" className="small">
          {stage === null ? says : `${stage} …`}
        </span>
      </p>
    </form>
  );
}

function OneField({ field, isFaulty }: { readonly field: EventField; readonly isFaulty: boolean }): ReactNode {
  const units = useBench((state) => state.units);
  const typed = useLanding((state) => state.typed);
  const id = useId();
  return (
    <div className={isFaulty ? "field faulty" : "field"}>
      <label htmlFor={id}>{field.label}</label>
      <div className="entry">
        <input
          id={id}
          type="text"
          inputMode={field.read === "class" ? "text" : "decimal"}
          size={1}
          autoComplete="off"
          data-event={field.name}
          value={typed[field.name] ?? field.usual[units]}
          aria-invalid={isFaulty ? true : undefined}
          onChange={(event) =>
            landingBench.setState({ typed: { ...typed, [field.name]: event.target.value }, says: "" })
          }
        />
        <span className="unit">{unitOfField(field, units)}</span>
      </div>
    </div>
  );
}
