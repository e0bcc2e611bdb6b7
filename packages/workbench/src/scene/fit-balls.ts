import type { Ball } from "./eye.ts";
import { type Frame, mountNow, wheelUp } from "./frame.ts";
import { along, cross } from "./kit/space.ts";

/** What a fitted view has to hold: wheel, pivots, shaft, shock and strap, and the ghosts' wheels. */
export function ballsOf(frame: Frame): readonly Ball[] {
  const { car, corner, position, options } = frame;
  const balls: Ball[] = [];
  for (const { wheelCentre, spinAxis } of [position, ...(options.ghosts ?? []).map((ghost) => ghost.position)]) {
    const up = wheelUp(spinAxis);
    const ahead = cross(spinAxis, up);
    for (const out of [up, ahead]) {
      for (const sign of [1, -1]) {
        balls.push({
          at: along(wheelCentre, out, sign * car.wheel.freeRadius * 0.85),
          radius: car.wheel.sectionWidth / 2,
        });
      }
    }
  }
  for (const { point, boltSide } of corner.pivots)
    balls.push({ at: mountNow(frame, { point, on: boltSide }), radius: 0.05 });
  for (const mounts of [car.shock, car.strap]) {
    if (!mounts) continue;
    for (const mount of [mounts.upper, mounts.lower]) balls.push({ at: mountNow(frame, mount), radius: 0.05 });
  }
  if (frame.shaft) balls.push({ at: frame.shaft.inner, radius: 0.1 });
  if (options.bothSides)
    balls.push(...balls.map(({ at, radius: size }) => ({ at: { ...at, y: -at.y }, radius: size })));
  return balls;
}
