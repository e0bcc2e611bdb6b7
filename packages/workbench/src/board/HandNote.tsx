import { parsePath, valueAt } from "@armwright/engine/document";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { typedText } from "../form/typed.ts";
import { Reading } from "../words/Reading.tsx";
import { tidy } from "../words/shown.ts";

/** Where the point in the hand stands, as the document has it. */
export function HandNote({ left, label }: { readonly left: number; readonly label: string | undefined }): ReactNode {
  const place = useBench(({ held }) => (held?.as === "point" && held.place !== "travel" ? held.place : null));
  const document = useBench((state) => state.document);
  if (place === null || label === undefined || !document) return null;
  const read = (axis: string): string => tidy(typedText(valueAt(document, [...(parsePath(place) ?? []), axis])));
  return (
    <p className="hand-note" style={{ left, top: 34 }}>
      {label}: forward <Reading text={read("x")} />, out <Reading text={read("y")} />, up <Reading text={read("z")} />
    </p>
  );
}
