import { valueAt } from "@armwright/engine/document";
import { lazy, type ReactNode, Suspense, useEffect, useId, useRef, useState } from "react";
import { useBench } from "../app/use-bench.ts";
import { Reading } from "../words/Reading.tsx";
import { QuantityField } from "./QuantityField.tsx";
import type { Field } from "./schema-fields.ts";
import { typedText, wordShown } from "./typed.ts";
import { enter, faultWords, holdField, useField } from "./use-field.ts";

/** Only a car with a survey asks where a point comes from. */
const PointSourceField = lazy(() =>
  import("../survey/PointSourceField.tsx").then((m) => ({ default: m.PointSourceField })),
);

interface Props {
  readonly field: Field;
}

/** One of several words. */
export function WordsField({ field }: Props): ReactNode {
  const { value, fault, assumed, isHeld } = useField(field.path);
  const id = useId();
  const leftOut = assumed ? `${wordShown(String(assumed.value))}, assumed` : "not said";
  return (
    <div className={fieldClass(isHeld, fault !== undefined)}>
      <label htmlFor={id}>{field.label}</label>
      <div className="entry">
        <select
          id={id}
          data-field={field.path}
          value={typeof value === "string" ? value : ""}
          aria-label={field.group === "" ? undefined : `${field.group}, ${field.label}`}
          onFocus={() => holdField(field.path)}
          onChange={(event) => enter(field, event.target.value === "" ? undefined : event.target.value)}
        >
          {!field.isRequired && <option value="">{leftOut}</option>}
          {(field.words ?? []).map((word) => (
            <option key={word} value={word}>
              {wordShown(word)}
            </option>
          ))}
        </select>
      </div>
      {fault && <p className="fault">{faultWords(fault)}</p>}
    </div>
  );
}

const DIRECTIONS = ["forward", "rearward", "left", "right", "up", "down"] as const;

/** A way in space: a word where one is enough; three numbers stay as they were written. */
export function DirectionField({ field }: Props): ReactNode {
  const { value } = useField(field.path);
  const isWord = value === undefined || typeof value === "string";
  return <WordsField field={{ ...field, words: isWord ? DIRECTIONS : ["as written in the file", ...DIRECTIONS] }} />;
}

/** Words of the builder's own. */
export function TextField({ field }: Props): ReactNode {
  const { value, fault, isHeld } = useField(field.path);
  const [draft, setDraft] = useState<string | null>(null);
  const id = useId();
  const typed = typedText(value);
  const finish = (): void => {
    if (draft !== null && draft !== typed) enter(field, draft === "" && !field.isRequired ? undefined : draft);
    setDraft(null);
  };
  return (
    <div className={fieldClass(isHeld, fault !== undefined)}>
      <label htmlFor={id}>{field.label}</label>
      <div className="entry">
        <input
          id={id}
          data-field={field.path}
          type="text"
          size={1}
          autoComplete="off"
          value={draft ?? typed}
          aria-invalid={fault ? true : undefined}
          aria-label={field.group === "" ? undefined : `${field.group}, ${field.label}`}
          onFocus={() => holdField(field.path)}
          onChange={(event) => setDraft(event.target.value)}
          onBlur={finish}
          onKeyDown={(event) => {
            if (event.key === "Enter") finish();
            if (event.key === "Escape") setDraft(null);
          }}
        />
      </div>
      {fault && (
        <p className="fault">
          <Reading text={faultWords(fault)} />
        </p>
      )}
    </div>
  );
}

/** Three coordinates, and for a mount the part that it is bolted to. */
export function PointField({ field, on }: { readonly field: Field; readonly on: Field | undefined }): ReactNode {
  const { isHeld, assumed, value } = useField(field.path);
  const box = useRef<HTMLFieldSetElement>(null);
  // Taken hold of in the drawing, its numbers come into sight.
  useEffect(() => {
    if (isHeld) box.current?.scrollIntoView({ block: "nearest" });
  }, [isHeld]);
  const places = useBench(({ live }) => live.car?.survey?.result.points);
  // Its coordinates follow from the readings: they are shown, not typed.
  const surveyed = surveyedName(value);
  const axis = (name: "x" | "y" | "z"): Field => ({
    path: `${field.path}.${name}`,
    kind: "quantity",
    label: AXES[name],
    group: field.group === "" ? field.label : `${field.group}, ${field.label.toLowerCase()}`,
    meaning: AXIS_MEANING[name],
    dimension: "length",
    isRequired: true,
  });
  // Asked for only of the point in hand, and of one that has it.
  const isInHand = useBench(({ held }) => held !== null && `${held.place}.`.startsWith(`${field.path}.`));
  const hasOwnWithin = value !== undefined && (isInHand || valueAt(value, ["plusMinus"]) !== undefined);
  const within: Field = {
    ...axis("x"),
    path: `${field.path}.plusMinus`,
    label: "sure to ±",
    meaning: WITHIN,
    isRequired: false,
  };
  return (
    <fieldset ref={box} className={isHeld ? "point held" : "point"} data-point={field.path}>
      <legend>{field.label}</legend>
      {value === undefined && assumed ? (
        <p className="small quiet">
          <Reading text={`${String(assumed.value)}, assumed`} />
        </p>
      ) : null}
      {surveyed === undefined && (
        <div className="axes">
          {(["x", "y", "z"] as const).map((name) => (
            <QuantityField key={name} field={axis(name)} short={AXES[name]} />
          ))}
          {hasOwnWithin && <QuantityField field={within} short="sure to ±" />}
        </div>
      )}
      {places === undefined || value === undefined ? (
        surveyed !== undefined && (
          <p className="small quiet">
            <Reading text={`from the survey: ${surveyed}`} />
          </p>
        )
      ) : (
        <Suspense fallback={null}>
          <PointSourceField
            path={field.path}
            label="comes from"
            name={field.group === "" ? field.label : `${field.group}, ${field.label.toLowerCase()}`}
            points={places}
          />
        </Suspense>
      )}
      {on && <WordsField field={on} />}
    </fieldset>
  );
}

const WITHIN = "How far this point may be off, either way, where it differs from how true you build as a rule.";

function surveyedName(value: unknown): string | undefined {
  const name: unknown = typeof value === "object" && value !== null && "surveyed" in value ? value.surveyed : undefined;
  return typeof name === "string" ? name : undefined;
}

const AXES = { x: "forward", y: "out", z: "up" } as const;
const AXIS_MEANING = {
  x: "Forward of the datum; behind it is negative.",
  y: "Out from the car's centreline.",
  z: "Up from the ground at ride height.",
} as const;

const fieldClass = (isHeld: boolean, isFaulty: boolean): string =>
  ["field", isHeld ? "held" : "", isFaulty ? "faulty" : ""].filter((each) => each !== "").join(" ");
