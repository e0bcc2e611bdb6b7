import { type Car, type Corner, type Position, placeOn, type Vec3 } from "@armwright/engine";
import { circle, gapOf, shift } from "../path.ts";
import type { Handle, Ink, Primitive, Spot } from "../primitive.ts";
import { inTrouble, isHeld, type Scene } from "../scene.ts";
import { area, group, line, patch, stroke } from "../sketch.ts";

/** A point of the car that can be taken hold of. */
interface Grip {
  /** Its place in the document. */
  readonly path: string;
  readonly label: string;
  readonly point: Vec3;
  readonly isPivot: boolean;
}

/** Every point that can be moved, where it is now. */
function gripsOf(car: Car, corner: Corner, position: Position): readonly Grip[] {
  const { shock, strap, bumpStop, driveshaft } = car;
  const mount = (
    path: string,
    label: string,
    m: { readonly point: Vec3; readonly on: Parameters<typeof placeOn>[2] },
  ): Grip => ({
    path,
    label,
    point: placeOn(position, m.point, m.on),
    isPivot: false,
  });
  return [
    ...corner.pivots.map((pivot) => ({
      path: linkagePath(car, pivot.id),
      label: pivot.label,
      point: placeOn(position, pivot.point, pivot.boltSide),
      isPivot: true,
    })),
    ...(car.linkage.kind === "trailing-arm"
      ? [mount("linkage.trailingArm.hub", "arm, hub end", { point: car.linkage.trailingArm.hub, on: "trailing-arm" })]
      : []),
    ...(driveshaft
      ? [
          mount("driveshaft.output.point", "inner joint", { point: driveshaft.inner.centre, on: "chassis" }),
          mount("driveshaft.outer.centre", "outer joint", { point: driveshaft.outer.centre, on: "spindle" }),
        ]
      : []),
    ...(shock
      ? [mount("shock.upper", "shock, upper eye", shock.upper), mount("shock.lower", "shock, lower eye", shock.lower)]
      : []),
    ...(strap
      ? [mount("strap.upper", "strap, upper hole", strap.upper), mount("strap.lower", "strap, lower hole", strap.lower)]
      : []),
    ...(bumpStop
      ? [
          mount("bumpStop.base", "bump stop, base", bumpStop.base),
          mount("bumpStop.strikes", "bump stop, where it lands", bumpStop.strikes),
        ]
      : []),
  ];
}

/** A pivot's place in the document; links of a five-link are a list there. */
function linkagePath(car: Car, pivotId: string): string {
  if (car.linkage.kind !== "five-link") return `linkage.${pivotId}`;
  const index = car.linkage.links.findIndex(
    ({ name }) => pivotId === `links.${name}.inner` || pivotId === `links.${name}.outer`,
  );
  return `linkage.links[${index}].${pivotId.endsWith(".inner") ? "inner" : "outer"}`;
}

/** What can be grabbed in this view: the wheel, and every movable point. */
export function handlesOf(scene: Scene): readonly Handle[] {
  const { car, corner, position, view } = scene;
  return [
    { path: "travel", label: "wheel, up and down", at: view.at(position.wheelCentre) },
    ...gripsOf(car, corner, position).map(({ path, label, point }) => ({ path, label, at: view.at(point) })),
  ];
}

/** Rings with dot and centre lines; a dashed second ring where the point can be moved. One for those that coincide. */
export function pivotParts(scene: Scene): Primitive[] {
  const { car, corner, position, view, pen } = scene;
  const small = scene.detail === "small";
  const r = (small ? 2.6 : 6.8) * pen;
  const drawn: Spot[] = [];
  const parts: Primitive[] = [];
  const wanted = gripsOf(car, corner, position).filter(({ isPivot, path }) => isPivot || path.startsWith("shock."));
  // Those in trouble or in hand come first, so that one that coincides with them does not hide it.
  const marked = wanted.map((grip) => ({ grip, ink: inkOf(scene, grip.path) }));
  marked.sort((a, b) => Number(a.ink === "ink") - Number(b.ink === "ink"));
  for (const { grip, ink } of marked) {
    const c = view.at(grip.point);
    if (drawn.some((other) => gapOf(other, c) < r * 0.5)) continue;
    drawn.push(c);
    parts.push(group("pivot", pivotSign(c, r, ink, small, pen), { meaning: grip.path, label: grip.label }));
  }
  return parts;
}

function inkOf(scene: Scene, path: string): Ink {
  const pivot = scene.corner.pivots.find(({ id }) => linkagePath(scene.car, id) === path);
  if (pivot && inTrouble(scene, `linkage.${pivot.id}`)) return "stop";
  return isHeld(scene, path) ? "hold" : "ink";
}

function pivotSign(c: Spot, r: number, ink: Ink, small: boolean, pen: number): Primitive[] {
  const reach = r + 4.5 * pen;
  if (small) return [area("pivot", circle(c, r), { ink, weight: "thin" })];
  return [
    line("pivot", circle(c, r + 4.6 * pen), { ink, weight: "thin", dash: "short" }),
    area("pivot", circle(c, r), { ink, weight: ink === "stop" ? "outline" : "visible" }),
    stroke("pivot", shift(c, -reach, 0), shift(c, reach, 0), { ink, weight: "thin" }),
    stroke("pivot", shift(c, 0, -reach), shift(c, 0, reach), { ink, weight: "thin" }),
    patch("pivot", circle(c, 1.5 * pen), { fill: ink }),
  ];
}
