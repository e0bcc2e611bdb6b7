import type { Corner } from "../cycle/corner.ts";
import { solveAt } from "../cycle/corner.ts";
import { positionOf } from "../cycle/position.ts";
import { sectionProperties } from "../frames/section.ts";
import { distance, dot, ORIGIN } from "../geometry/vec3.ts";
import { type AttitudeForces, attitudeForces } from "../loads/attitude-forces.ts";
import { nodeLoad } from "./analyse-arm.ts";
import { linkTubes } from "./arm-frames.ts";
import type { ArmCheck } from "./check-arms.ts";
import { armLoad, type PartForces } from "./part-forces.ts";

/** What a load case turns the wheel by because arms and links give, at the same travel, beside the unloaded car. */
export interface WheelGive {
  readonly loadCase: string;
  /** m */
  readonly travel: number;
  /** rad, toe-in positive. */
  readonly toe: number;
  /** rad, positive when the top goes out. */
  readonly camber: number;
  /** How far the farthest node of any arm moves against its inner pivots, m. */
  readonly most: number;
}

/**
 * Toe and camber that deflection costs in each case: bent arms and stretched links, by virtual work. Spindle, rod ends, tabs and
 * chassis are taken as stiff, so that the car's own give is more. Linear: small movements.
 */
export function wheelGive(
  corner: Corner,
  arms: readonly ArmCheck[],
  forces: readonly PartForces[],
): readonly WheelGive[] {
  return forces.flatMap((each, index): WheelGive[] => {
    const solved = solveAt(corner, each.travel);
    const position = solved && positionOf(corner, solved.state);
    const unit = position && attitudeForces(corner, position);
    if (!unit) return [];
    let most = 0;
    const work = (virtual: AttitudeForces): number => {
      let sum = linkWork(corner, virtual, each);
      for (const { frame, analysis } of arms) {
        const movements = analysis.ok ? analysis.cases[index]!.frame.movements : [];
        const at = new Map(movements.map((movement) => [movement.node, movement]));
        const { forces: places } = armLoad(corner, position, { ...virtual, struts: [] }, frame.arm);
        for (const load of places.flatMap((place) => nodeLoad(frame, place))) {
          const movement = at.get(load.node);
          if (!movement) continue;
          sum += dot(load.force ?? ORIGIN, movement.shift) + dot(load.moment ?? ORIGIN, movement.turn);
        }
        for (const { shift } of movements) most = Math.max(most, Math.hypot(shift.x, shift.y, shift.z));
      }
      return sum;
    };
    return [{ loadCase: each.name, travel: each.travel, toe: work(unit.toe), camber: work(unit.camber), most }];
  });
}

/** Σ N_virtual · N L / (E A) of the links. */
function linkWork(corner: Corner, virtual: AttitudeForces, { links }: PartForces): number {
  const tubes = linkTubes(corner.car);
  return virtual.links.reduce((sum, { member: id, tension }) => {
    const { from, to, diameter } = corner.members.find((each) => each.id === id)!;
    const { wall, material } = tubes[id]!;
    const { area } = sectionProperties({ shape: "round-tube", diameter, wall: Math.min(wall, diameter / 2) });
    const stretch = ((links[id] ?? 0) * distance(from.point, to.point)) / (material.young * area);
    return sum + tension * stretch;
  }, 0);
}
