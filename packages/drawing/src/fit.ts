import type { Study } from "@armwright/engine";
import type { Sheet } from "./primitive.ts";

/** Where a view from behind fits a sheet of the given size: the wheel at both stops on the left, the centreline on the right. */
export function fitRear(study: Study, width: number, height: number, pen = 1): Sheet {
  const { car, corner, travel } = study;
  const { wheel } = car;
  const centre = corner.wheelCentre;
  const outside = centre.y + wheel.sectionWidth / 2;
  const shock = car.shock?.upper.point.z ?? 0;
  const top = Math.max(centre.z + wheel.freeRadius + Math.max(travel.bump.stop.travel, 0), shock);
  const bottom = Math.min(centre.z - wheel.freeRadius + Math.min(travel.droop.stop.travel, 0), 0);
  const margin = { left: 40 * pen, right: 48 * pen, top: 40 * pen, bottom: 16 * pen };
  const across = Math.max(width - margin.left - margin.right, 1) / outside;
  const up = Math.max(height - margin.top - margin.bottom, 1) / (top - bottom);
  const scale = Math.min(across, up);
  const spareX = width - margin.left - margin.right - outside * scale;
  return {
    width,
    height,
    scale,
    pen,
    origin: {
      x: margin.left + outside * scale + spareX / 2,
      y: margin.top + top * scale + (height - margin.top - margin.bottom - (top - bottom) * scale) / 2,
    },
  };
}

/** Where a view from above fits: wheel on the left, centreline on the right. */
export function fitTop(study: Study, width: number, height: number, pen = 1): Sheet {
  const { car, corner } = study;
  const xs = [
    ...corner.pivots.map(({ point }) => point.x),
    corner.wheelCentre.x - car.wheel.freeRadius,
    corner.wheelCentre.x + car.wheel.freeRadius,
  ];
  const outside = corner.wheelCentre.y + car.wheel.sectionWidth / 2;
  return centred([outside, 0], [Math.max(...xs), Math.min(...xs)], width, height, pen);
}

/** Where a view from the left fits: the wheel and every pivot, the front to the left. */
export function fitLeft(study: Study, width: number, height: number, pen = 1): Sheet {
  const { car, corner } = study;
  const xs = [
    ...corner.pivots.map(({ point }) => point.x),
    corner.wheelCentre.x - car.wheel.freeRadius,
    corner.wheelCentre.x + car.wheel.freeRadius,
  ];
  const { bump, droop } = study.travel;
  const tops = [
    corner.wheelCentre.z + car.wheel.freeRadius + Math.max(bump.stop.travel, 0),
    car.shock?.upper.point.z ?? 0,
  ];
  const lowest = Math.min(droop.stop.travel, 0);
  return centred([Math.max(...xs), Math.min(...xs)], [Math.max(...tops), lowest], width, height, pen);
}

/** A sheet on which the two spans (m; leftmost and rightmost, top and bottom) stand in the middle. */
function centred(
  [left, right]: readonly [number, number],
  [top, bottom]: readonly [number, number],
  width: number,
  height: number,
  pen: number,
): Sheet {
  const margin = 10 * pen;
  const head = 14 * pen;
  const scale = Math.min(
    Math.max(width - 2 * margin, 1) / Math.max(left - right, 1e-6),
    Math.max(height - 2 * margin - head, 1) / Math.max(top - bottom, 1e-6),
  );
  return {
    width,
    height,
    scale,
    pen,
    origin: {
      x: width / 2 + ((left + right) / 2) * scale,
      y: head + (height - head) / 2 + ((top + bottom) / 2) * scale,
    },
  };
}
