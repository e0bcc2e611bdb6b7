import { parseQuantity, type UnitSystem } from "@armwright/engine";
import { type CarDocument, parsePath, valueAt } from "@armwright/engine/document";
import { type ReactNode, useState } from "react";
import { Dialog } from "../app/Dialog.tsx";
import { RubOutMark } from "../app/Mark.tsx";
import { useBench } from "../app/use-bench.ts";
import {
  EMPTY_READING,
  type KeyedReading,
  keyDigit,
  keyFeet,
  keyMinus,
  keySixteenths,
  lowest,
  readingOf,
  readingText,
  rubOut,
} from "../form/keypad-reading.ts";
import { type Field, fieldAt } from "../form/schema-fields.ts";
import { typedText, typedValue } from "../form/typed.ts";
import { enter } from "../form/use-field.ts";
import { SketchFigure } from "../sheet/SketchFigure.tsx";
import { showPanel } from "../store/bench.ts";
import { Reading } from "../words/Reading.tsx";
import { tidy } from "../words/shown.ts";

/** The tape keypad: whole inches on the left, an inch laid out in sixteenths on the right; or millimetres. */
export function KeypadPanel({ place }: { readonly place: string }): ReactNode {
  const document = useBench((state) => state.document);
  const units = useBench((state) => state.units);
  const field = document ? fieldAt(place, document) : undefined;
  if (!document || !field) return null;
  return units === "metric" ? (
    <MetricKeypad document={document} field={field} />
  ) : (
    <InchKeypad document={document} field={field} />
  );
}

interface Props {
  readonly document: CarDocument;
  readonly field: Field;
}

const metresAt = (document: CarDocument, path: string): number | null => {
  const typed: unknown = valueAt(document, parsePath(path) ?? []);
  if (typeof typed !== "number" && typeof typed !== "string") return null;
  const parsed = parseQuantity(typed, "length", document.units);
  return parsed.ok ? parsed.value : null;
};

function set(field: Field, text: string, units: UnitSystem, own: UnitSystem): void {
  enter(field, typedValue(text, "length", units, own));
  showPanel(null);
}

function InchKeypad({ document, field }: Props): ReactNode {
  const before = metresAt(document, field.path);
  // Fresh until the first key: what stands there is shown, and the first digit begins anew.
  const [keyed, setKeyed] = useState<KeyedReading | null>(null);
  const now = keyed ?? (before === null ? EMPTY_READING : readingOf(before));
  const text = readingText(now);
  const step = (way: 1 | -1): void => {
    const sixteenths = sixteenthsOf(now) + way;
    setKeyed(readingOf((sixteenths / 16) * 0.0254));
  };
  return (
    <Dialog title={titleOf(field)} isFull>
      <Figure field={field} />
      <Before document={document} field={field} />
      <Shown text={text} unit="in" onRubOut={() => setKeyed(rubOut(now))} />
      <div className="steppers">
        <button type="button" onClick={() => step(-1)} aria-label="one sixteenth less">
          <Reading text={"\u2212 1/16"} />
        </button>
        <button
          type="button"
          onClick={() => setKeyed(keyMinus(now))}
          aria-label="change of sign"
          aria-pressed={now.minus}
        >
          {"+ / \u2212"}
        </button>
        <button type="button" onClick={() => step(1)} aria-label="one sixteenth more">
          <Reading text="+ 1/16" />
        </button>
      </div>
      <div className="pads">
        <div>
          <p className="small quiet">whole inches</p>
          <div className="whole">
            {DIGITS.map((digit) => (
              <button
                type="button"
                key={digit}
                onClick={() => setKeyed(keyDigit(keyed ?? { ...EMPTY_READING, minus: now.minus }, digit))}
              >
                {digit}
              </button>
            ))}
            <button type="button" onClick={() => setKeyed(keyFeet(now))}>
              ft
            </button>
          </div>
        </div>
        <div>
          <p className="small quiet">sixteenths</p>
          <div className="sixteenths">
            {Array.from({ length: 16 }, (_, count) => (
              <button
                type="button"
                // biome-ignore lint/suspicious/noArrayIndexKey: the count is the key's name.
                key={count}
                className={`graduation-${graduation(count)}`}
                aria-pressed={now.sixteenths === count}
                onClick={() => setKeyed(keySixteenths(now, count))}
              >
                <Reading text={count === 0 ? "0" : lowest(count)} />
              </button>
            ))}
          </div>
        </div>
      </div>
      <button
        type="button"
        className="set"
        disabled={text === ""}
        onClick={() => set(field, text, "inch-pound", document.units)}
      >
        Set <Reading text={tidy(text)} />
      </button>
    </Dialog>
  );
}

const DIGITS = ["7", "8", "9", "4", "5", "6", "1", "2", "3", "0"] as const;

/** How long the tape's line over a key is: the inch itself, halves, quarters, eighths, sixteenths. */
const graduation = (count: number): number =>
  count === 0 ? 16 : count % 8 === 0 ? 8 : count % 4 === 0 ? 4 : count % 2 === 0 ? 2 : 1;

const sixteenthsOf = ({ minus, feet, whole, sixteenths }: KeyedReading): number =>
  (minus ? -1 : 1) * ((Number(feet) * 12 + Number(whole)) * 16 + sixteenths);

function MetricKeypad({ document, field }: Props): ReactNode {
  const before = metresAt(document, field.path);
  const [keyed, setKeyed] = useState<string | null>(null);
  const now = keyed ?? (before === null ? "" : String(Math.round(before * 2000) / 2));
  const step = (by: number): void => setKeyed(String(Math.round((Number(now) + by) * 2) / 2));
  return (
    <Dialog title={titleOf(field)} isFull>
      <Figure field={field} />
      <Before document={document} field={field} />
      <Shown text={now} unit="mm" onRubOut={() => setKeyed(now.slice(0, -1))} />
      <div className="steppers">
        <button type="button" onClick={() => step(-1)} aria-label="one millimetre less">
          {"\u2212 1"}
        </button>
        <button
          type="button"
          aria-label="change of sign"
          aria-pressed={now.startsWith("-")}
          onClick={() => setKeyed(now.startsWith("-") ? now.slice(1) : `-${now}`)}
        >
          {"+ / \u2212"}
        </button>
        <button type="button" onClick={() => step(1)} aria-label="one millimetre more">
          + 1
        </button>
      </div>
      <div className="pads metric">
        <div className="whole">
          {DIGITS.map((digit) => (
            <button
              type="button"
              key={digit}
              onClick={() => setKeyed((keyed ?? "").length < 6 ? `${keyed ?? ""}${digit}` : keyed)}
            >
              {digit}
            </button>
          ))}
          <button type="button" onClick={() => setKeyed(now.includes(".") ? now : `${now === "" ? "0" : now}.5`)}>
            .5
          </button>
        </div>
      </div>
      <button
        type="button"
        className="set"
        disabled={now === "" || now === "-"}
        onClick={() => set(field, now, "metric", document.units)}
      >
        Set {tidy(now)} mm
      </button>
    </Dialog>
  );
}

function Figure({ field }: { readonly field: Field }): ReactNode {
  return (
    <div className="keypad-figure">
      <SketchFigure fallback={field.path} />
    </div>
  );
}

function Before({ document, field }: Props): ReactNode {
  const typed = typedText(valueAt(document, parsePath(field.path) ?? []));
  return (
    <p className="before quiet">
      {typed === "" ? (
        "Nothing entered before"
      ) : (
        <>
          Stands at: <Reading text={tidy(typed)} />
        </>
      )}
    </p>
  );
}

function Shown({
  text,
  unit,
  onRubOut,
}: {
  readonly text: string;
  readonly unit: string;
  readonly onRubOut: () => void;
}): ReactNode {
  return (
    <p className="keyed-reading big">
      <output>
        <Reading text={text === "" ? "0" : tidy(text)} />
      </output>
      <span className="unit">{unit}</span>
      <button type="button" className="pressable square" aria-label="Rub out" onClick={onRubOut}>
        <RubOutMark />
      </button>
    </p>
  );
}

const titleOf = (field: Field): string =>
  field.group === "" ? field.label : `${field.group}, ${field.label.toLowerCase()}`;
