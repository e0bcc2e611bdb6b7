import type { SurveyResult } from "@armwright/engine";
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";

/** What of the survey is shown in sheet, drawing and space alike. */
interface SurveyShown {
  /** Which point is looked at; null for none. */
  readonly point: string | null;
  /** While the survey's sheet is open. */
  readonly result: SurveyResult | null;
}

const shown = createStore<SurveyShown>(() => ({ point: null, result: null }));

export const useSurveyShown = <T>(part: (state: SurveyShown) => T): T => useStore(shown, part);
export const showSurveyPoint = (point: string | null): void => shown.setState({ point });
export const showSurveyResult = (result: SurveyResult | null): void => shown.setState({ result });
