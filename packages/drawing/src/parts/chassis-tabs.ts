import { placeOn } from "@armwright/engine";
import { gapOf, headingOf, offset, polyline } from "../path.ts";
import type { Primitive, Spot } from "../primitive.ts";
import { mountAt, type Scene } from "../scene.ts";
import { area } from "../sketch.ts";

const INCH = 0.0254;

/** The plates by which parts hang on the chassis, each on the side away from the part's other end. */
export function chassisTabs(scene: Scene): Primitive[] {
  const { corner, position, view, car } = scene;
  const drawn: Spot[] = [];
  const tabs: Primitive[] = [];
  const add = (at: Spot, other: Spot, size: number): void => {
    if (drawn.some((done) => gapOf(done, at) < 2 * scene.pen)) return;
    drawn.push(at);
    tabs.push(tab(at, other, size * INCH * scene.scale));
  };
  for (const member of corner.members) {
    const [from, to] = [member.from, member.to].map((end) => view.at(placeOn(position, end.point, end.on))) as [
      Spot,
      Spot,
    ];
    const pivot = corner.pivots.find(({ point, boltSide }) => boltSide === "chassis" && point === member.from.point);
    if (pivot) add(from, to, 1);
  }
  const { shock, strap } = car;
  if (shock?.upper.on === "chassis") add(mountAt(scene, shock.upper), mountAt(scene, shock.lower), 0.9);
  if (strap?.upper.on === "chassis") add(mountAt(scene, strap.upper), mountAt(scene, strap.lower), 0.7);
  return tabs;
}

function tab(eye: Spot, other: Spot, size: number): Primitive {
  const h = headingOf(other, eye);
  return area(
    "chassis",
    polyline(
      [
        offset(eye, h, -0.55 * size, -0.6 * size),
        offset(eye, h, -0.55 * size, 0.6 * size),
        offset(eye, h, 1.15 * size, 1.1 * size),
        offset(eye, h, 1.15 * size, -1.1 * size),
      ],
      true,
    ),
  );
}
