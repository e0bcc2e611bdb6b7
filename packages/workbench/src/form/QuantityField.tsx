import { formatValue, parseQuantity } from "@armwright/engine";
import { type KeyboardEvent, type ReactNode, useId, useState } from "react";
import { FINGER, PHONE, useMedia } from "../app/use-media.ts";
import { showPanel } from "../store/bench.ts";
import { Reading } from "../words/Reading.tsx";
import { bigStepOf, shown, stepOf, tidy } from "../words/shown.ts";
import type { Field } from "./schema-fields.ts";
import { converted, lengthAsTyped, typedText, typedValue, unitOfTyped } from "./typed.ts";
import { enter, type FieldUse, faultWords, holdField, isAssumed, useField } from "./use-field.ts";

interface Props {
  readonly field: Field;
  /** Only the axis, in a point's row. */
  readonly short?: string;
}

/** A value with a unit: label, reading and unit on a ruled line, as on a form. */
export function QuantityField({ field, short }: Props): ReactNode {
  const use = useField(field.path);
  const isPhone = useMedia(PHONE);
  const isFinger = useMedia(FINGER);
  const id = useId();
  const full = noteOf(field, use);
  // Three in a row have no room for a unit each.
  const note = short === undefined ? full : full.replace(/ (?:mm|in)$/, "");
  const names = ["field", use.isHeld ? "held" : "", use.fault ? "faulty" : ""].filter((each) => each !== "").join(" ");
  return (
    <div className={names}>
      <label htmlFor={id}>{short ?? field.label}</label>
      <div className="entry">
        {field.dimension === "length" && (isPhone || isFinger) ? (
          <KeyedEntry id={id} field={field} use={use} />
        ) : (
          <TypedEntry id={id} field={field} use={use} />
        )}
        <span className="unit">
          {use.value === undefined ? "" : unitOfTyped(use.value, field.dimension ?? "word", use.own)}
        </span>
        {note !== "" && (
          <small>
            <Reading text={note} />
          </small>
        )}
      </div>
      {use.fault && (
        <p className="fault" id={`${id}-fault`}>
          <Reading text={faultWords(use.fault)} />
        </p>
      )}
    </div>
  );
}

function TypedEntry({
  id,
  field,
  use,
}: {
  readonly id: string;
  readonly field: Field;
  readonly use: FieldUse;
}): ReactNode {
  const typed = typedText(use.value);
  const [draft, setDraft] = useState<string | null>(null);
  const finish = (): void => {
    if (draft !== null && draft !== typed)
      enter(field, typedValue(draft, field.dimension, use.units, use.own) ?? (field.isRequired ? "" : undefined));
    setDraft(null);
  };
  const press = (event: KeyboardEvent<HTMLInputElement>): void => {
    if (event.key === "Enter") finish();
    else if (event.key === "Escape") {
      setDraft(null);
      event.currentTarget.blur();
    } else if (event.key === "ArrowUp" || event.key === "ArrowDown") {
      const stepped = steppedBy(field, use, draft ?? typed, event.key === "ArrowUp" ? 1 : -1, event.shiftKey);
      if (stepped === undefined) return;
      event.preventDefault();
      setDraft(null);
      enter(field, stepped);
    }
  };
  return (
    <span className="typed">
      <input
        id={id}
        data-field={field.path}
        type="text"
        inputMode="text"
        autoComplete="off"
        spellCheck={false}
        size={1}
        value={draft ?? typed}
        placeholder={isAssumed(use.assumed, use.value) ? assumedText(use) : ""}
        aria-invalid={use.fault ? true : undefined}
        aria-describedby={use.fault ? `${id}-fault` : undefined}
        aria-label={field.group === "" ? undefined : `${field.group}, ${field.label}`}
        onFocus={() => holdField(field.path)}
        onChange={(event) => setDraft(event.target.value)}
        onBlur={finish}
        onKeyDown={press}
      />
      <span className="at-rest" aria-hidden="true">
        {typed === "" ? (
          <span className="quiet">
            <Reading text={isAssumed(use.assumed, use.value) ? assumedText(use) : "\u2014"} />
          </span>
        ) : (
          <Reading text={tidy(typed)} />
        )}
      </span>
    </span>
  );
}

/** Under the car a reading is keyed in: the field opens the tape keypad. */
function KeyedEntry({
  id,
  field,
  use,
}: {
  readonly id: string;
  readonly field: Field;
  readonly use: FieldUse;
}): ReactNode {
  const typed = typedText(use.value);
  return (
    <button
      type="button"
      id={id}
      className="keyed"
      data-field={field.path}
      aria-describedby={use.fault ? `${id}-fault` : undefined}
      aria-label={`${field.group === "" ? "" : `${field.group}, `}${field.label}: ${typed === "" ? "nothing entered" : typed}`}
      onClick={() => {
        holdField(field.path);
        showPanel({ kind: "keypad", place: field.path });
      }}
    >
      {typed === "" ? (
        <span className="quiet">
          <Reading text={isAssumed(use.assumed, use.value) ? assumedText(use) : "enter"} />
        </span>
      ) : (
        <Reading text={tidy(typed)} />
      )}
    </button>
  );
}

const assumedText = ({ assumed, units }: FieldUse): string =>
  assumed ? tidy(formatValue(assumed.value, assumed.dimension, units)) : "";

function noteOf(field: Field, use: FieldUse): string {
  if (isAssumed(use.assumed, use.value)) return "assumed";
  return field.dimension ? tidy(converted(use.value, field.dimension, use.units, use.own)) : "";
}

/** One step up or down: lengths by the snap step, everything else by a tenth or one. */
function steppedBy(field: Field, use: FieldUse, text: string, way: 1 | -1, isBig: boolean) {
  const { dimension } = field;
  if (!dimension) return undefined;
  const parsed = parseQuantity(text === "" ? 0 : text, dimension, use.own);
  if (!parsed.ok) return undefined;
  if (dimension === "length") {
    const step = isBig ? bigStepOf(use.units) : stepOf(use.units);
    return lengthAsTyped(Math.round(parsed.value / step + way) * step, use.units, use.own);
  }
  const number = Number.parseFloat(shown(parsed.value, dimension, use.own).replace("\u2212", "-"));
  const isFine = dimension === "angle" || dimension === "ratio";
  const step = (isFine ? 0.1 : 1) * (isBig ? 10 : 1);
  return Number((number + way * step).toFixed(isFine ? 1 : 0));
}
