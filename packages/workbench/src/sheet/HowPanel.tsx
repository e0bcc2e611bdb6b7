import type { Quantity, Study } from "@armwright/engine";
import type { ReactNode } from "react";
import { Dialog } from "../app/Dialog.tsx";
import { useBench } from "../app/use-bench.ts";
import { HowSureQuantity } from "../certainty/HowSure.tsx";
import { capital } from "../form/schema-fields.ts";
import { solvedAt, valueIn } from "../store/position.ts";
import { Reading } from "../words/Reading.tsx";
import { shown, shownTravel } from "../words/shown.ts";
import { inputsOf } from "./inputs-of.ts";
import { assumedWords, RestsOn } from "./RestsOn.tsx";

/** How do you know? What a result means, how it is computed, from which inputs, and which of them were assumed. */
export function HowPanel({ id }: { readonly id: string }): ReactNode {
  const study = useBench(({ live }) => live.study);
  const quantity = study?.quantities.find((each) => each.id === id);
  return (
    <Dialog title="How do you know?">
      {study && quantity ? <Answer study={study} quantity={quantity} /> : <p>This car has no such number.</p>}
    </Dialog>
  );
}

function Answer({ study, quantity }: { readonly study: Study; readonly quantity: Quantity }): ReactNode {
  const travel = useBench((state) => state.travel);
  const units = useBench((state) => state.units);
  const document = useBench((state) => state.document);
  const solved = solvedAt(study, travel);
  const value = valueIn(study, quantity, solved);
  const [formula, ...sources] = quantity.basis.split("; ");
  const inputs = document ? inputsOf(quantity.id, document, study) : [];
  const assumed = inputs.filter((input) => input.assumed !== undefined);
  return (
    <div className="how-answer">
      <p className="label quiet">{quantity.label}</p>
      <p className="value big">
        <Reading text={shown(value, quantity.dimension, units, { sign: quantity.signed })} />
      </p>
      <p className="quiet">
        with the wheel at <Reading text={travel === 0 ? "ride height" : shownTravel(travel, units)} />
      </p>
      <dl>
        <dt>What it is</dt>
        <dd>{quantity.meaning}</dd>
        <dt>How it is computed</dt>
        <dd>{capital(formula ?? "")}.</dd>
        <dt>Where that comes from</dt>
        <dd>
          {sources.length > 0 ? `${capital(sources.join("; "))}.` : "Plain geometry of the position."} In it every link
          keeps its length and every pivot stays in one place, to the last digit of the computer.
        </dd>
        <HowSureQuantity id={quantity.id} travel={travel} dimension={quantity.dimension} />
        <dt>What it rests on</dt>
        <dd>{assumedWords(assumed.length)}</dd>
      </dl>
      <RestsOn inputs={inputs} />
    </div>
  );
}
