import { Fragment, type ReactNode } from "react";
import { Pennant } from "../app/Mark.tsx";
import { useBench } from "../app/use-bench.ts";
import { ofHundred, sureOf, useCertainty } from "../certainty/certainty-store.ts";
import { stopRows } from "../stops/stop-rows.ts";
import { setTravel, showPanel } from "../store/bench.ts";
import { Reading } from "../words/Reading.tsx";

/** Of cars built so, how many it would stop before the chosen stop; nothing where that is fewer than one in 100. */
function ComesFirst({
  direction,
  id,
  isFirst,
}: {
  readonly direction: "bump" | "droop";
  readonly id: string;
  readonly isFirst: boolean;
}): ReactNode {
  const sure = sureOf(useCertainty(), direction, id);
  const cars = sure && !isFirst ? ofHundred(sure.chance) : null;
  return cars === null ? null : <small className="within"> first in {cars}</small>;
}

/** What stops the wheel, a row a limit; a tap takes the wheel there. */
export function PhoneStops(): ReactNode {
  const study = useBench(({ live }) => live.study);
  const units = useBench((state) => state.units);
  if (!study) return <p className="quiet">Nothing stops the wheel yet.</p>;
  return (
    <>
      <h2>What stops the wheel</h2>
      <ul className="phone-stops">
        {(["droop", "bump"] as const).map((direction) => (
          <Fragment key={direction}>
            {stopRows(study, direction, units)
              .filter(({ isFar }) => !isFar)
              .map((row) => (
                <li key={row.key} className={row.kind === "chosen" ? "chosen" : row.isFirst ? "first" : undefined}>
                  <button type="button" onClick={() => setTravel(row.travel)}>
                    {row.kind === "chosen" ? (
                      <i className="bar" />
                    ) : (
                      <Pennant order={row.order} isFirst={row.isFirst} />
                    )}
                    <span>{row.label}</span>
                    <b>
                      <Reading text={row.at} />
                    </b>
                    <em className={row.bitesFirst ? "bites" : undefined}>
                      <Reading text={row.whichIs} />
                      <ComesFirst direction={direction} id={row.key} isFirst={row.bitesFirst} />
                    </em>
                  </button>
                </li>
              ))}
          </Fragment>
        ))}
      </ul>
      <button type="button" className="pressable wide" onClick={() => showPanel({ kind: "cycle-and-read" })}>
        Cycle and read
      </button>
    </>
  );
}
