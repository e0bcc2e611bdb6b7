import { boxesAlong } from "@armwright/drawing";
import { placeMember, type Vec3 } from "@armwright/engine";
import type { Eye } from "./eye.ts";
import { type Frame, mountNow, wheelUp } from "./frame.ts";
import { cross } from "./kit/space.ts";

/** A box of the canvas, CSS px. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A thick line of the car, vehicle axes, m. */
interface Bar {
  readonly from: Vec3;
  readonly to: Vec3;
  readonly radius: number;
}

const ROUND = 20;

/** What words would make illegible, or be made so by: tyre, arms, links, shaft, shock and strap as they stand. */
export function barsOf(frame: Frame): readonly Bar[] {
  const { car, corner, position } = frame;
  const { wheelCentre: c, spinAxis: s } = position;
  const { freeRadius, sectionWidth } = car.wheel;
  const up = wheelUp(s);
  const ahead = cross(s, up);
  const around = (i: number): Vec3 => {
    const turn = (i / ROUND) * 2 * Math.PI;
    const [a, b] = [Math.cos(turn) * freeRadius * 0.84, Math.sin(turn) * freeRadius * 0.84];
    return { x: c.x + up.x * a + ahead.x * b, y: c.y + up.y * a + ahead.y * b, z: c.z + up.z * a + ahead.z * b };
  };
  const bars: Bar[] = Array.from({ length: ROUND }, (_, i) => ({
    from: around(i),
    to: around(i + 1),
    radius: sectionWidth * 0.35,
  }));
  for (const member of corner.members) {
    const [from, to] = placeMember(position, member);
    bars.push({ from, to, radius: member.diameter / 2 });
  }
  for (const part of [car.shock, car.strap]) {
    if (part) bars.push({ from: mountNow(frame, part.upper), to: mountNow(frame, part.lower), radius: 0.03 });
  }
  if (frame.shaft) bars.push({ from: frame.shaft.inner, to: frame.shaft.outer, radius: 0.04 });
  return bars;
}

/** The bars as boxes of the canvas, for an eye. */
export function boxesOf(bars: readonly Bar[], eye: Eye): readonly Box[] {
  const [a, b] = [
    { x: 0, y: 0, depth: 0 },
    { x: 0, y: 0, depth: 0 },
  ];
  return bars.flatMap(({ from, to, radius }) => {
    eye.spotOf(from, a);
    eye.spotOf(to, b);
    return boxesAlong(a, b, Math.max(5, radius * eye.scale));
  });
}

/** Places round a spot for words that may not lie on it, the nearest first: how far, and which way. */
export const AROUND: readonly { readonly x: number; readonly y: number }[] = [44, 76, 112, 152].flatMap((away) =>
  Array.from({ length: 12 }, (_, i) => {
    const turn = ((i % 2 === 0 ? i / 2 : -(i + 1) / 2) * Math.PI) / 6 - Math.PI / 2;
    return { x: Math.cos(turn) * away, y: Math.sin(turn) * away };
  }),
);
