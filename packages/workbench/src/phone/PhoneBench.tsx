import { type ReactNode, useState } from "react";
import { useStore } from "zustand";
import { ListMark, UndoMark } from "../app/Mark.tsx";
import { useBench } from "../app/use-bench.ts";
import { PhoneBoard } from "../board/PhoneBoard.tsx";
import { FindingsList } from "../findings/FindingsList.tsx";
import { ChartsRow } from "../sheet/ChartsRow.tsx";
import { StepSheet } from "../sheet/StepSheet.tsx";
import { STEPS, stepOfId } from "../steps/steps.ts";
import { showPanel, undo } from "../store/bench.ts";
import { connection } from "../store/connection.ts";
import { PhoneStops } from "./PhoneStops.tsx";

const TABS = ["Stops", "Inputs", "Charts", "Findings"] as const;
type Tab = (typeof TABS)[number];

/** Under the car: bar, drawing with the tape at the thumb's edge, sheet, four tabs. */
export function PhoneBench(): ReactNode {
  const step = stepOfId(useBench((state) => state.step));
  const file = useStore(connection, (state) => state.name);
  const name = useBench(({ document }) => document?.name ?? file ?? "No car");
  const isUnreadable = useBench(({ unreadable }) => unreadable.length > 0);
  const canUndo = useBench(({ undoing }) => undoing.done.length > 0);
  const waiting = useBench(
    ({ live, unreadable }) =>
      unreadable.length +
      live.faults.length +
      (live.study?.findings.filter(({ gravity }) => gravity !== "note").length ?? 0),
  );
  const saved = useStore(connection, ({ short }) => short);
  const [tab, setTab] = useState<Tab>("Stops");
  return (
    <div className="phone">
      <header className="bar">
        <h1 className="unseen">{name}</h1>
        <button
          type="button"
          className="pressable step-button"
          onClick={() => showPanel({ kind: "steps" })}
          aria-label={`${STEPS.indexOf(step) + 1} ${step.title}: choose a step`}
        >
          <ListMark />
          <b>
            {STEPS.indexOf(step) + 1} {step.title}
          </b>
        </button>
        <button type="button" className="pressable quiet small car-button" onClick={() => showPanel({ kind: "files" })}>
          <span>
            {name}
            {isUnreadable ? ", cannot be read" : saved === "" ? "" : `, ${saved}`}
          </span>
        </button>
        <button type="button" className="pressable square" aria-label="Undo" disabled={!canUndo} onClick={undo}>
          <UndoMark />
        </button>
      </header>
      <main aria-label="Drawing and travel tape">
        <PhoneBoard />
      </main>
      {/* A sheet of its own for each tab, so that none begins where another was scrolled to. */}
      <section key={tab} className="phone-sheet" aria-label={tab}>
        <Contents tab={tab} />
      </section>
      <nav className="tabs" aria-label="Sheet">
        {TABS.map((each) => (
          <button
            type="button"
            key={each}
            aria-current={each === tab ? "page" : undefined}
            onClick={() => setTab(each)}
          >
            {each}
            {each === "Findings" && waiting > 0 && <b className="count">{waiting}</b>}
          </button>
        ))}
      </nav>
    </div>
  );
}

function Contents({ tab }: { readonly tab: Tab }): ReactNode {
  switch (tab) {
    case "Stops":
      return <PhoneStops />;
    case "Inputs":
      return <StepSheet />;
    case "Charts":
      return <ChartsRow />;
    case "Findings":
      return <FindingsList />;
  }
}
