import type { KeepOutTube } from "../car/car.ts";
import type { Corner } from "../cycle/corner.ts";
import { type LowerPoint, lowerPoints, type UpperGrid, upperGrid } from "./grid.ts";
import { frameTubes } from "./load-path.ts";
import { type LowerPath, lowerPath, type Movement, movementOf } from "./movement.ts";
import { type Obstacle, obstaclesOf } from "./obstacles.ts";
import { DEFAULT_GRID_STATIONS, type MountRequest } from "./request.ts";

/** A request made ready on a corner: everything that does not change from candidate to candidate. */
export interface Search {
  readonly corner: Corner;
  readonly request: MountRequest;
  readonly upper: UpperGrid;
  readonly lower: readonly LowerPoint[];
  readonly paths: readonly LowerPath[];
  readonly movement: Movement;
  readonly obstacles: readonly Obstacle[];
  /** That may carry the upper mount. */
  readonly frame: readonly KeepOutTube[];
}

/** Throws RangeError where a zone names what the car has not, or the linkage does not reach the travel. */
export function makeSearch(corner: Corner, request: MountRequest): Search {
  const { travel } = request;
  const movement = movementOf(corner, travel.droop, travel.bump, request.stations ?? DEFAULT_GRID_STATIONS);
  const lower = lowerPoints(corner, request);
  return {
    corner,
    request,
    upper: upperGrid(corner, request.upper, request.step),
    lower,
    paths: lower.map((point) => lowerPath(corner, movement, point, request.bolts)),
    movement,
    obstacles: obstaclesOf(corner, request, movement),
    frame: frameTubes(corner, request),
  };
}
