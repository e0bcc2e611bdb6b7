import { Fragment, memo, type ReactNode, useMemo } from "react";
import { useSettledDocument } from "../app/use-settled.ts";
import { ListField, OptionalPart, RodEndFields } from "./ListFields.tsx";
import { DirectionField, PointField, TextField, WordsField } from "./PlainFields.tsx";
import { QuantityField } from "./QuantityField.tsx";
import { type Field, fieldAt } from "./schema-fields.ts";

/** The form of a list of fields, under the headings that they share. */
export function Fields({ fields }: { readonly fields: readonly Field[] }): ReactNode {
  const shown = useMemo(() => fields.map((_, index) => named(fields, index)), [fields]);
  return shown.map((field, index) => (
    <Fragment key={field.path}>
      {field.group !== "" && fields[index]?.group !== fields[index - 1]?.group && <h3>{field.group}</h3>}
      <AnyField field={field} />
    </Fragment>
  ));
}

/** One field alone needs no heading of its own: `Strap, length`. */
function named(fields: readonly Field[], index: number): Field {
  const field = fields[index]!;
  if (field.kind === "section") return field;
  const isAlone = [index - 1, index + 1].every(
    (beside) => fields[beside]?.group !== field.group || fields[beside]?.kind === "section",
  );
  return isAlone && field.group !== "" && field.kind !== "point"
    ? { ...field, label: `${field.group}, ${field.label.toLowerCase()}`, group: "" }
    : field;
}

/** The fields of a thing in a list, handed down so that a list need not know how fields are drawn. */
const render = (fields: readonly Field[]): ReactNode => <Fields fields={fields} />;

const AnyField = memo(function AnyField({ field }: { readonly field: Field }): ReactNode {
  const document = useSettledDocument();
  switch (field.kind) {
    case "quantity":
      return <QuantityField field={field} />;
    case "words":
      return <WordsField field={field} />;
    case "direction":
      return <DirectionField field={field} />;
    case "point":
      return <PointField field={field} on={document ? fieldAt(`${field.path}.on`, document) : undefined} />;
    case "list":
      return <ListField field={field} render={render} />;
    case "map":
      return <RodEndFields field={field} render={render} />;
    case "section":
      return <OptionalPart field={field} />;
    case "text":
      return <TextField field={field} />;
  }
});
