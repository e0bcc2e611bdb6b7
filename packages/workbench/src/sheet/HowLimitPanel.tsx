import type { LimitReport } from "@armwright/engine";
import type { ReactNode } from "react";
import { Dialog } from "../app/Dialog.tsx";
import { useBench } from "../app/use-bench.ts";
import { HowSureLimit } from "../certainty/HowSure.tsx";
import { Reading } from "../words/Reading.tsx";
import { shown, shownLength, shownTravel, unitShown } from "../words/shown.ts";
import { inputsOf, restingAt } from "./inputs-of.ts";
import { assumedWords, RestsOn } from "./RestsOn.tsx";

interface Props {
  readonly direction: "bump" | "droop";
  readonly id: string;
}

/** How do you know? What a limit of the travel watches, how the travel was found, and what it rests on. */
export function HowLimitPanel({ direction, id }: Props): ReactNode {
  const limit = useBench(({ live }) => live.study?.travel[direction].limits.find((each) => each.id === id));
  return (
    <Dialog title="How do you know?">
      {limit ? (
        <Answer limit={limit} direction={direction} />
      ) : (
        <p>This does not stop the wheel any more: the car has changed.</p>
      )}
    </Dialog>
  );
}

function Answer({
  limit,
  direction,
}: {
  readonly limit: LimitReport;
  readonly direction: "bump" | "droop";
}): ReactNode {
  const units = useBench((state) => state.units);
  const document = useBench((state) => state.document);
  const study = useBench(({ live }) => live.study);
  const quantity = study?.quantities.find(({ id }) => id === watchedBy(limit));
  const [formula, ...sources] = (quantity?.basis ?? (limit.code === "linkage" ? RANGE : GAP)).split("; ");
  const inputs =
    document && study
      ? [...restingAt(limit.place, document, study), ...inputsOf(quantity?.id ?? "", document, study)]
      : [];
  const unique = [...new Map(inputs.map((input) => [input.path, input])).values()];
  const assumed = unique.filter((input) => input.assumed !== undefined).length;
  const left =
    limit.dimension === "length" ? shownLength(limit.spare, units) : shown(limit.spare, limit.dimension, units);
  return (
    <div className="how-answer">
      <p className="label quiet">{limit.label}</p>
      <p className="value big">
        <Reading
          text={
            limit.pastAtRide ? "at ride height" : `${shownTravel(limit.travel, units)} ${unitShown("length", units)}`
          }
        />
      </p>
      <dl>
        <dt>What is watched</dt>
        <dd>
          {quantity
            ? quantity.meaning
            : limit.code === "linkage"
              ? "How far the arms let the wheel go."
              : "The least gap between the two, over all of their faces."}
        </dd>
        <dt>How it is computed</dt>
        <dd>{formula}</dd>
        <dt>How its travel is found</dt>
        <dd>
          From ride height outward the wheel is moved through solved positions; where what is left first comes to
          nothing is then closed in on by halving, to far less than a tape can read.{" "}
          {limit.pastAtRide
            ? ""
            : limit.isProtected
              ? "At the chosen stop there is left: "
              : "At the chosen stop it is past by "}
          {!limit.pastAtRide && (
            <Reading text={limit.isProtected ? `${left} ${limit.spareWord}` : left.replace(/^[-\u2212]/, "")} />
          )}
          {!limit.pastAtRide && "."}
        </dd>
        <dt>Where that comes from</dt>
        <dd>{sources.length > 0 ? sources.join("; ") : "Plain geometry of the solved positions."}</dd>
        <HowSureLimit direction={direction} id={limit.id} />
        <dt>What it rests on</dt>
        <dd>{assumedWords(assumed)}</dd>
      </dl>
      <RestsOn inputs={unique} />
    </div>
  );
}

const RANGE =
  "The linkage's own end: the wheel is moved outward until its height turns back, or nothing can be put together any more.";
const GAP =
  "Every part is a rounded solid: its bare shape, swollen by a radius. The gap is the nearest distance of the two bare shapes, less both radii.";

/** The number that a limit watches; none for a gap between two things. */
function watchedBy({ code, id }: LimitReport): string | undefined {
  if (id.startsWith("rod-end:")) return id.replace("rod-end:", "rodEnd:");
  return WATCHED[code];
}

const WATCHED: Partial<Record<LimitReport["code"], string>> = {
  "outer-joint": "outerJoint",
  "inner-joint": "innerJoint",
  "shock-shortest": "shockLength",
  "shock-longest": "shockLength",
  "slip-engagement": "slipEngagement",
  "slip-bottoms": "plunge",
  underbody: "groundClearance",
  strap: "strapSlack",
  "bump-stop-touched": "bumpStopGap",
  "bump-stop-solid": "bumpStopLeft",
};
