import { lazy, type ReactNode, Suspense } from "react";
import type { Panel } from "../store/bench-state.ts";
import { useBench } from "./use-bench.ts";

const FilesPanel = lazy(() => import("../files/FilesPanel.tsx").then((m) => ({ default: m.FilesPanel })));
const NewCarPanel = lazy(() => import("../files/NewCarPanel.tsx").then((m) => ({ default: m.NewCarPanel })));
const HistoryPanel = lazy(() => import("../files/HistoryPanel.tsx").then((m) => ({ default: m.HistoryPanel })));
const ComparePanel = lazy(() => import("../files/ComparePanel.tsx").then((m) => ({ default: m.ComparePanel })));
const KeypadPanel = lazy(() => import("../phone/KeypadPanel.tsx").then((m) => ({ default: m.KeypadPanel })));
const CyclePanel = lazy(() => import("../phone/CyclePanel.tsx").then((m) => ({ default: m.CyclePanel })));
const StepsPanel = lazy(() => import("../phone/StepsPanel.tsx").then((m) => ({ default: m.StepsPanel })));
const HowPanel = lazy(() => import("../sheet/HowPanel.tsx").then((m) => ({ default: m.HowPanel })));
const KeysPanel = lazy(() => import("./KeysPanel.tsx").then((m) => ({ default: m.KeysPanel })));
const ChartsPanel = lazy(() => import("../sheet/ChartsPanel.tsx").then((m) => ({ default: m.ChartsPanel })));

/** Whatever lies over the bench; each is fetched when it is first asked for. */
export function Panels(): ReactNode {
  const panel = useBench((state) => state.panel);
  return panel && <Suspense fallback={null}>{contentsOf(panel)}</Suspense>;
}

function contentsOf(panel: Panel): ReactNode {
  switch (panel.kind) {
    case "files":
      return <FilesPanel />;
    case "new-car":
      return <NewCarPanel />;
    case "history":
      return <HistoryPanel />;
    case "compare":
      return <ComparePanel />;
    case "keys":
      return <KeysPanel />;
    case "charts":
      return <ChartsPanel />;
    case "steps":
      return <StepsPanel />;
    case "cycle-and-read":
      return <CyclePanel />;
    case "keypad":
      return <KeypadPanel key={panel.place} place={panel.place} />;
    case "how":
      return <HowPanel id={panel.quantity} />;
  }
}
