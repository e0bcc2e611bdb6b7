import { type CarDocument, type FieldValue, formatPath, type Path, valueAt } from "@armwright/engine/document";
import type { ReactNode } from "react";
import { edit } from "../store/bench.ts";
import { Fields } from "./Fields.tsx";
import type { Field } from "./schema-fields.ts";

/** A thing of a list that the builder names. */
export type NamedItem = Readonly<Record<string, FieldValue>>;

interface Props {
  readonly path: Path;
  readonly title: string;
  readonly document: CarDocument;
  readonly fieldsOf: (item: NamedItem, index: number) => readonly Field[];
  /** What the next one begins as. */
  readonly next: (items: readonly NamedItem[]) => FieldValue;
  /** What is told after one is added. */
  readonly added: string;
  /** Over the list. */
  readonly children?: ReactNode;
}

/** A list of named things of the builder's own: each opens to its fields and is taken off by one press; one more at its foot. */
export function OwnList({ path, title, document, fieldsOf, next, added, children }: Props): ReactNode {
  const found = valueAt(document, path);
  const items: readonly NamedItem[] = Array.isArray(found) ? (found as readonly NamedItem[]) : [];
  const put = (list: readonly FieldValue[], said: string): void =>
    edit([{ path: formatPath(path), value: list.length === 0 ? undefined : list }], said);
  return (
    <details className="item">
      <summary className="pressable">
        {title} {items.length > 0 && <span className="small quiet">{items.length}</span>}
      </summary>
      {children}
      {items.map((item, index) => {
        const name = String(item["name"]);
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a list's things are told apart by their place only.
          <details key={index} className="item">
            <summary className="pressable">{name}</summary>
            <Fields fields={fieldsOf(item, index)} />
            <p className="adders">
              <button
                type="button"
                className="pressable"
                onClick={() =>
                  put(
                    items.filter((_, other) => other !== index),
                    `${name} taken off`,
                  )
                }
              >
                Take {name} off
              </button>
            </p>
          </details>
        );
      })}
      <p className="adders">
        <button type="button" className="pressable" onClick={() => put([...items, next(items)], added)}>
          Add one of your own
        </button>
      </p>
    </details>
  );
}
