import type { Sheet } from "@armwright/drawing";
import type { Study } from "@armwright/engine";

/** A rectangle of the board, px. */
export interface Area {
  readonly width: number;
  readonly height: number;
}

/** How far the car reaches from the wheel centre at ride height, m. */
interface Reach {
  readonly outboard: number;
  readonly inboard: number;
  readonly up: number;
  readonly down: number;
  readonly forward: number;
  readonly rearward: number;
}

/** Height of the small views on a board of this height, px. */
export const footOf = (height: number): number => Math.min(200, Math.max(124, height * 0.22));

const MARGIN = 0.06;

/** Everything that is drawn lies within: the wheel wherever it may go, and every point of the car. */
function reachOf(study: Study): Reach {
  const { car, corner, travel } = study;
  const c = corner.wheelCentre;
  const radius = car.wheel.freeRadius;
  const points = [
    ...corner.pivots.map(({ point }) => point),
    ...[car.shock, car.strap].flatMap((part) => (part ? [part.upper.point, part.lower.point] : [])),
    ...(car.bumpStop ? [car.bumpStop.base.point, car.bumpStop.strikes.point] : []),
    ...(car.driveshaft ? [car.driveshaft.inner.centre, car.driveshaft.outer.centre] : []),
  ];
  const most = (of: (p: { x: number; y: number; z: number }) => number, least: number): number =>
    Math.max(least, ...points.map(of));
  return {
    outboard: car.wheel.sectionWidth / 2 + MARGIN,
    inboard:
      Math.max(
        c.y,
        most((p) => c.y - p.y, 0),
      ) + MARGIN,
    up: most((p) => p.z - c.z + 0.03, radius + Math.max(0, travel.bump.stop.travel) * 0.6) + MARGIN,
    down: Math.max(car.wheel.loadedRadius + MARGIN, radius - travel.droop.stop.travel),
    forward: most((p) => p.x - c.x, radius) + MARGIN,
    rearward: most((p) => c.x - p.x, radius) + MARGIN,
  };
}

/**
 * Lays the view from behind so that the wheel centre at ride height stands level with the tape's zero, px from the top;
 * higher where that leaves less than `foot` under the ground.
 */
export function placeRear(study: Study, area: Area, tapeZero: number, foot = 0): Sheet {
  const reach = reachOf(study);
  const c = study.corner.wheelCentre;
  const scale = Math.min(
    area.width / (reach.outboard + reach.inboard),
    tapeZero / reach.up,
    (area.height - tapeZero) / reach.down,
  );
  // Room for the small views under the ground: the whole drawing goes up as far as there is paper over it.
  const short = tapeZero + scale * c.z + foot - area.height;
  const zero = tapeZero - Math.max(0, Math.min(short, tapeZero - scale * reach.up));
  const spare = area.width - scale * (reach.outboard + reach.inboard);
  return {
    ...area,
    pen: 1,
    scale,
    origin: { x: scale * (reach.outboard + c.y) + Math.min(spare / 2, scale * 0.15), y: zero + scale * c.z },
  };
}

/** Lays a view so that the car fills the area: from above, from the left, or from behind where no tape gives the height. */
export function placeView(view: "rear" | "top" | "left", study: Study, area: Area): Sheet {
  const reach = reachOf(study);
  const c = study.corner.wheelCentre;
  if (view === "rear") {
    const scale = Math.min(area.width / (reach.outboard + reach.inboard), area.height / (reach.up + reach.down));
    return placeRear(study, area, scale * reach.up + (area.height - scale * (reach.up + reach.down)) / 2);
  }
  if (view === "top") {
    const scale = Math.min(
      area.width / (reach.outboard + reach.inboard),
      area.height / (reach.forward + reach.rearward),
    );
    const x = (area.width - scale * (reach.outboard + reach.inboard)) / 2;
    const y = (area.height - scale * (reach.forward + reach.rearward)) / 2;
    return {
      ...area,
      pen: 1,
      scale,
      origin: { x: x + scale * (reach.outboard + c.y), y: y + scale * (reach.forward + c.x) },
    };
  }
  const scale = Math.min(area.width / (reach.forward + reach.rearward), area.height / (reach.up + reach.down));
  const x = (area.width - scale * (reach.forward + reach.rearward)) / 2;
  const y = (area.height - scale * (reach.up + reach.down)) / 2;
  return { ...area, pen: 1, scale, origin: { x: x + scale * (reach.forward + c.x), y: y + scale * (reach.up + c.z) } };
}
