import { type Dimension, parseQuantity, unitOf } from "@armwright/engine";
import { type ReactNode, useState } from "react";
import { useBench } from "../app/use-bench.ts";
import { FINGER, PHONE, useMedia } from "../app/use-media.ts";
import { AngleKeypad, LengthKeypad } from "../form/Keypad.tsx";
import { typedText, typedValue } from "../form/typed.ts";
import { unitShown } from "../words/shown.ts";
import { MoreOfReading, SureTo } from "./SureTo.tsx";
import { dimensionOf, factsOf, type ReadingEntry, readOf, withField } from "./survey-document.ts";

interface Props {
  readonly draft: ReadingEntry;
  /** Begins empty: it is a reading of its own. */
  readonly isFresh: boolean;
  /** The ± that a reading of its kind has where none is said, SI; null before there is a survey. */
  readonly usual: number | null;
  readonly onDraft: (draft: ReadingEntry) => void;
  readonly onSet: (entry: ReadingEntry) => void;
  readonly children: ReactNode;
}

/** What the tape reads: keyed in under the car, typed at the bench; nothing for what is only so. */
export function ReadingValue(props: Props): ReactNode {
  const { reads } = factsOf(props.draft.kind);
  if (reads === "nothing") return <IsSo {...props} />;
  return reads === "by" ? <OffsetValue {...props} /> : <TakenValue {...props} />;
}

function TakenValue({ draft, isFresh, usual, onDraft, onSet, children }: Props): ReactNode {
  const units = useBench((state) => state.units);
  const own = useBench(({ document }) => document?.units ?? "inch-pound");
  const isKeyed = [useMedia(PHONE), useMedia(FINGER)].some(Boolean);
  const dimension = dimensionOf(draft.kind);
  const set = (text: string): void =>
    onSet(withField(withField(draft, "deferred", undefined), "reads", typedValue(text, dimension, units, own)));
  const before = isFresh ? null : readOf(draft, own);
  const more = (
    <>
      <SureTo draft={draft} usual={usual} onDraft={onDraft} />
      <MoreOfReading draft={draft} onDraft={onDraft}>
        {children}
      </MoreOfReading>
    </>
  );
  if (!isKeyed) {
    const typed = isFresh ? "" : typedText((draft as Readonly<Record<string, unknown>>)["reads"]);
    return (
      <TypedValue typed={typed} dimension={dimension} onSet={set}>
        {more}
      </TypedValue>
    );
  }
  return dimension === "angle" ? (
    <AngleKeypad before={before} onSet={set}>
      {more}
    </AngleKeypad>
  ) : (
    <LengthKeypad units={units} before={before} onSet={set}>
      {more}
    </LengthKeypad>
  );
}

/** At the bench, with a keyboard: large, with its unit, set by Enter. */
export function TypedValue({
  typed,
  dimension,
  onSet,
  children,
}: {
  readonly typed: string;
  readonly dimension: Dimension;
  readonly onSet: (text: string) => void;
  readonly children: ReactNode;
}): ReactNode {
  const units = useBench((state) => state.units);
  const own = useBench(({ document }) => document?.units ?? "inch-pound");
  const [text, setText] = useState(typed);
  const value = typedValue(text, dimension, units, own);
  const parsed = value === undefined ? null : parseQuantity(value, dimension, own);
  const isReady = parsed?.ok ?? false;
  return (
    <form
      className="typed-reading"
      onSubmit={(event) => {
        event.preventDefault();
        if (isReady) onSet(text);
      }}
    >
      <label htmlFor="reading-value">{dimension === "angle" ? "The finder reads" : "The tape reads"}</label>
      <p className="keyed-reading">
        <input
          id="reading-value"
          // biome-ignore lint/a11y/noAutofocus: the reading is what the panel was opened for.
          autoFocus
          value={text}
          autoComplete="off"
          spellCheck={false}
          placeholder={dimension === "angle" ? "1.5" : units === "metric" ? "890.5" : "35 1/16"}
          aria-invalid={text !== "" && !isReady ? true : undefined}
          aria-describedby={text !== "" && !isReady ? "reading-value-fault" : undefined}
          onChange={(event) => setText(event.target.value)}
        />
        <span className="unit">{unitShown(dimension, units)}</span>
      </p>
      {text !== "" && !isReady && (
        <p className="fault" id="reading-value-fault">
          That is no {dimension === "angle" ? "angle" : "length"}: write it as{" "}
          {dimension === "angle" ? "-3.1" : units === "metric" ? "890.5" : "35 1/16, 35.06 or 2' 11 1/16\""} (
          {unitOf(dimension, units)}).
        </p>
      )}
      {children}
      <button type="submit" className="set" disabled={!isReady}>
        Set it
      </button>
    </form>
  );
}

/** A point on a line, a mirror image: nothing is read, it is so. */
const IsSo = ({ draft, usual, onDraft, onSet, children }: Props): ReactNode => (
  <>
    <SureTo draft={draft} usual={usual} onDraft={onDraft} />
    {children}
    <button type="button" className="set" onClick={() => onSet(withField(draft, "deferred", undefined))}>
      So it is
    </button>
  </>
);

const WAYS = [
  ["x", "forward"],
  ["y", "left"],
  ["z", "up"],
] as const;

function OffsetValue({ draft, usual, onDraft, onSet, children }: Props): ReactNode {
  const units = useBench((state) => state.units);
  const own = useBench(({ document }) => document?.units ?? "inch-pound");
  const by = draft.kind === "offset" ? (draft.by as Readonly<Record<string, unknown>>) : {};
  const [texts, setTexts] = useState<Readonly<Record<string, string>>>(() =>
    Object.fromEntries(WAYS.map(([axis]) => [axis, typedText(by[axis])])),
  );
  const values = WAYS.flatMap(([axis]) => {
    const value = typedValue(texts[axis] ?? "", "length", units, own);
    return value === undefined ? [] : [[axis, value] as const];
  });
  const isReady = values.length > 0 && values.every(([, value]) => parseQuantity(value, "length", own).ok);
  return (
    <form
      className="typed-reading"
      onSubmit={(event) => {
        event.preventDefault();
        if (isReady) onSet(withField(withField(draft, "deferred", undefined), "by", Object.fromEntries(values)));
      }}
    >
      <div className="axes">
        {WAYS.map(([axis, words]) => (
          <div key={axis} className="field">
            <label htmlFor={`offset-${axis}`}>
              {words}, {unitShown("length", units)}
            </label>
            <div className="entry">
              <input
                id={`offset-${axis}`}
                value={texts[axis] ?? ""}
                autoComplete="off"
                onChange={(event) => setTexts({ ...texts, [axis]: event.target.value })}
              />
            </div>
          </div>
        ))}
      </div>
      <SureTo draft={draft} usual={usual} onDraft={onDraft} />
      {children}
      <button type="submit" className="set" disabled={!isReady}>
        Set it
      </button>
    </form>
  );
}
