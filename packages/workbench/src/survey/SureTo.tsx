import { type Dimension, parseQuantity, type UnitSystem } from "@armwright/engine";
import { type ReactNode, useState } from "react";
import { useBench } from "../app/use-bench.ts";
import { typedText, typedValue } from "../form/typed.ts";
import { barePlusMinus } from "../words/plus-minus.ts";
import { Reading } from "../words/Reading.tsx";
import { dimensionOf, type ReadingEntry, withField } from "./survey-document.ts";

interface Props {
  readonly draft: ReadingEntry;
  readonly onDraft: (draft: ReadingEntry) => void;
}

const CHOICES = {
  "inch-pound": ["1/32", "1/16", "1/8", "1/4"],
  metric: ["1", "2", "3", "6"],
  angle: ["0.1", "0.2", "0.5", "1"],
} as const;

/** How sure the reading is, either way; `usual`: what the survey takes where it says nothing, SI. */
export function SureTo({ draft, usual, onDraft }: Props & { readonly usual: number | null }): ReactNode {
  const units = useBench((state) => state.units);
  const own = useBench(({ document }) => document?.units ?? "inch-pound");
  const dimension = dimensionOf(draft.kind);
  const isAngle = dimension === "angle";
  const choices = isAngle ? CHOICES.angle : CHOICES[units];
  const said = draft.plusMinus === undefined ? null : siOf(draft.plusMinus, dimension, own);
  const now = said ?? usual;
  const has = choices.map((each) => siOf(typedValue(each, dimension, units, own), dimension, own));
  const nearest = has.findIndex((each) => each !== null && now !== null && Math.abs(each - now) < 0.05 * each);
  return (
    <fieldset className="sure-to">
      <legend className="quiet">
        sure to, {isAngle ? "°" : units === "metric" ? "mm" : "in"}
        {usual !== null && `; else ± ${barePlusMinus(usual, dimension, units)}`}
      </legend>
      {choices.map((each, place) => (
        <button
          key={each}
          type="button"
          aria-pressed={place === nearest}
          onClick={() =>
            onDraft(
              withField(
                draft,
                "plusMinus",
                said === null && place === nearest ? undefined : typedValue(each, dimension, units, own),
              ),
            )
          }
        >
          <Reading text={`± ${each}`} />
        </button>
      ))}
    </fieldset>
  );
}

const TAPED: readonly ReadingEntry["kind"][] = ["tape", "height", "out", "along"];

/** What is seldom needed, behind one control: half a tube's diameter, and what else can be done with the reading. */
export const MoreOfReading = ({ draft, onDraft, children }: Props & { readonly children: ReactNode }): ReactNode => (
  <details className="reading-details">
    <summary className="pressable">
      {TAPED.includes(draft.kind) ? "Touched a tube? Put off, take off …" : "Put off, take off …"}
    </summary>
    {TAPED.includes(draft.kind) && <Added draft={draft} onDraft={onDraft} />}
    {children}
  </details>
);

function Added({ draft, onDraft }: Props): ReactNode {
  const units = useBench((state) => state.units);
  const own = useBench(({ document }) => document?.units ?? "inch-pound");
  const typed = typedText((draft as Readonly<Record<string, unknown>>)["add"]);
  const [text, setText] = useState(typed);
  const unit = units === "metric" ? "mm" : "in";
  return (
    <p className="add-half">
      <label htmlFor="reading-add">Touched a tube, not its centre? Add half its diameter,</label>
      <input
        id="reading-add"
        value={text}
        size={5}
        autoComplete="off"
        placeholder="none"
        onChange={(event) => {
          setText(event.target.value);
          const value = typedValue(event.target.value, "length", units, own);
          if (value === undefined || parseQuantity(value, "length", own).ok) onDraft(withField(draft, "add", value));
        }}
      />
      <span className="unit">{unit}</span>
    </p>
  );
}

function siOf(value: unknown, dimension: Dimension, own: UnitSystem) {
  if (typeof value !== "number" && typeof value !== "string") return null;
  const parsed = parseQuantity(value, dimension, own);
  return parsed.ok ? parsed.value : null;
}
