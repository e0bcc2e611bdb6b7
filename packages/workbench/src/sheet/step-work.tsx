import { type ComponentType, type LazyExoticComponent, lazy } from "react";
import type { StepId } from "../steps/steps.ts";

/** What a step has beside fields and results: a search, a table, paper. Each is fetched when its step is first opened. */
export const STEP_WORK: Partial<Record<StepId, LazyExoticComponent<ComponentType>>> = {
  survey: lazy(() => import("../survey/SurveyWork.tsx").then((m) => ({ default: m.SurveyWork }))),
  loads: lazy(() => import("../loads/LoadsWork.tsx").then((m) => ({ default: m.LoadsWork }))),
  landing: lazy(() => import("../landing/LandingWork.tsx").then((m) => ({ default: m.LandingWork }))),
  strength: lazy(() => import("../strength/StrengthWork.tsx").then((m) => ({ default: m.StrengthWork }))),
  check: lazy(() => import("../certainty/HowSure.tsx").then((m) => ({ default: m.MattersMost }))),
  "as-built": lazy(() => import("../as-built/AsBuiltWork.tsx").then((m) => ({ default: m.AsBuiltWork }))),
  stance: lazy(() => import("../solve/step-questions.tsx").then((m) => ({ default: m.StanceQuestions }))),
  arms: lazy(() => import("../solve/step-questions.tsx").then((m) => ({ default: m.ArmsWork }))),
  driveshaft: lazy(() => import("../solve/step-questions.tsx").then((m) => ({ default: m.ShaftQuestions }))),
  travel: lazy(() => import("../stops-work/StopsWork.tsx").then((m) => ({ default: m.StopsWork }))),
  book: lazy(() => import("../book/BookWork.tsx").then((m) => ({ default: m.BookWork }))),
  shock: lazy(() => import("../mounts/MountFinder.tsx").then((m) => ({ default: m.MountFinder }))),
  springs: lazy(() => import("../springs/SpringsWork.tsx").then((m) => ({ default: m.SpringsWork }))),
};
