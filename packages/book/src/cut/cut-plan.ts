/** A length to be cut from bars of stock, m. */
export interface Piece {
  readonly name: string;
  readonly length: number;
}

/** One bar and what is cut from it, longest first. */
export interface Bar {
  readonly pieces: readonly Piece[];
  /** What is left over after the last cut, m. */
  readonly offcut: number;
}

export interface CutPlan {
  readonly bars: readonly Bar[];
  /** Proven that no plan needs fewer bars; otherwise it may need more than the fewest. */
  readonly isFewest: boolean;
  /** Pieces that no bar is long enough for. */
  readonly tooLong: readonly Piece[];
}

/** Branches looked at before the search is content with the best plan so far. */
const MOST_BRANCHES = 200_000;

/**
 * Pieces nested into bars of one length (m), with a saw cut of width `kerf` (m) after each piece: bin packing by depth-first
 * branch and bound, longest piece first. It starts from first fit decreasing, and stops when the sum of the lengths shows
 * that no plan can need fewer bars.
 */
export function cutPlan(pieces: readonly Piece[], stock: number, kerf: number): CutPlan {
  const fitting = pieces.filter(({ length }) => length <= stock + SLACK);
  const tooLong = pieces.filter(({ length }) => length > stock + SLACK);
  const sorted = fitting
    .map((piece, order) => ({ piece, order }))
    .sort((a, b) => b.piece.length - a.piece.length || a.order - b.order)
    .map(({ piece }) => piece);
  // A cut follows each piece but may run off the bar's end: as if bar and pieces were each a kerf longer.
  const needs = sorted.map(({ length }) => length + kerf);
  const room = stock + kerf;
  const search = makeSearch(needs, room);
  const bars = search.bins.map((bin) => {
    const cut = bin.map((index) => sorted[index]!);
    const used = cut.reduce((sum, { length }) => sum + length + kerf, 0);
    return { pieces: cut, offcut: Math.max(0, stock - used) };
  });
  bars.sort((a, b) => a.offcut - b.offcut);
  return { bars, isFewest: search.isFewest, tooLong };
}

/** Rounding of sums of lengths, m: a hair. */
const SLACK = 1e-9;

function makeSearch(needs: readonly number[], room: number): { bins: readonly number[][]; isFewest: boolean } {
  let best = firstFit(needs, room);
  const floor = Math.ceil(needs.reduce((sum, need) => sum + need, 0) / room - SLACK);
  let branches = 0;
  const bins: number[][] = [];
  const left: number[] = [];
  const place = (index: number): boolean => {
    if (best.length <= floor) return true;
    if (index === needs.length) {
      if (bins.length < best.length) best = bins.map((bin) => [...bin]);
      return best.length <= floor;
    }
    branches += 1;
    if (branches > MOST_BRANCHES) return true;
    const need = needs[index]!;
    const tried = new Set<number>();
    for (let bin = 0; bin < bins.length; bin += 1) {
      const rest = left[bin]! - need;
      // Bars with the same room left are the same choice.
      const key = Math.round(left[bin]! / SLACK);
      if (rest < -SLACK || tried.has(key)) continue;
      tried.add(key);
      bins[bin]!.push(index);
      left[bin] = rest;
      if (place(index + 1)) return true;
      bins[bin]!.pop();
      left[bin] = rest + need;
    }
    if (bins.length + 1 < best.length) {
      bins.push([index]);
      left.push(room - need);
      if (place(index + 1)) return true;
      bins.pop();
      left.pop();
    }
    return false;
  };
  place(0);
  return { bins: best, isFewest: best.length <= floor || branches <= MOST_BRANCHES };
}

function firstFit(needs: readonly number[], room: number): number[][] {
  const bins: number[][] = [];
  const left: number[] = [];
  needs.forEach((need, index) => {
    const bin = left.findIndex((rest) => rest >= need - SLACK);
    if (bin >= 0) {
      bins[bin]!.push(index);
      left[bin] = left[bin]! - need;
    } else {
      bins.push([index]);
      left.push(room - need);
    }
  });
  return bins;
}
