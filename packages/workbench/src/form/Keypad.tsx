import { INCH, type UnitSystem } from "@armwright/engine";
import { type ReactNode, useState } from "react";
import { RubOutMark } from "../app/Mark.tsx";
import { Reading } from "../words/Reading.tsx";
import { tidy } from "../words/shown.ts";
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
} from "./keypad-reading.ts";

interface Props {
  /** What stands there, SI; the first digit begins anew. */
  readonly before: number | null;
  /** With what was keyed, in the shown unit: `35 1/16`, `890.5`, `-3.1`. */
  readonly onSet: (text: string) => void;
  /** Between the keys and the button that sets it. */
  readonly children?: ReactNode;
}

interface LengthProps extends Props {
  readonly units: UnitSystem;
}

/** A length keyed in: whole inches on the left, an inch laid out in sixteenths on the right; or millimetres. */
export const LengthKeypad = ({ units, ...props }: LengthProps): ReactNode =>
  units === "metric" ? <DecimalKeypad {...props} {...MILLIMETRES} /> : <InchKeypad {...props} />;

/** An angle keyed in, degrees. */
export const AngleKeypad = (props: Props): ReactNode => <DecimalKeypad {...props} {...DEGREES} />;

function InchKeypad({ before, onSet, children }: Props): ReactNode {
  // Fresh until the first key: what stands there is shown, and the first digit begins anew.
  const [keyed, setKeyed] = useState<KeyedReading | null>(null);
  const now = keyed ?? (before === null ? EMPTY_READING : readingOf(before));
  const text = readingText(now);
  const step = (way: 1 | -1): void => {
    const sixteenths = sixteenthsOf(now) + way;
    setKeyed(readingOf((sixteenths / 16) * INCH));
  };
  return (
    <>
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
      {children}
      <button type="button" className="set" disabled={text === ""} onClick={() => onSet(text)}>
        Set <Reading text={tidy(text)} />
      </button>
    </>
  );
}

const DIGITS = ["7", "8", "9", "4", "5", "6", "1", "2", "3", "0"] as const;

/** How long the tape's line over a key is: the inch itself, halves, quarters, eighths, sixteenths. */
const graduation = (count: number): number =>
  count === 0 ? 16 : count % 8 === 0 ? 8 : count % 4 === 0 ? 4 : count % 2 === 0 ? 2 : 1;

const sixteenthsOf = ({ minus, feet, whole, sixteenths }: KeyedReading): number =>
  (minus ? -1 : 1) * ((Number(feet) * 12 + Number(whole)) * 16 + sixteenths);

interface Decimal {
  readonly unit: string;
  readonly unitName: string;
  /** Of one step of the last place, and of a press of + or −. */
  readonly parts: number;
  readonly step: number;
  /** Of SI, what one unit is. */
  readonly size: number;
  /** The last key: a half, or the point for what follows. */
  readonly lastKey: ".5" | ".";
}

const MILLIMETRES: Decimal = { unit: "mm", unitName: "millimetre", parts: 2, step: 1, size: 0.001, lastKey: ".5" };
const DEGREES: Decimal = { unit: "°", unitName: "tenth", parts: 10, step: 0.1, size: Math.PI / 180, lastKey: "." };

function DecimalKeypad({
  before,
  onSet,
  children,
  unit,
  unitName,
  parts,
  step,
  size,
  lastKey,
}: Props & Decimal): ReactNode {
  const [keyed, setKeyed] = useState<string | null>(null);
  const now = keyed ?? (before === null ? "" : String(Math.round((before / size) * parts) / parts));
  const move = (by: number): void => setKeyed(String(Math.round((Number(now) + by) * parts) / parts));
  const point = (): void => {
    const from = keyed ?? "";
    if (!from.includes(".")) setKeyed(`${from === "" || from === "-" ? `${from}0` : from}${lastKey}`);
  };
  return (
    <>
      <Shown text={now} unit={unit} onRubOut={() => setKeyed(now.slice(0, -1))} />
      <div className="steppers">
        <button type="button" onClick={() => move(-step)} aria-label={`one ${unitName} less`}>
          {`\u2212 ${step}`}
        </button>
        <button
          type="button"
          aria-label="change of sign"
          aria-pressed={now.startsWith("-")}
          onClick={() => setKeyed(now.startsWith("-") ? now.slice(1) : `-${now}`)}
        >
          {"+ / \u2212"}
        </button>
        <button type="button" onClick={() => move(step)} aria-label={`one ${unitName} more`}>
          {`+ ${step}`}
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
          <button type="button" onClick={point}>
            {lastKey}
          </button>
        </div>
      </div>
      {children}
      <button
        type="button"
        className="set"
        disabled={!Number.isFinite(Number.parseFloat(now))}
        onClick={() => onSet(now)}
      >
        Set {tidy(now)}
        {unit === "°" ? unit : ` ${unit}`}
      </button>
    </>
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
