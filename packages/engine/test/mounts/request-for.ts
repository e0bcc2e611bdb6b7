import { readFileSync } from "node:fs";
import type { Car } from "../../src/car/car.ts";
import { type Corner, makeCorner } from "../../src/cycle/corner.ts";
import { readCarDocument } from "../../src/document/index.ts";
import { addScaled, vec } from "../../src/geometry/vec3.ts";
import { defaultRequest } from "../../src/mounts/default-request.ts";
import type { MountRequest, ShockOption } from "../../src/mounts/request.ts";

export const INCH = 0.0254;

export function exampleCar(name: string): Car {
  const reading = readCarDocument(
    readFileSync(new URL(`../../../../examples/${name}.car.json`, import.meta.url), "utf8"),
  );
  if (!reading.ok) throw new Error(`${name} does not read`);
  return reading.car;
}

/** The car's own shock off its mounts, on a small and coarse grid. */
export function smallRequest(name: string, step = INCH): { readonly corner: Corner; readonly request: MountRequest } {
  const car = exampleCar(name);
  const corner = makeCorner(car);
  const request = defaultRequest(corner, [ownShock(car)], step);
  const middle = car.shock!.upper.point;
  const half = vec(6 * INCH, 4 * INCH, 5 * INCH);
  return {
    corner,
    request: { ...request, upper: { kind: "box", from: addScaled(middle, half, -1), to: addScaled(middle, half, 1) } },
  };
}

export const ownShock = (car: Car): ShockOption => ({
  name: "own",
  shortest: car.shock!.shortest,
  longest: car.shock!.longest,
  bodyDiameter: car.shock!.diameter,
  springDiameter: 0,
  misalignmentLimit: 0.3,
});
