import { type FieldValue, formatPath, parsePath, valueAt } from "@armwright/engine/document";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { bench, edit } from "../store/bench.ts";
import { newItems, startOfPart, takeOff, whyNotAdded } from "./parts.ts";
import { type Field, fieldsAt } from "./schema-fields.ts";

interface Props {
  readonly field: Field;
}

interface ListProps extends Props {
  readonly render: (fields: readonly Field[]) => ReactNode;
}

/** A part that the car may do without: added as a starting guess, or taken off again. */
export function OptionalPart({ field }: Props): ReactNode {
  const document = useBench((state) => state.document);
  if (!document) return null;
  const name = field.label.toLowerCase();
  if (valueAt(document, parsePath(field.path) ?? []) !== undefined)
    return (
      <button
        type="button"
        className="pressable quiet small take-off"
        data-field={field.path}
        onClick={() => edit(takeOff(field.path, document), `${name} taken off`)}
      >
        Take {name} off
      </button>
    );
  const whyNot = whyNotAdded(field.path, document);
  return (
    <div className="absent">
      <p className="small">
        {field.meaning} <span className="quiet">{whyNot ?? "None entered."}</span>
      </p>
      {whyNot === undefined && (
        <button
          type="button"
          className="pressable"
          data-field={field.path}
          onClick={() =>
            edit(
              [{ path: field.path, value: startOfPart(field.path, document, bench.getState().live.study) }],
              `${name} added, as a starting guess`,
            )
          }
        >
          Add {name}, as a starting guess
        </button>
      )}
    </div>
  );
}

/** Things of which there may be any number: each with its fields, its name, and a way to take it off. */
export function ListField({ field, render }: ListProps): ReactNode {
  const document = useBench((state) => state.document);
  if (!document) return null;
  const path = parsePath(field.path) ?? [];
  const found = valueAt(document, path);
  const items: readonly FieldValue[] = Array.isArray(found) ? (found as readonly FieldValue[]) : [];
  const whyNot = whyNotAdded(field.path, document);
  const put = (list: readonly FieldValue[], words: string): void =>
    edit([{ path: field.path, value: list.length === 0 ? undefined : list }], words);
  return (
    <div className="list-field">
      <p className="small quiet">
        {field.meaning} {items.length === 0 && whyNot}
      </p>
      {items.map((item, index) => {
        const name = String((item as Readonly<Record<string, FieldValue>>)["name"] ?? `reading ${index + 1}`);
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a list's things are told apart by their place only.
          <details key={index} className="item">
            <summary className="pressable">{name}</summary>
            {render(fieldsAt(formatPath([...path, index]), document))}
            <button
              type="button"
              className="pressable quiet"
              onClick={() =>
                put(
                  items.filter((_, each) => each !== index),
                  `${name} taken off`,
                )
              }
            >
              Take {name} off
            </button>
          </details>
        );
      })}
      <p className="adders">
        {(items.length === 0 && whyNot !== undefined ? [] : newItems(field.path, document)).map(({ words, value }) => (
          <button
            key={words}
            type="button"
            className="pressable"
            data-field={field.path}
            onClick={() => put([...items, value], `${words.replace(/^a /, "")} added, as a starting guess`)}
          >
            Add {words}
          </button>
        ))}
      </p>
    </div>
  );
}

/** What is known of single rod ends: every pivot of the linkage, whether anything was entered for it or not. */
export function RodEndFields({ field, render }: ListProps): ReactNode {
  const document = useBench((state) => state.document);
  const study = useBench(({ live }) => live.study);
  if (!document || !study) return null;
  return (
    <div className="list-field">
      <p className="small quiet">Rod ends: what their maker allows, and which way their bolts lie.</p>
      {study.corner.pivots.map(({ id, label }) => (
        <details key={id} className="item">
          <summary className="pressable">{label}</summary>
          {render(fieldsAt(formatPath([field.path, id]), document))}
        </details>
      ))}
    </div>
  );
}
