import type { Corner } from "../cycle/corner.ts";
import type { MountsPart } from "./find-mounts.ts";
import { countPoints } from "./grid.ts";
import type { MountRequest } from "./request.ts";
import { makeSink, type Sink, scanLower } from "./scan.ts";
import { makeSearch, type Search } from "./search.ts";

/** A search, or one part of it, done slice by slice: what lies between two slices (a pause, an end) changes no answer. */
export interface SearchRun {
  readonly search: Search;
  /** Slices in all: one shock and one lower mount tried with every upper one. */
  readonly slices: number;
  readonly done: () => number;
  /** Does the next slice; false where none was left. */
  readonly next: () => boolean;
  /** What the slices so far have found; of a part that is not done, what it will begin with. */
  readonly part: () => MountsPart;
}

/** Throws RangeError as findMounts does. Part `part` of `parts` equal ones: lower mounts taken in turn. */
export function startSearch(corner: Corner, request: MountRequest, part = 0, parts = 1): SearchRun {
  const search = makeSearch(corner, request);
  const sink = makeSink(search);
  const lowers = Math.max(0, Math.ceil((search.lower.length - part) / parts));
  const slices = lowers * request.shocks.length;
  let done = 0;
  return {
    search,
    slices,
    done: () => done,
    next: () => {
      if (done >= slices) return false;
      scanLower(search, Math.floor(done / lowers), part + parts * (done % lowers), sink);
      done += 1;
      return true;
    },
    part: () => partOf(sink),
  };
}

const partOf = (sink: Sink): MountsPart => ({
  tested: sink.tested,
  killed: Float64Array.from(sink.killed),
  inTheWay: Float64Array.from(sink.inTheWay),
  feasible: {
    count: sink.shock.length,
    shock: Uint32Array.from(sink.shock),
    lower: Uint32Array.from(sink.lower),
    upper: Uint32Array.from(sink.upper),
    scores: Float64Array.from(sink.scores),
  },
});

/** Candidates that a request asks for. Throws RangeError as findMounts does. */
export const countCandidates = (corner: Corner, request: MountRequest): number => {
  const { upper, lower } = countPoints(corner, request);
  return upper * lower * request.shocks.length;
};

/** Candidates of the coarse answer while a zone is dragged: some tens of milliseconds on one core. */
export const QUICK_CANDIDATES = 1_000_000;

/**
 * The same request on the finest grid, of 1, 1½, 2, 3, 4 … times its step, that asks for no more than `most` candidates, and
 * without a short list: the feasible region only. For an answer while the hand moves.
 */
export function quickRequest(corner: Corner, request: MountRequest, most = QUICK_CANDIDATES): MountRequest {
  const coarser = COARSER.map((times) => ({ ...request, step: request.step * times, shortList: 0 }));
  return coarser.find((each) => countCandidates(corner, each) <= most) ?? coarser[coarser.length - 1]!;
}

const COARSER = [1, 1.5, 2, 3, 4, 6, 8, 12, 16] as const;
