import { armFrames, type Study } from "@armwright/engine";
import { type CarDocument, type FieldValue, formatPath, valueAt } from "@armwright/engine/document";
import type { ReactNode } from "react";
import { Fields } from "../form/Fields.tsx";
import { fieldsAt } from "../form/schema-fields.ts";
import { edit } from "../store/bench.ts";
import { typedFrame } from "./own-frame.ts";

interface Props {
  /** As frames name it: `lower-arm`. */
  readonly arm: string;
  readonly study: Study;
  readonly document: CarDocument;
}

type Item = Readonly<Record<string, FieldValue>>;

/** An arm's frame drawn by the builder: begun from the starting frame, its nodes and members then changed one by one. */
export function FrameEditor({ arm, study, document }: Props): ReactNode {
  const path = ["strength", "frames", arm];
  const own = valueAt(document, path);
  const words = arm.replace("-", " ");
  const put = (value: FieldValue | undefined, said: string): void => edit([{ path: formatPath(path), value }], said);
  if (own === undefined) {
    const frame = armFrames(study.car).find((each) => each.arm === arm);
    return (
      <p className="adders">
        <button
          type="button"
          className="pressable"
          disabled={!frame}
          onClick={() => frame && put(typedFrame(frame, document.units), `${words}: a frame of your own, begun`)}
        >
          Draw its frame yourself, from this one on
        </button>
      </p>
    );
  }
  return (
    <>
      <Items path={[...path, "nodes"]} title="Nodes" document={document} copy={newNode} />
      <Items path={[...path, "members"]} title="Members" document={document} copy={newMember} />
      <p className="adders">
        <button
          type="button"
          className="pressable"
          onClick={() => put(undefined, `${words}: the starting frame again`)}
        >
          Back to the starting frame
        </button>
      </p>
    </>
  );
}

/** Beside the last one, to be moved; of another name. */
const newNode = (items: readonly Item[]): Item => ({
  name: freeName("my node", items),
  point: items.map(({ point }) => point).findLast((point) => point !== undefined) ?? { x: 0, y: 0, z: 0 },
});
const newMember = (items: readonly Item[]): Item => ({ ...items.at(-1), name: freeName("my tube", items) });

function freeName(base: string, items: readonly Item[]): string {
  const taken = new Set(items.map(({ name }) => name));
  let count = 1;
  while (taken.has(`${base} ${count}`)) count += 1;
  return `${base} ${count}`;
}

interface ItemsProps {
  readonly path: readonly string[];
  readonly title: string;
  readonly document: CarDocument;
  readonly copy: (items: readonly Item[]) => Item;
}

function Items({ path, title, document, copy }: ItemsProps): ReactNode {
  const found = valueAt(document, path);
  const items: readonly Item[] = Array.isArray(found) ? (found as readonly Item[]) : [];
  const put = (next: readonly Item[], said: string): void => edit([{ path: formatPath(path), value: next }], said);
  return (
    <details className="item">
      <summary className="pressable">
        {title} <span className="small quiet">{items.length}</span>
      </summary>
      {items.map((item, index) => {
        const name = String(item["name"]);
        // A pivot or mount gives the node its point.
        const fields = fieldsAt(formatPath([...path, index]), document)
          .filter((field) => item["at"] === undefined || !field.path.includes("].point"))
          .map((field) => ({ ...field, group: "" }));
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a list's things are told apart by their place only.
          <details key={index} className="item">
            <summary className="pressable">{name}</summary>
            <Fields fields={fields} />
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
        <button
          type="button"
          className="pressable"
          onClick={() => put([...items, copy(items)], `one more of ${title.toLowerCase()}`)}
        >
          Add one
        </button>
      </p>
    </details>
  );
}
