import {
  addScaled,
  type Car,
  type Corner,
  type KeepOut,
  type Position,
  placeMember,
  placeOn,
  positionOf,
  solveAt,
  subtract,
  unitVector,
  type Wheel,
} from "@armwright/engine";
import { ball, bar, block, mirroredSolid, type Solid, turned } from "./solid.ts";

/**
 * Both corners as solids at a travel (m) of both wheels, the right one the left's mirror image unless it is given by itself:
 * tubes, rod ends as balls, wheel, shaft, shock, strap, bump stop, and what has to stay clear. Empty where the linkage does
 * not reach that travel.
 */
export function assemblySolids(left: Corner, right: Corner, travel: number): readonly Solid[] {
  const sides = [
    ["left", cornerSolids(left, travel)],
    ["right", cornerSolids(right, travel).map((solid) => mirroredSolid(solid))],
  ] as const;
  if (sides.some(([, solids]) => solids.length === 0)) return [];
  return [
    ...sides.flatMap(([side, solids]) => solids.map((solid) => ({ ...solid, name: `${side}: ${solid.name}` }))),
    ...left.car.keepOuts.flatMap(keepOutSolids),
  ];
}

function cornerSolids(corner: Corner, travel: number): Solid[] {
  const solved = solveAt(corner, travel);
  if (!solved) return [];
  const position = positionOf(corner, solved.state);
  const { car } = corner;
  return [
    ...corner.members.map((member) => {
      const [from, to] = placeMember(position, member);
      return bar(member.label, from, to, member.diameter);
    }),
    ...corner.pivots.map(({ label, point, boltSide }) =>
      ball(`rod end, ${label}`, placeOn(position, point, boltSide), 0.016),
    ),
    wheelSolid(car.wheel, position),
    bar(
      "stub axle",
      placeOn(position, stubInner(car), "spindle"),
      placeOn(position, car.wheel.hubFace, "spindle"),
      0.045,
    ),
    ...shaftSolids(car, position),
    ...partSolids(car, position),
  ];
}

/** Where the stub axle begins: at the outer joint, or two hands inboard of the hub face. */
function stubInner({ driveshaft, wheel }: Car) {
  return driveshaft?.outer.centre ?? addScaled(wheel.hubFace, { x: 0, y: 1, z: 0 }, -0.15);
}

function wheelSolid(wheel: Wheel, { wheelCentre, spinAxis }: Position): Solid {
  const { freeRadius: r, shoulderRadius: s, rimDiameter } = wheel;
  const half = wheel.sectionWidth / 2;
  const inside = rimDiameter / 2;
  const seat = Math.min(wheel.rimWidth / 2, half);
  const round = (way: -1 | 1): (readonly [number, number])[] =>
    Array.from({ length: 7 }, (_, i) => {
      const angle = (Math.PI / 2) * (i / 6);
      return [r - s + s * Math.sin(angle), way * (half - s + s * Math.cos(angle))] as const;
    });
  return turned("tyre", wheelCentre, spinAxis, [[inside, -seat], ...round(-1), ...round(1).reverse(), [inside, seat]]);
}

function shaftSolids({ driveshaft }: Car, position: Position): Solid[] {
  if (!driveshaft) return [];
  const inner = driveshaft.inner.centre;
  const outer = placeOn(position, driveshaft.outer.centre, "spindle");
  return [
    bar("half shaft", inner, outer, driveshaft.diameter),
    ball("inner joint", inner, driveshaft.diameter * 0.8),
    ball("outer joint", outer, driveshaft.diameter * 0.8),
  ];
}

function partSolids({ shock, strap, bumpStop }: Car, position: Position): Solid[] {
  const solids: Solid[] = [];
  if (shock) {
    const [upper, lower] = [shock.upper, shock.lower].map(({ point, on }) => placeOn(position, point, on));
    const middle = addScaled(upper!, subtract(lower!, upper!), 0.6);
    solids.push(
      bar("shock, body and springs", upper!, middle, shock.diameter),
      bar("shock, shaft", middle, lower!, 0.022),
    );
  }
  if (strap) {
    const [upper, lower] = [strap.upper, strap.lower].map(({ point, on }) => placeOn(position, point, on));
    solids.push(bar("limit strap", upper!, lower!, 0.012));
  }
  if (bumpStop) {
    const base = placeOn(position, bumpStop.base.point, bumpStop.base.on);
    const strikes = placeOn(position, bumpStop.strikes.point, bumpStop.strikes.on);
    const heading = unitVector(subtract(strikes, base));
    solids.push(bar("bump stop", base, addScaled(base, heading, bumpStop.reach), 0.05));
  }
  return solids;
}

function keepOutSolids(keepOut: KeepOut): Solid[] {
  switch (keepOut.shape) {
    case "box":
      return [block(`keep out: ${keepOut.name}`, keepOut.centre, keepOut.axisX, keepOut.axisY, keepOut.half)];
    case "tube":
      return [bar(`keep out: ${keepOut.name}`, keepOut.from, keepOut.to, keepOut.diameter)];
    case "half-space":
      return [];
  }
}
