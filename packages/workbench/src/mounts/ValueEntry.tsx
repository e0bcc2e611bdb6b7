import { type Dimension, formatNumber, parseQuantity, toUnit } from "@armwright/engine";
import { type KeyboardEvent, type ReactNode, useId, useState } from "react";
import { useBench } from "../app/use-bench.ts";
import { Reading } from "../words/Reading.tsx";
import { bare, bigStepOf, stepOf, tidy, unitShown } from "../words/shown.ts";

interface Props {
  readonly label: string;
  /** SI. */
  readonly value: number;
  readonly dimension?: Dimension;
  readonly onEnter: (value: number) => void;
  /** Said beside the value, e.g. that it is common practice. */
  readonly note?: string;
  /** Read aloud in place of the label. */
  readonly name?: string;
  readonly least?: number;
  readonly most?: number;
  /** In place of the dimension's own unit. */
  readonly unit?: string;
  /** What a caliper reads is shown so, not as marks of a tape. */
  readonly decimals?: number;
}

/** A value of the search, typed as a builder types it; not part of the car's document. */
export function ValueEntry({
  label,
  value,
  dimension = "length",
  onEnter,
  note,
  name,
  least,
  most,
  unit,
  decimals,
}: Props): ReactNode {
  const units = useBench((state) => state.units);
  const [draft, setDraft] = useState<string | null>(null);
  const id = useId();
  const parsed = draft === null ? null : parseQuantity(draft.replace(/\u2212/g, "-"), dimension, units);
  const isAllowed = (each: number): boolean =>
    each >= (least ?? Number.NEGATIVE_INFINITY) && each <= (most ?? Number.POSITIVE_INFINITY);
  const isWrong = parsed !== null && !(parsed.ok && isAllowed(parsed.value));
  const text =
    decimals === undefined
      ? bare(value, dimension, units).replace(/[°%]/g, "").trim()
      : tidy(formatNumber(toUnit(value, dimension, units), decimals));
  const finish = (): void => {
    if (parsed?.ok && !isWrong && draft !== text) onEnter(parsed.value);
    setDraft(null);
  };
  const press = (event: KeyboardEvent<HTMLInputElement>): void => {
    if (event.key === "Enter") finish();
    else if (event.key === "Escape") setDraft(null);
    else if (dimension === "length" && (event.key === "ArrowUp" || event.key === "ArrowDown")) {
      event.preventDefault();
      const step = event.shiftKey ? bigStepOf(units) : stepOf(units);
      const from = parsed?.ok ? parsed.value : value;
      setDraft(null);
      const stepped = (Math.round(from / step) + (event.key === "ArrowUp" ? 1 : -1)) * step;
      if (isAllowed(stepped)) onEnter(stepped);
    }
  };
  return (
    <div className={isWrong ? "field faulty" : "field"}>
      <label htmlFor={id}>{label}</label>
      <div className="entry">
        <span className="typed">
          <input
            id={id}
            type="text"
            autoComplete="off"
            spellCheck={false}
            size={1}
            value={draft ?? text.replace(/\u2212/g, "-")}
            aria-label={name}
            aria-invalid={isWrong || undefined}
            onChange={(event) => setDraft(event.target.value)}
            onBlur={finish}
            onKeyDown={press}
          />
          <span className="at-rest" aria-hidden="true">
            <Reading text={text} />
          </span>
        </span>
        <span className="unit">{unit ?? unitShown(dimension, units)}</span>
        {note !== undefined && <small>{note}</small>}
      </div>
    </div>
  );
}
