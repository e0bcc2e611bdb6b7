import type { Dimension } from "@armwright/engine";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { betweenAt, useCertainty } from "../certainty/certainty-store.ts";
import { showPanel } from "../store/bench.ts";
import { solvedAt, valueIn } from "../store/position.ts";
import { barePlusMinus } from "../words/plus-minus.ts";
import { Reading } from "../words/Reading.tsx";
import { shown, shownTravel } from "../words/shown.ts";

/** The ± of a result at a travel; room is kept for it while it is worked out. */
function Within({
  id,
  dimension,
  travel,
}: {
  readonly id: string;
  readonly dimension: Dimension;
  readonly travel: number;
}): ReactNode {
  const units = useBench((state) => state.units);
  const answer = useCertainty();
  const between = answer && betweenAt(answer, id, travel);
  return (
    <small className="within">
      {between && <Reading text={`± ${barePlusMinus((between.high - between.low) / 2, dimension, units)}`} />}
    </small>
  );
}

/** Results at the present travel; each can be asked how it is known. */
export function ResultsList({ ids }: { readonly ids: readonly string[] }): ReactNode {
  const study = useBench(({ live }) => live.study);
  const isOlder = useBench(({ live }) => live.isOlder);
  const travel = useBench((state) => state.travel);
  const units = useBench((state) => state.units);
  if (!study || ids.length === 0) return null;
  const solved = solvedAt(study, travel);
  const quantities = ids.flatMap((id) => study.quantities.find((quantity) => quantity.id === id) ?? []);
  if (quantities.length === 0) return null;
  return (
    <section className="results" aria-label="Results">
      <h3>
        At <Reading text={travel === 0 ? "ride height" : shownTravel(travel, units)} />
        {isOlder && <span className="older"> of the last state that could be read</span>}
      </h3>
      <ul>
        {quantities.map((quantity) => (
          <li key={quantity.id}>
            <button type="button" onClick={() => showPanel({ kind: "how", quantity: quantity.id })}>
              <span>{quantity.label}</span>
              <b>
                <Reading
                  text={shown(valueIn(study, quantity, solved), quantity.dimension, units, { sign: quantity.signed })}
                />
              </b>
              <Within id={quantity.id} dimension={quantity.dimension} travel={travel} />
              <span className="how">how?</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
