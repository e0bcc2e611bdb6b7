import { Fragment, type ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { AbsentPart, ListField, RodEndFields } from "./ListFields.tsx";
import { DirectionField, PointField, TextField, WordsField } from "./PlainFields.tsx";
import { QuantityField } from "./QuantityField.tsx";
import { type Field, fieldAt } from "./schema-fields.ts";

/** The form of a list of fields, under the headings that they share. */
export function Fields({ fields }: { readonly fields: readonly Field[] }): ReactNode {
  return fields.map((field, index) => {
    const isFirst = field.group !== fields[index - 1]?.group;
    const isAlone = isFirst && field.group !== fields[index + 1]?.group && field.kind !== "point";
    // One field alone needs no heading of its own: `Strap, length`.
    const shown =
      isAlone && field.group !== ""
        ? { ...field, label: `${field.group}, ${field.label.toLowerCase()}`, group: "" }
        : field;
    return (
      <Fragment key={field.path}>
        {shown.group !== "" && isFirst && <h3>{shown.group}</h3>}
        <AnyField field={shown} />
      </Fragment>
    );
  });
}

/** The fields of a thing in a list, handed down so that a list need not know how fields are drawn. */
const render = (fields: readonly Field[]): ReactNode => <Fields fields={fields} />;

function AnyField({ field }: { readonly field: Field }): ReactNode {
  const document = useBench((state) => state.document);
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
      return <AbsentPart field={field} />;
    case "text":
      return <TextField field={field} />;
  }
}
