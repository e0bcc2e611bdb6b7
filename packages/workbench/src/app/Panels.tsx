import { lazy, type ReactNode, Suspense } from "react";
import type { Panel } from "../store/bench-state.ts";
import { useBench } from "./use-bench.ts";

const PANELS = {
  FilesPanel: () => import("../files/FilesPanel.tsx").then((m) => ({ default: m.FilesPanel })),
  NewCarPanel: () => import("../files/NewCarPanel.tsx").then((m) => ({ default: m.NewCarPanel })),
  HistoryPanel: () => import("../files/HistoryPanel.tsx").then((m) => ({ default: m.HistoryPanel })),
  ComparePanel: () => import("../files/ComparePanel.tsx").then((m) => ({ default: m.ComparePanel })),
  KeypadPanel: () => import("../phone/KeypadPanel.tsx").then((m) => ({ default: m.KeypadPanel })),
  CyclePanel: () => import("../phone/CyclePanel.tsx").then((m) => ({ default: m.CyclePanel })),
  StepsPanel: () => import("../phone/StepsPanel.tsx").then((m) => ({ default: m.StepsPanel })),
  HowLimitPanel: () => import("../sheet/HowLimitPanel.tsx").then((m) => ({ default: m.HowLimitPanel })),
  HowFindingPanel: () => import("../sheet/HowFindingPanel.tsx").then((m) => ({ default: m.HowFindingPanel })),
  HowPanel: () => import("../sheet/HowPanel.tsx").then((m) => ({ default: m.HowPanel })),
  KeysPanel: () => import("./KeysPanel.tsx").then((m) => ({ default: m.KeysPanel })),
  ChartsPanel: () => import("../sheet/ChartsPanel.tsx").then((m) => ({ default: m.ChartsPanel })),
} as const;

const FilesPanel = lazy(PANELS.FilesPanel);
const NewCarPanel = lazy(PANELS.NewCarPanel);
const HistoryPanel = lazy(PANELS.HistoryPanel);
const ComparePanel = lazy(PANELS.ComparePanel);
const KeypadPanel = lazy(PANELS.KeypadPanel);
const CyclePanel = lazy(PANELS.CyclePanel);
const StepsPanel = lazy(PANELS.StepsPanel);
const HowLimitPanel = lazy(PANELS.HowLimitPanel);
const HowFindingPanel = lazy(PANELS.HowFindingPanel);
const HowPanel = lazy(PANELS.HowPanel);
const KeysPanel = lazy(PANELS.KeysPanel);
const ChartsPanel = lazy(PANELS.ChartsPanel);

/** Needed by one step only, which fetches it when it is opened. */
const LogPanel = lazy(() => import("../as-built/LogPanel.tsx").then((m) => ({ default: m.LogPanel })));
const ReadingPanel = lazy(() => import("../survey/ReadingPanel.tsx").then((m) => ({ default: m.ReadingPanel })));

/** Fetches what may be asked for next, once the page has nothing else to do: a panel then opens at once. */
export function fetchPanels(): void {
  for (const panel of Object.values(PANELS)) void panel();
}

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
    case "survey-reading":
      return (
        <ReadingPanel key={String(panel.index)} index={panel.index} {...(panel.start && { start: panel.start })} />
      );
    case "log-reading": {
      const { kind: _, ...asked } = panel;
      return <LogPanel {...asked} />;
    }
    case "how":
      return <HowPanel id={panel.quantity} />;
    case "how-limit":
      return <HowLimitPanel direction={panel.direction} id={panel.id} />;
    case "how-finding":
      return <HowFindingPanel of={panel.key} />;
  }
}
