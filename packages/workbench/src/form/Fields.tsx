import { Fragment, type ReactNode } from "react";
import { AbsentPart, ListField, RodEndFields } from "./ListFields.tsx";
import { DirectionField, PointField, TextField, WordsField } from "./PlainFields.tsx";
import { QuantityField } from "./QuantityField.tsx";
import { type Field, fieldAt } from "./schema-fields.ts";
import { useBench } from "../app/use-bench.ts";

/** The form of a list of fields, under the headings that they share. */
export function Fields({ fields }: { readonly fields: readonly Field[] }): ReactNode {
  return fields.map((field, index) => (
    <Fragment key={field.path}>
      {field.group !== "" && field.group !== fields[index - 1]?.group && <h3>{field.group}</h3>}
      <AnyField field={field} />
    </Fragment>
  ));
}

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
      return <ListField field={field} />;
    case "map":
      return <RodEndFields field={field} />;
    case "section":
      return <AbsentPart field={field} />;
    case "text":
      return <TextField field={field} />;
  }
}
