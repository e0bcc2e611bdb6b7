import type { Box, Spot } from "./primitive.ts";

/** Room on a sheet: what is taken, and whether a place is still free. */
export interface Placement {
  /** Takes a box, free or not: the drawing's own parts. */
  readonly take: (box: Box) => void;
  /** Takes the ground under a line, `half` to either side. */
  readonly takeLine: (from: Spot, to: Spot, half: number) => void;
  /** Whether a box lies on the sheet and touches nothing taken; moved by a spot, where one is given. */
  readonly isFree: (box: Box, by?: Spot) => boolean;
}

/** Side of the squares by which taken boxes are looked up, as a share of the bounds' longer side. */
const CELLS = 40;

const NOWHERE: Spot = { x: 0, y: 0 };

export function makePlacement(bounds: Box): Placement {
  const cell = Math.max(bounds.width, bounds.height, 1e-9) / CELLS;
  const cells: (Box[] | undefined)[] = new Array(CELLS * CELLS);
  const index = (value: number): number => Math.min(CELLS - 1, Math.max(0, Math.floor(value / cell)));
  const take = (box: Box): void => {
    const right = index(box.x + box.width - bounds.x);
    const bottom = index(box.y + box.height - bounds.y);
    for (let i = index(box.x - bounds.x); i <= right; i += 1) {
      for (let j = index(box.y - bounds.y); j <= bottom; j += 1) {
        const at = i * CELLS + j;
        const there = cells[at];
        if (there) there.push(box);
        else cells[at] = [box];
      }
    }
  };
  const isFree = ({ x, y, width, height }: Box, by: Spot = NOWHERE): boolean => {
    const left = x + by.x;
    const top = y + by.y;
    const right = left + width;
    const bottom = top + height;
    if (left < bounds.x || top < bounds.y || right > bounds.x + bounds.width || bottom > bounds.y + bounds.height) {
      return false;
    }
    const lastAcross = index(right - bounds.x);
    const lastDown = index(bottom - bounds.y);
    for (let i = index(left - bounds.x); i <= lastAcross; i += 1) {
      for (let j = index(top - bounds.y); j <= lastDown; j += 1) {
        const there = cells[i * CELLS + j];
        if (!there) continue;
        for (const taken of there) {
          if (left < taken.x + taken.width && taken.x < right && top < taken.y + taken.height && taken.y < bottom) {
            return false;
          }
        }
      }
    }
    return true;
  };
  return {
    take,
    isFree,
    takeLine: (from, to, half) => {
      for (const box of boxesAlong(from, to, half)) take(box);
    },
  };
}

export const overlap = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

export const grown = (box: Box, by: number): Box => ({
  x: box.x - by,
  y: box.y - by,
  width: box.width + 2 * by,
  height: box.height + 2 * by,
});

/** Boxes that cover a line: one where it is level or upright, a row of small ones where it slants. */
export function boxesAlong(from: Spot, to: Spot, half: number): Box[] {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const steps = Math.max(1, Math.ceil(Math.min(Math.abs(dx), Math.abs(dy)) / Math.max(half * 2, 1e-9)));
  const count = Math.min(steps, 60);
  return Array.from({ length: count }, (_, i) => {
    const a = { x: from.x + (dx * i) / count, y: from.y + (dy * i) / count };
    const b = { x: from.x + (dx * (i + 1)) / count, y: from.y + (dy * (i + 1)) / count };
    return {
      x: Math.min(a.x, b.x) - half,
      y: Math.min(a.y, b.y) - half,
      width: Math.abs(b.x - a.x) + 2 * half,
      height: Math.abs(b.y - a.y) + 2 * half,
    };
  });
}
