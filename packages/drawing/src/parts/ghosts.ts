import { type Position, placeMember, placeOn, positionOf, rowAt, type Study, solveAt } from "@armwright/engine";
import { circle, polyline, shift } from "../path.ts";
import type { Primitive, Spot } from "../primitive.ts";
import { numberOf, type Scene } from "../scene.ts";
import { area, line, stroke } from "../sketch.ts";
import { tyreOutline } from "./wheel.ts";

/** A solved position other than the one that is drawn, named with its travel. */
export interface Ghost {
  readonly name: "bump" | "droop" | "ride height";
  readonly position: Position;
}

/** Nearer to the drawn position than this a ghost would only blur it, m. */
const SAME_PLACE = 2e-3;

/** The two stops, solved; one that the drawing shows already is left out. */
export function ghostsOf(study: Study, position: Position): readonly Ghost[] {
  const at = [
    { name: "bump", travel: study.travel.bump.stop.travel },
    { name: "droop", travel: study.travel.droop.stop.travel },
  ] as const;
  return at.flatMap(({ name, travel }): Ghost[] => {
    if (Math.abs(travel - position.travel) < SAME_PLACE) return [];
    const solved = solveAt(study.corner, travel);
    return solved ? [{ name, position: positionOf(study.corner, solved.state) }] : [];
  });
}

/** What lies under the drawing: the tyre's outline. */
export const ghostsUnder = (scene: Scene, ghosts: readonly Ghost[]): Primitive[] =>
  ghosts.map(({ name, position }) =>
    line("ghost", tyreOutline(scene.car.wheel, position, scene.view), {
      ink: "pencil",
      weight: "ghost",
      dash: "ghost",
      meaning: name,
    }),
  );

/** What lies over it: links and shaft as their lines, joints as small rings, a cross at the wheel centre. */
export function ghostsOver(scene: Scene, ghosts: readonly Ghost[]): Primitive[] {
  const { corner, car, view, pen } = scene;
  return ghosts.flatMap(({ name, position }) => {
    const ends: Spot[] = [];
    const lines = corner.members.map((member) => {
      const [from, to] = placeMember(position, member);
      const [a, b] = [view.at(from), view.at(to)];
      if (member.to.on !== "chassis") ends.push(b);
      return [a, b] as const;
    });
    if (car.driveshaft) {
      const outer = view.at(placeOn(position, car.driveshaft.outer.centre, "spindle"));
      ends.push(outer);
      lines.push([view.at(car.driveshaft.inner.centre), outer]);
    }
    const c = view.at(position.wheelCentre);
    const reach = 6.6 * pen;
    const style = { ink: "pencil", weight: "thin", meaning: name } as const;
    return [
      ...distinct(lines).map(([a, b]) => stroke("ghost", a, b, { ...style, weight: "ghost", dash: "ghost" })),
      ...distinctSpots(ends).map((at) => area("ghost", circle(at, 3 * pen), style)),
      stroke("ghost", shift(c, -reach, 0), shift(c, reach, 0), style),
      stroke("ghost", shift(c, 0, -reach), shift(c, 0, reach), style),
    ];
  });
}

/** Path of the wheel centre through the study's cycle, as fine dots. */
export function wheelPath(scene: Scene): Primitive[] {
  const { study, view } = scene;
  const spots: Spot[] = [];
  for (let i = 0; i < study.cycle.travels.length; i += 1) {
    const row = rowAt(study.cycle, i);
    const [x, y, z] = ["wheelX", "wheelY", "wheelZ"].map((id) => numberOf(study, row, id));
    if (x === null || y === null || z === null || x === undefined || y === undefined || z === undefined) continue;
    spots.push(view.at({ x, y, z }));
  }
  return spots.length < 2 ? [] : [line("path", polyline(spots), { ink: "pencil", weight: "visible", dash: "dots" })];
}

const key = (p: Spot): string => `${p.x.toFixed(2)},${p.y.toFixed(2)}`;
const distinctSpots = (spots: readonly Spot[]): Spot[] => [...new Map(spots.map((p) => [key(p), p])).values()];
const distinct = (lines: readonly (readonly [Spot, Spot])[]): (readonly [Spot, Spot])[] => [
  ...new Map(lines.map((pair) => [pair.map(key).join(" "), pair])).values(),
];
