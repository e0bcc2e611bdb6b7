import {
  type Corner,
  dampingOverTravel,
  type SpringStudy,
  shaftForces,
  type UnitSystem,
  USUAL_RATIOS,
} from "@armwright/engine";
import { type ReactNode, useState } from "react";
import { useBench } from "../app/use-bench.ts";
import { CurveChart } from "../curve/CurveChart.tsx";
import { roomAbove } from "../curve/ticks.ts";
import { ValueEntry } from "../mounts/ValueEntry.tsx";
import { bare, shown, unitShown } from "../words/shown.ts";

const INCH = 0.0254;
/** Shaft speeds that are told, m/s: the slow ones that the body is damped at. */
const SPEEDS: Readonly<Record<UnitSystem, readonly number[]>> = {
  "inch-pound": [2, 5, 10, 15, 20].map((speed) => speed * INCH),
  metric: [0.05, 0.1, 0.2, 0.3, 0.5],
};

/** What would damp critically over the travel, and the force that the shock should make for a share of it. */
export function DampingPart({
  corner,
  springs,
}: {
  readonly corner: Corner;
  readonly springs: SpringStudy;
}): ReactNode {
  const units = useBench((state) => state.units);
  const [ratios, setRatios] = useState(USUAL_RATIOS);
  const { positions, stops, rest } = springs;
  const critical = positions[1]!.damping;
  if (!critical) return null;
  const over = dampingOverTravel(corner, springs);
  const speeds = SPEEDS[units];
  const forces = shaftForces(critical, ratios, [0, ...speeds]);
  const note = (isUsual: boolean) => (isUsual ? { note: "common practice" } : {});
  const most = speeds.at(-1) ?? 1;
  const mostForce = Math.max(...forces.map(({ bump, rebound }) => Math.max(bump, rebound)));
  return (
    <details className="item">
      <summary className="pressable">
        <span>Damping</span>
        <span className="quiet">critical at rest {shown(critical.atShock, "damping", units)} at the shock</span>
      </summary>
      <CurveChart
        label="Critical damping at the wheel and at the shock over the travel"
        across={{ title: "travel, bump to the right", dimension: "length", from: stops.droop, to: stops.bump }}
        up={{
          title: "Critical damping",
          dimension: "damping",
          from: 0,
          to: roomAbove(over.flatMap(({ atWheel, atShock }) => [atWheel, atShock])),
        }}
        curves={[
          {
            name: "at the shock",
            points: over.map(({ travel, atShock }) => ({ x: travel, y: atShock })),
            dot: { x: rest.travel, y: critical.atShock },
          },
          {
            name: "at the wheel",
            points: over.map(({ travel, atWheel }) => ({ x: travel, y: atWheel })),
            dot: { x: rest.travel, y: critical.atWheel },
          },
        ]}
      />
      <div className="two-wide">
        <ValueEntry
          label="Share of critical in bump"
          dimension="ratio"
          value={ratios.bump}
          least={0}
          {...note(ratios.bump === USUAL_RATIOS.bump)}
          onEnter={(bump) => setRatios({ ...ratios, bump })}
        />
        <ValueEntry
          label="Share of critical in rebound"
          dimension="ratio"
          value={ratios.rebound}
          least={0}
          {...note(ratios.rebound === USUAL_RATIOS.rebound)}
          onEnter={(rebound) => setRatios({ ...ratios, rebound })}
        />
      </div>
      <CurveChart
        label="Force that the shock should make over its shaft's speed, in bump and in rebound"
        across={{ title: "shaft speed", dimension: "speed", from: 0, to: most }}
        up={{ title: "Force to aim at", dimension: "force", from: 0, to: roomAbove([mostForce]) }}
        curves={[
          { name: "rebound", points: forces.map(({ speed, rebound }) => ({ x: speed, y: rebound })) },
          { name: "bump", points: forces.map(({ speed, bump }) => ({ x: speed, y: bump })) },
        ]}
      />
      <table className="figures">
        <thead>
          <tr>
            <th scope="col">shaft speed, {unitShown("speed", units)}</th>
            {forces.slice(1).map(({ speed }) => (
              <th scope="col" key={speed}>
                {bare(speed, "speed", units)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {(["bump", "rebound"] as const).map((way) => (
            <tr key={way}>
              <th scope="row">
                {way}, {unitShown("force", units)}
              </th>
              {forces.slice(1).map((force) => (
                <td key={force.speed}>{bare(force[way], "force", units)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <p className="small quiet">
        For where the car rests. Common practice: 0.2 to 0.4 of critical in bump, 0.4 to 0.7 in rebound; shocks flatten
        above the slow speeds.
      </p>
    </details>
  );
}
