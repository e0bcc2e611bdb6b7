import { add, cross, length, ORIGIN, subtract, type Vec3 } from "../geometry/vec3.ts";
import type { Frame, NodeLoad, Reaction } from "./frame.ts";

/**
 * How far loads and reactions are from balance: the larger of what is left of the forces and of the moments about the
 * first node ÷ the frame's size, as a share of the largest single force (or moment ÷ size). 0 where nothing acts.
 */
export function equilibriumResidual(
  { nodes }: Pick<Frame, "nodes">,
  loads: readonly NodeLoad[],
  reactions: readonly Reaction[],
): number {
  const centre = nodes[0]?.point ?? ORIGIN;
  const arms = new Map(nodes.map(({ id, point }) => [id, subtract(point, centre)]));
  const size = Math.max(1e-9, ...[...arms.values()].map(length));
  let force: Vec3 = ORIGIN;
  let moment: Vec3 = ORIGIN;
  let largest = 0;
  for (const { node, force: f = ORIGIN, moment: m = ORIGIN } of [...loads, ...reactions]) {
    force = add(force, f);
    moment = add(moment, add(m, cross(arms.get(node) ?? ORIGIN, f)));
    largest = Math.max(largest, length(f), length(m) / size);
  }
  return largest === 0 ? 0 : Math.max(length(force), length(moment) / size) / largest;
}
