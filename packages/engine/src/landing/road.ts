/** Ground under a wheel that rolls along it: heights at even steps. */
export interface Road {
  /** m, at x = 0, step, 2·step …; even ground before the first and past the last. */
  readonly heights: Float64Array;
  readonly step: number;
  /** Of the car, m/s. */
  readonly speed: number;
}

const LEVEL_AHEAD = 1;

/** A rounded bump, half of h·(1 − cos), m; begins a metre ahead. */
export function bumpRoad(height: number, length: number, speed: number): Road {
  const step = length / 400;
  return madeRoad(LEVEL_AHEAD + length, step, speed, (x) => hump(x - LEVEL_AHEAD, height, length));
}

/** So many bumps in a row, crest to crest `spacing` apart: a wave of the whole `height` from trough to crest. */
export function whoopsRoad(height: number, spacing: number, count: number, speed: number): Road {
  const step = spacing / 400;
  return madeRoad(LEVEL_AHEAD + spacing * count, step, speed, (x) => {
    const along = x - LEVEL_AHEAD;
    return along <= 0 || along >= spacing * count ? 0 : hump(along % spacing, height, spacing);
  });
}

const hump = (x: number, height: number, length: number): number =>
  x <= 0 || x >= length ? 0 : (height / 2) * (1 - Math.cos((2 * Math.PI * x) / length));

export function madeRoad(length: number, step: number, speed: number, heightAt: (x: number) => number): Road {
  const count = Math.ceil(length / step) + 2;
  return { heights: Float64Array.from({ length: count }, (_, i) => heightAt(i * step)), step, speed };
}

/** Height and rate of the ground now, m and m/s, by cubics through the steps with central slopes; writes two numbers. */
export function roadAt({ heights, step, speed }: Road, time: number, out: Float64Array): void {
  const u = (speed * time) / step;
  const i = Math.floor(u);
  const last = heights.length - 1;
  if (i < 0 || i >= last) {
    out[0] = heights[i < 0 ? 0 : last]!;
    out[1] = 0;
    return;
  }
  const s = u - i;
  const y0 = heights[i]!;
  const y1 = heights[i + 1]!;
  const m0 = i > 0 ? (y1 - heights[i - 1]!) / 2 : 0;
  const m1 = i + 2 <= last ? (heights[i + 2]! - y0) / 2 : 0;
  const s1 = s - 1;
  out[0] = (1 + 2 * s) * s1 * s1 * y0 + s * s1 * s1 * m0 + s * s * (3 - 2 * s) * y1 + s * s * s1 * m1;
  out[1] = ((6 * s * s1 * (y0 - y1) + s1 * (3 * s - 1) * m0 + s * (3 * s - 2) * m1) * speed) / step;
}
