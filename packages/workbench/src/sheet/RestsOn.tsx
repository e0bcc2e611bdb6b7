import type { ReactNode } from "react";
import { goToPlace } from "../app/go-to.ts";
import { useBench } from "../app/use-bench.ts";
import { placeName } from "../form/schema-fields.ts";
import { showPanel } from "../store/bench.ts";
import { Reading } from "../words/Reading.tsx";
import type { RestingOn } from "./inputs-of.ts";

/** The inputs that something rests on, as typed or assumed; a press leads to the field. */
export function RestsOn({ inputs }: { readonly inputs: readonly RestingOn[] }): ReactNode {
  const document = useBench((state) => state.document);
  return (
    <ul className="assumed-list">
      {inputs.map(({ path, text, assumed: because }) => {
        return (
          <li key={path} className={because === undefined ? undefined : "is-assumed"}>
            <button
              type="button"
              onClick={() => {
                showPanel(null);
                goToPlace(path);
              }}
            >
              <span>{placeName(path, document)}</span>
              <b>
                <Reading text={text} />
              </b>
              {because !== undefined && <small>assumed: {because}</small>}
            </button>
          </li>
        );
      })}
    </ul>
  );
}

/** How many of the values listed were put in for the builder. */
export const assumedWords = (count: number): string => {
  if (count === 0) return "Every value below is your own.";
  return count === 1
    ? "One of these values was not entered and is assumed."
    : `${count} of these values were not entered and are assumed.`;
};
