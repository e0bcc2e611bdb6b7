import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import type { OverProps } from "../board/laid-over.ts";
import { ArrowsOver } from "../loads/ForcesOver.tsx";
import { useLanding } from "./landing-store.ts";
import { landingNow } from "./over-now.ts";

/** Over the drawing while a landing is looked at: the forces of that moment. */
export function LandingOver(props: OverProps): ReactNode {
  const made = useLanding((state) => state.made);
  const time = useLanding((state) => state.time);
  const units = useBench((state) => state.units);
  const { study, solved } = props;
  const arrows = made ? (landingNow(made, time, study, solved, units)?.arrows ?? []) : [];
  return <ArrowsOver {...props} arrows={arrows} label="The forces at this moment of the landing" keepsDrawing />;
}
