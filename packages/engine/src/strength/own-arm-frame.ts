import type { ArmId, Car } from "../car/car.ts";
import { distance } from "../geometry/vec3.ts";
import type { ArmFrame, ArmMember, ArmNode } from "./arm-frame.ts";
import type { ArmFrameEntry } from "./entry.ts";
import { placesOf, placesOnArm, placeWords } from "./places.ts";

/** The frame that the builder drew. A pivot or mount of the arm that no node names is stiffly tied to the nearest node. */
export function ownArmFrame(car: Car, arm: ArmId, entry: ArmFrameEntry): ArmFrame {
  const places = placesOf(car);
  const nodes = entry.nodes.map(
    ({ name, point, at }): ArmNode => ({
      id: name,
      label: at === undefined || !places.has(at) ? name : placeWords(name),
      point: (at === undefined ? undefined : places.get(at)) ?? point,
    }),
  );
  const members = entry.members.map(
    ({ name, from, to, section, material, depth }): ArmMember => ({
      id: name,
      label: name,
      from,
      to,
      section,
      material,
      role: "own",
      ...(depth && { depth }),
    }),
  );
  const used = nodes.filter(({ id }) => members.some(({ from, to }) => from === id || to === id));
  const attached = placesOnArm(car, arm).map(({ id, point }) => {
    const named = entry.nodes.find(({ at }) => at === id)?.name;
    const nearest = used.reduce<ArmNode | null>(
      (best, node) => (!best || distance(node.point, point) < distance(best.point, point) ? node : best),
      null,
    );
    return { place: id, node: named ?? nearest?.id ?? "", point };
  });
  return { arm, isAssumed: false, nodes: used, members, attached };
}
