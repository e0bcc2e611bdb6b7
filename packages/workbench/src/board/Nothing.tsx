import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { showPanel } from "../store/bench.ts";

/** No car, or one that has never yet been whole enough to be drawn. */
export function Nothing(): ReactNode {
  const hasDocument = useBench(({ document }) => document !== null);
  const faults = useBench(({ live, unreadable }) => live.faults.length + unreadable.length);
  if (faults > 0) {
    return (
      <div className="nothing">
        <h2>This car cannot be drawn yet</h2>
        <p>
          {faults === 1 ? "One entry has" : `${faults} entries have`} to be mended first: they are listed under the
          findings
          {hasDocument
            ? ", and a press on one leads to its field."
            : ". Nothing in the file is touched until it can be read."}
        </p>
      </div>
    );
  }
  return (
    <div className="nothing">
      <h2>No car on the bench</h2>
      <p>Open one, bring a file in, or begin a new car with a few questions.</p>
      <button type="button" className="pressable" onClick={() => showPanel({ kind: "new-car" })}>
        New car
      </button>
      <button type="button" className="pressable" onClick={() => showPanel({ kind: "files" })}>
        Cars
      </button>
    </div>
  );
}
