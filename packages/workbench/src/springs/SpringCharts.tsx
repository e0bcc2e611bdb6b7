import { type Corner, type SpringStudy, springOverLength, wheelSpringOverTravel } from "@armwright/engine";
import type { ReactNode } from "react";
import { CurveChart, type CurvePoint, type Upright } from "../curve/CurveChart.tsx";
import { roomAbove } from "../curve/ticks.ts";

interface Props {
  readonly corner: Corner;
  readonly springs: SpringStudy;
  /** The shock, eye to eye, m. */
  readonly shortest: number;
}

/** Force over the shock's whole length, and wheel rate over the travel: crossover and rest marked in both. */
export function SpringCharts({ corner, springs, shortest }: Props): ReactNode {
  const { crossover, rest, stops, shockSpring, positions } = springs;
  const overLength = springOverLength(springs, shortest);
  const overTravel = wheelSpringOverTravel(corner, springs);
  const force: CurvePoint[] = overLength.map(({ shockLength, force: y }) => ({ x: shockLength, y }));
  const rate: CurvePoint[] = overTravel.map(({ travel, wheelRate: y }) => ({ x: travel, y }));
  const solidAt = overLength.at(-1);
  const bump = positions[2]!.state.shockLength;
  const atLength: Upright[] = [
    ...(crossover ? [{ x: crossover.shockLength, label: "crossover" }] : []),
    { x: bump, label: "full bump" },
    ...(solidAt && solidAt.shockLength > shortest + 1e-4
      ? [{ x: solidAt.shockLength, label: "springs solid", isStop: true }]
      : []),
  ];
  const atTravel: Upright[] = crossover?.travel != null ? [{ x: crossover.travel, label: "crossover" }] : [];
  return (
    <>
      <CurveChart
        label="Force of springs and gas along the shock, from fully open to fully closed"
        across={{
          title: "shock, eye to eye",
          dimension: "length",
          from: shockSpring.longest,
          to: shortest,
        }}
        up={{ title: "Along the shock", dimension: "force", from: 0, to: roomAbove(force.map(({ y }) => y)) }}
        curves={[{ name: "force", points: force, dot: { x: rest.state.shockLength, y: rest.state.shockForce } }]}
        uprights={atLength}
      />
      <CurveChart
        label="Wheel rate over the travel, from full droop to full bump"
        across={{ title: "travel, bump to the right", dimension: "length", from: stops.droop, to: stops.bump }}
        up={{ title: "Wheel rate", dimension: "rate", from: 0, to: roomAbove(rate.map(({ y }) => y)) }}
        curves={[{ name: "rate", points: rate, dot: { x: rest.travel, y: positions[1]!.state.wheelRate } }]}
        uprights={atTravel}
      />
      <p className="small quiet">The dot is where the car rests. Gas is taken fast about it; the tyre is left out.</p>
    </>
  );
}
