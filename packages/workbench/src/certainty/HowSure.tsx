import type { Dimension } from "@armwright/engine";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { shownPlusMinus } from "../words/plus-minus.ts";
import { Reading } from "../words/Reading.tsx";
import { capitalised, shown } from "../words/shown.ts";
import type { CauseShare } from "./certainty-job.ts";
import { betweenAt, ofHundred, sureOf, useCertainty } from "./certainty-store.ts";

/** In an answer to "how do you know": the ± of a result, and what brings most of it. */
export function HowSureQuantity({
  id,
  travel,
  dimension,
}: {
  readonly id: string;
  readonly travel: number;
  readonly dimension: Dimension;
}): ReactNode {
  const units = useBench((state) => state.units);
  const answer = useCertainty();
  if (!answer) return null;
  const between = betweenAt(answer, id, travel);
  return (
    <>
      <dt>How sure it is</dt>
      <dd>
        {between ? (
          <>
            <Reading
              text={`± ${shownPlusMinus((between.high - between.low) / 2, dimension, units)}: of 100 cars built so, about 95 lie between ${shown(between.low, dimension, units)} and ${shown(between.high, dimension, units)}.`}
            />{" "}
            <Causes causes={between.nearest.causes} />
          </>
        ) : (
          "Not told here: beyond the stops, or some cars built so do not have it at all."
        )}
        <Basis isGiven={answer.isGiven} />
      </dd>
    </>
  );
}

/** The same of a limit: travel left to it, and how many cars it would stop before the chosen stop. */
export function HowSureLimit({
  direction,
  id,
}: {
  readonly direction: "bump" | "droop";
  readonly id: string;
}): ReactNode {
  const units = useBench((state) => state.units);
  const answer = useCertainty();
  const sure = sureOf(answer, direction, id);
  if (!answer || !sure) return null;
  return (
    <>
      <dt>How sure it is</dt>
      <dd>
        <Reading text={`The travel left to it is sure to ± ${shownPlusMinus(2 * sure.sd, "length", units)}.`} />{" "}
        {ofHundred(sure.chance) === null
          ? "Of 100 cars built so it comes before the chosen stop in fewer than one."
          : `It comes before the chosen stop in about ${ofHundred(sure.chance)} built so.`}{" "}
        <Causes causes={sure.causes} />
        <Basis isGiven={answer.isGiven} />
      </dd>
    </>
  );
}

const Causes = ({ causes }: { readonly causes: readonly CauseShare[] }): ReactNode =>
  causes.length === 0 ? null : (
    <>
      Most of that comes from{" "}
      {causes.map(({ words, kind, share }) => `${words} (${kind}, ${Math.round(100 * share)} %)`).join("; ")}.
    </>
  );

const Basis = ({ isGiven }: { readonly isGiven: boolean }): ReactNode => (
  <>
    {" "}
    {isGiven
      ? "From your tolerances and readings."
      : "From common practice: welded places and bought parts to ± 1/16 in (1.6 mm), adjusters to half a turn. Enter your own under Survey."}
  </>
);

/** What to be careful with: the weld, setting or reading that most results hang on, first. */
export function MattersMost(): ReactNode {
  const answer = useCertainty();
  if (!answer || answer.matters.length === 0) return null;
  return (
    <section className="matters-most" aria-label="Where to be careful">
      <h3>Where to be careful</h3>
      <ol>
        {answer.matters.map(({ words, kind, weight, of }) => (
          <li key={words}>
            <span>
              {capitalised(words)} <small className="quiet">{kind}</small>
            </span>
            <b>{Math.round(100 * weight)} %</b>
            <small className="quiet">{of.join(", ")}</small>
          </li>
        ))}
      </ol>
      <p className="small quiet">
        Of all that is uncertain in the results, so much hangs on each.
        <Basis isGiven={answer.isGiven} />
      </p>
    </section>
  );
}
