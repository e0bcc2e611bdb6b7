import { parseQuantity, type UnitSystem } from "@armwright/engine";
import { type CarDocument, parsePath, valueAt } from "@armwright/engine/document";
import type { ReactNode } from "react";
import { Dialog } from "../app/Dialog.tsx";
import { useBench } from "../app/use-bench.ts";
import { LengthKeypad } from "../form/Keypad.tsx";
import { type Field, fieldAt } from "../form/schema-fields.ts";
import { typedText, typedValue } from "../form/typed.ts";
import { enter } from "../form/use-field.ts";
import { SketchFigure } from "../sheet/SketchFigure.tsx";
import { showPanel } from "../store/bench.ts";
import { Reading } from "../words/Reading.tsx";
import { tidy } from "../words/shown.ts";

/** The tape keypad for a field of a sheet. */
export function KeypadPanel({ place }: { readonly place: string }): ReactNode {
  const document = useBench((state) => state.document);
  const units = useBench((state) => state.units);
  const field = document ? fieldAt(place, document) : undefined;
  if (!document || !field) return null;
  return (
    <Dialog title={titleOf(field)} isFull>
      <div className="keypad-figure">
        <SketchFigure fallback={field.path} />
      </div>
      <Before document={document} field={field} />
      <LengthKeypad
        units={units}
        before={metresAt(document, field.path)}
        onSet={(text) => set(field, text, units, document.units)}
      />
    </Dialog>
  );
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

function Before({ document, field }: { readonly document: CarDocument; readonly field: Field }): ReactNode {
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

const titleOf = (field: Field): string =>
  field.group === "" ? field.label : `${field.group}, ${field.label.toLowerCase()}`;
