import { parsePath, valueAt } from "@armwright/engine/document";
import { type ReactNode, useMemo } from "react";
import { useBench } from "../app/use-bench.ts";
import { useSettledDocument } from "../app/use-settled.ts";
import { fieldAt } from "../form/schema-fields.ts";
import { typedText } from "../form/typed.ts";
import { Reading } from "../words/Reading.tsx";
import { tidy } from "../words/shown.ts";
import { sketchOf } from "./sketch/sketch-of.tsx";

/** Where the tape goes for the field that is held, what it means, and what is usual. */
export function SketchFigure({ fallback }: { readonly fallback: string | undefined }): ReactNode {
  const settled = useSettledDocument();
  const held = useBench((state) => state.held);
  const place = placeToDraw(held?.place ?? fallback);
  const value = useBench(({ document }) => place !== undefined && valueAt(document, parsePath(place) ?? []));
  const field = useMemo(
    () => (place === undefined || !settled ? undefined : fieldAt(place, settled)),
    [place, settled],
  );
  if (place === undefined || !field) return null;
  const sketch = sketchOf(place);
  const text = tidy(typedText(value));
  return (
    <figure className="sketch">
      {sketch && (
        <svg viewBox="0 0 150 200" width="150" height="200" aria-hidden="true">
          {sketch.draw(text)}
        </svg>
      )}
      <figcaption>
        {sketch && <p>{sketch.how}</p>}
        <p className="quiet">
          <Reading text={tidy(field.meaning)} />
        </p>
        {field.typical !== undefined && (
          <p className="quiet">
            Usual: <Reading text={tidy(field.typical)} />.
          </p>
        )}
        {field.leftOut !== undefined && (
          <p className="quiet">
            Left out: <Reading text={tidy(field.leftOut)} />.
          </p>
        )}
      </figcaption>
    </figure>
  );
}

/** A held point is drawn by its height; a chosen stop by the part that it rests on. */
function placeToDraw(place: string | undefined): string | undefined {
  if (place === undefined) return undefined;
  return sketchOf(place)
    ? place
    : sketchOf(`${place}.z`) && !/\.(on|name|hand|thread|kind|shape)$/.test(place)
      ? `${place}.z`
      : place;
}
