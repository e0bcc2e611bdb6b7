import { type ArmId, armFrames, armWords, type Study } from "@armwright/engine";
import { type CarDocument, type FieldValue, formatPath, valueAt } from "@armwright/engine/document";
import type { ReactNode } from "react";
import { type NamedItem, OwnList } from "../form/OwnList.tsx";
import { type Field, fieldsAt } from "../form/schema-fields.ts";
import { edit } from "../store/bench.ts";
import { typedFrame } from "./own-frame.ts";

interface Props {
  readonly arm: ArmId;
  readonly study: Study;
  readonly document: CarDocument;
}

/** An arm's frame drawn by the builder: begun from the starting frame, its nodes and members then changed one by one. */
export function FrameEditor({ arm, study, document }: Props): ReactNode {
  const path = ["strength", "frames", arm];
  const own = valueAt(document, path);
  const words = armWords(arm);
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
  const fieldsIn = (list: string) => (item: NamedItem, index: number) =>
    ownFields([...path, list, index], item, document);
  return (
    <>
      <OwnList
        path={[...path, "nodes"]}
        title="Nodes"
        document={document}
        fieldsOf={fieldsIn("nodes")}
        next={newNode}
        added="one more node"
      />
      <OwnList
        path={[...path, "members"]}
        title="Members"
        document={document}
        fieldsOf={fieldsIn("members")}
        next={newMember}
        added="one more member"
      />
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

/** A pivot or mount gives its node the point. */
const ownFields = (path: readonly (string | number)[], item: NamedItem, document: CarDocument): readonly Field[] =>
  fieldsAt(formatPath(path), document)
    .filter((field) => item["at"] === undefined || !field.path.includes("].point"))
    .map((field) => ({ ...field, group: "" }));

/** Beside the last one, to be moved; of another name. */
const newNode = (items: readonly NamedItem[]): NamedItem => ({
  name: freeName("my node", items),
  point: items.map(({ point }) => point).findLast((point) => point !== undefined) ?? { x: 0, y: 0, z: 0 },
});
const newMember = (items: readonly NamedItem[]): NamedItem => ({ ...items.at(-1), name: freeName("my tube", items) });

function freeName(base: string, items: readonly NamedItem[]): string {
  const taken = new Set(items.map(({ name }) => name));
  let count = 1;
  while (taken.has(`${base} ${count}`)) count += 1;
  return `${base} ${count}`;
}
