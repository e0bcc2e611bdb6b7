/**
 * How far a distance can dip between two stations below the lesser of its two ends, m.
 * A distance of at least `room` between points that move against each other at most at `speed` (m/m) with at most
 * `acceleration` (1/m) bends upward by no more than M = speed²/room + acceleration; less M·t²/2 it is concave, so it
 * stays above its chord less M·h²/8. The least over all pairs of points of two solids keeps that bound. It cannot dip by
 * more than half of the way either, whatever the room.
 */
export function dipBetween(widest: number, speed: number, acceleration: number, room: number): number {
  const way = BETWEEN * speed * widest;
  const left = room - 0.5 * way;
  const half = 0.5 * way;
  if (left <= 0) return half;
  return Math.min(half, (way * way) / (8 * left) + (BETWEEN * acceleration * widest * widest) / 8);
}

/** Speeds and accelerations between two stations are taken to be no more than this times the greatest at stations. */
const BETWEEN = 1.1;
