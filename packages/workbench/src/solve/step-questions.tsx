import type { ReactNode } from "react";
import { TurnEffects } from "../sheet/TurnEffects.tsx";
import { SolveFor } from "./SolveFor.tsx";

const STANCE = ["shortest-wheelbase", "ride-height"];
const ARMS = ["constant-camber", "camber-at-two", "least-toe"];
const SHAFT = ["least-plunge", "shaft-slip"];

/** Questions about where the whole corner stands. */
export const StanceQuestions = (): ReactNode => <SolveFor questions={STANCE} />;

/** What a turn does, and which place an arm or link should have. */
export const ArmsWork = (): ReactNode => (
  <>
    <TurnEffects />
    <SolveFor questions={ARMS} />
  </>
);

/** Questions about the half shaft. */
export const ShaftQuestions = (): ReactNode => <SolveFor questions={SHAFT} />;
