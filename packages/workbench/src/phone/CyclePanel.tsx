import { TYPES, widthOf } from "@armwright/drawing";
import type { Quantity, Study } from "@armwright/engine";
import { type ReactNode, useState } from "react";
import { Dialog } from "../app/Dialog.tsx";
import { DownMark, UpMark } from "../app/Mark.tsx";
import { useBench } from "../app/use-bench.ts";
import { PhoneTape } from "../board/PhoneTape.tsx";
import { betweenAt, useCertainty } from "../certainty/certainty-store.ts";
import { setTravel } from "../store/bench.ts";
import { solvedAt, valueIn } from "../store/position.ts";
import { shownPlusMinus } from "../words/plus-minus.ts";
import { Reading } from "../words/Reading.tsx";
import { bare, shownLength, shownTravel, unitShown } from "../words/shown.ts";
import { cycleHeights, nextHeight } from "./cycle-heights.ts";

/** What can be read with tape and angle finder while the wheel is blocked at a height. */
const READ: readonly string[] = [
  "shockLength",
  "shaftLength",
  "camber",
  "toe",
  "outerJoint",
  "innerJoint",
  "groundClearance",
];

/** Under the car: one number a screen, readable at arm's length, for each height of the wheel. */
export function CyclePanel(): ReactNode {
  const study = useBench(({ live }) => live.study);
  if (!study) return null;
  return <CycleAndRead study={study} />;
}

function CycleAndRead({ study }: { readonly study: Study }): ReactNode {
  const travel = useBench((state) => state.travel);
  const units = useBench((state) => state.units);
  const readable = READ.flatMap((id) => study.quantities.find((quantity) => quantity.id === id) ?? []);
  const sure = useCertainty();
  const [chosen, choose] = useState(0);
  const quantity = readable[chosen % readable.length];
  const next = readable[(chosen + 1) % readable.length];
  const heights = cycleHeights(study, units);
  const index = heights.findIndex((height) => Math.abs(height - travel) < 1e-6);
  if (!quantity || !next) return null;
  const solved = solvedAt(study, travel);
  const number = bare(valueIn(study, quantity, solved), quantity.dimension, units, { sign: quantity.signed });
  const between = sure && betweenAt(sure, quantity.id, travel);
  const hub = study.corner.wheelCentre.z + travel;
  return (
    <Dialog
      title="Cycle and read"
      note={index < 0 ? `${heights.length} heights` : `${index + 1} of ${heights.length}`}
      isFull
    >
      <div className="cycle-and-read">
        <div className="say">
          <p>Hub to floor</p>
          <p className="hub big">
            <Reading text={shownLength(hub, units)} />
          </p>
          <p className="quiet">
            holds the wheel at <Reading text={travel === 0 ? "ride height" : shownTravel(travel, units)} />. Now{" "}
            {spokenLabel(quantity)} must read
          </p>
          <p className="one-number big" style={{ fontSize: sizeFor(number) }}>
            <Reading text={number} />
          </p>
          <p className="quiet">
            {quantity.dimension === "length"
              ? `${unitShown("length", units)}, to the nearest ${units === "metric" ? "half" : "sixteenth"}`
              : ""}
            {between && (
              <>
                {quantity.dimension === "length" && <br />}
                <Reading
                  text={`± ${shownPlusMinus((between.high - between.low) / 2, quantity.dimension, units)} as built`}
                />
              </>
            )}
          </p>
          <button type="button" className="pressable next-reading" onClick={() => choose(chosen + 1)}>
            <span className="quiet">Next:</span> <b>{spokenLabel(next)}</b>
          </button>
        </div>
        <PhoneTape study={study} />
      </div>
      <div className="answers">
        <button type="button" disabled={index === 0} onClick={() => setTravel(nextHeight(heights, travel, -1))}>
          <DownMark /> Lower
        </button>
        <button
          type="button"
          disabled={index === heights.length - 1}
          onClick={() => setTravel(nextHeight(heights, travel, 1))}
        >
          <UpMark /> Higher
        </button>
      </div>
    </Dialog>
  );
}

/** As large as the room beside the tape allows, up to the look's largest; rem, so that it grows with the reader's text. */
function sizeFor(number: string): string {
  const ems = widthOf(number, "reading", 1) / TYPES.reading.size;
  return `min(9.375rem, calc((100vw - 150px) / ${ems.toFixed(2)}))`;
}

const spokenLabel = ({ label }: Quantity): string => label.replace(/^(shock|shaft)/, "the $1");
