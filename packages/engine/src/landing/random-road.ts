import type { Road } from "./road.ts";

export const ROAD_CLASSES = ["A", "B", "C", "D", "E", "F", "G", "H"] as const;
export type RoadClass = (typeof ROAD_CLASSES)[number];

/** Spatial frequency at which the classes are defined, and the band that a road has, cycles/m (ISO 8608). */
export const REFERENCE_FREQUENCY = 0.1;
export const ROAD_BAND = { from: 0.011, to: 2.83 };

/** Geometric mean of a class's displacement spectrum at 0.1 cycles/m, m³: 16·10⁻⁶ for A, four times more each (ISO 8608, table C.2). */
export const roughnessOf = (roadClass: RoadClass): number => 16e-6 * 4 ** ROAD_CLASSES.indexOf(roadClass);

const WAVES = 400;

/**
 * A road of a class: G(n) = G(n0)·(n/n0)⁻² (ISO 8608), as a sum of cosines, one for each of 400 bands even in the logarithm,
 * amplitude √(2·∫G dn), its frequency drawn within the band and its phase at random. The same seed makes the same road.
 */
export function randomRoad(roadClass: RoadClass, speed: number, length: number, seed: number, step = 0.02): Road {
  const random = randomFrom(seed);
  const { from, to } = ROAD_BAND;
  const scale = roughnessOf(roadClass) * REFERENCE_FREQUENCY ** 2;
  const count = Math.ceil(length / step) + 2;
  const heights = new Float64Array(count);
  for (let k = 0; k < WAVES; k += 1) {
    const low = from * (to / from) ** (k / WAVES);
    const high = from * (to / from) ** ((k + 1) / WAVES);
    const amplitude = Math.sqrt(2 * scale * (1 / low - 1 / high));
    const frequency = low + (high - low) * random();
    const phase = 2 * Math.PI * random();
    // cos(a + b) from one step to the next; set anew now and then, so that rounding does not add up.
    const turn = 2 * Math.PI * frequency * step;
    const c = Math.cos(turn);
    const s = Math.sin(turn);
    let x = 0;
    let y = 0;
    for (let i = 0; i < count; i += 1) {
      if (i % 256 === 0) {
        x = amplitude * Math.cos(phase + turn * i);
        y = amplitude * Math.sin(phase + turn * i);
      }
      heights[i] = heights[i]! + x;
      const next = x * c - y * s;
      y = y * c + x * s;
      x = next;
    }
  }
  return { heights: eased(heights, step), step, speed };
}

/** The road rises out of level ground over its first metres, so that the wheel is not thrown at the start. */
const EASED_OVER = 5;
function eased(heights: Float64Array, step: number): Float64Array {
  const most = Math.min(heights.length, Math.round(EASED_OVER / step));
  for (let i = 0; i < most; i += 1) heights[i] = heights[i]! * 0.5 * (1 - Math.cos((Math.PI * i) / most));
  return heights;
}

/** Even numbers from 0 to 1, the same for the same seed: 32-bit integer mixing, nothing that differs between machines. */
export function randomFrom(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
