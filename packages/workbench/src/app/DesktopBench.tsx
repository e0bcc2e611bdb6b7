import type { ReactNode } from "react";
import { Board } from "../board/Board.tsx";
import { FindingsList } from "../findings/FindingsList.tsx";
import { ChartsRow } from "../sheet/ChartsRow.tsx";
import { StepSheet } from "../sheet/StepSheet.tsx";
import { OrderOfWork } from "../steps/OrderOfWork.tsx";
import { stepOfId } from "../steps/steps.ts";
import { StopsTable } from "../stops/StopsTable.tsx";
import { giveSheetRoom } from "../store/bench.ts";
import { BenchFoot, CarHead } from "./CarHead.tsx";
import { useBench } from "./use-bench.ts";
import { NARROW, useMedia, WIDE } from "./use-media.ts";

/** One sheet for a laptop on the bench: order of work, board, and beneath it the bench. */
export function DesktopBench(): ReactNode {
  const isNarrow = useMedia(NARROW);
  const isOlder = useBench(({ live, unreadable }) => live.isOlder || unreadable.length > 0);
  const isTall = useBench(({ step }) => stepOfId(step).isTall === true);
  const isWide = useMedia(WIDE);
  const wished = useBench(({ step, isSheetRoomy }) => isSheetRoomy ?? stepOfId(step).isRoomy === true);
  const isRoomy = !isTall && !isNarrow && (isWide || wished);
  const layout = ["desktop", isNarrow && "narrow", isTall && "tall", isRoomy && "roomy"].filter(Boolean).join(" ");
  return (
    <div className={layout}>
      <i className="tick north" />
      <i className="tick east" />
      <i className="tick south" />
      <i className="tick west" />
      <aside aria-label="The car and the order of work">
        <CarHead />
        <OrderOfWork />
        <Legend />
        <BenchFoot />
      </aside>
      <main aria-label="Drawing, travel tape and charts" className={isOlder ? "board is-older" : "board"}>
        <Board charts={isNarrow || isTall || (isRoomy && !isWide) ? "none" : "beside"} />
      </main>
      <section className="sheet" aria-label="The step's sheet">
        {!isTall && !isNarrow && !isWide && (
          <button type="button" className="sheet-room small" onClick={() => giveSheetRoom(!isRoomy)}>
            {isRoomy ? "Charts back" : "More room"}
          </button>
        )}
        <StepSheet />
        {isNarrow && !isTall && <ChartsRow />}
      </section>
      {!isTall && (
        <section className="stops" aria-label="What stops the wheel">
          <StopsTable />
        </section>
      )}
      <section className="findings" aria-labelledby="findings-head">
        <h2 id="findings-head">
          Findings <small>worst first</small>
        </h2>
        <FindingsList />
      </section>
    </div>
  );
}

const Legend = (): ReactNode => (
  <div className="legend small quiet">
    <p>
      <svg width="30" height="12" viewBox="0 0 30 12" aria-hidden="true">
        <path d="M1 6h28" className="legend-stop" />
      </svg>
      stops the wheel
    </p>
    <p>
      <svg width="30" height="12" viewBox="0 0 30 12" aria-hidden="true">
        <path d="M1 2h28v8H1z" className="legend-hold" />
      </svg>
      what you hold
    </p>
    <p>
      <svg width="30" height="12" viewBox="0 0 30 12" aria-hidden="true">
        <path d="M0 0h30v12H0z" fill="url(#hatch-out-of-reach)" />
      </svg>
      out of reach
    </p>
  </div>
);
