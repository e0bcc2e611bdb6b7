import type { GapNow } from "@armwright/drawing";
import { type Position, positionOf, type Study, solveAt, type Vec3 } from "@armwright/engine";
import type { MeshGap, MeshSolid } from "../scene/mesh/mesh-gap.ts";
import { type MeshPart, meshParts } from "../scene/mesh/parts-of.ts";

/** Gaps of every part to the scan at travels in rising order; null where a part is farther than was looked. */
export interface MeshSamples {
  readonly parts: readonly { readonly id: string; readonly label: string; readonly radius: number }[];
  /** m, bump positive. */
  readonly travels: readonly number[];
  /** For each travel its parts. */
  readonly gaps: readonly (readonly (MeshGap | null)[])[];
}

/** Where a part comes nearest to the scan. */
export interface LeastGap {
  readonly id: string;
  readonly label: string;
  /** m; null: farther than was looked all the way. */
  readonly gap: number | null;
  /** Wheel travel, m. */
  readonly travel: number;
  readonly at: Vec3 | null;
  /** True where the part's core is cut, so that it may reach in deeper than `gap` says. */
  readonly isCut: boolean;
}

/** Next to a pivot on the chassis its bracket is always near: this much of a link, shaft or shock is left out there, m. */
export const AT_BRACKET = 3 * 0.0254;

/** Asks how near solids come, for each of some positions of the wheel. */
export type AskGaps = (positions: readonly (readonly MeshSolid[])[]) => Promise<MeshSamples["gaps"]>;

const COARSE = 33;
const FINE = 6;

/**
 * Gaps between the stops: at even steps of travel, then finer on either side of where each part comes nearest.
 * Null where the wheel can be solved nowhere between them.
 */
export async function sampleGaps(study: Study, ask: AskGaps): Promise<MeshSamples | null> {
  const droop = study.travel.droop.stop.travel;
  const bump = study.travel.bump.stop.travel;
  const solver = partsSolver(study, droop, bump);
  if (!solver) return null;
  const measure = async (wanted: readonly number[]) => {
    const solved = wanted.flatMap((travel) => {
      const parts = solver(travel);
      return parts ? [{ travel, solids: parts.map(({ solid }) => solid) }] : [];
    });
    const gaps = await ask(solved.map(({ solids }) => solids));
    return solved.map(({ travel }, i) => ({ travel, gaps: gaps[i] ?? [] }));
  };
  const step = (bump - droop) / (COARSE - 1);
  const coarse = await measure(Array.from({ length: COARSE }, (_, i) => droop + i * step));
  const parts = solver(0) ?? solver(droop) ?? [];
  const finer = new Set<number>();
  for (let part = 0; part < parts.length; part += 1) {
    const near = coarse.reduce((a, b) => ((b.gaps[part]?.gap ?? far) < (a.gaps[part]?.gap ?? far) ? b : a)).travel;
    for (let i = 1 - FINE; i < FINE; i += 1) {
      const travel = near + (i / FINE) * step;
      if (i !== 0 && travel > droop && travel < bump) finer.add(travel);
    }
  }
  const all = [...coarse, ...(await measure([...finer]))].sort((a, b) => a.travel - b.travel);
  return {
    parts: parts.map(({ id, label, solid }) => ({ id, label, radius: solid.radius })),
    travels: all.map(({ travel }) => travel),
    gaps: all.map(({ gaps }) => gaps),
  };
}

const far = Number.POSITIVE_INFINITY;

/** Parts at a travel, without what lies next to their brackets: an end that no travel moves is on the chassis. */
function partsSolver(
  study: Study,
  droop: number,
  bump: number,
): ((travel: number) => readonly MeshPart[] | null) | null {
  const partsAt = (travel: number): readonly MeshPart[] | null => {
    const found = solveAt(study.corner, travel);
    if (!found) return null;
    const position: Position = positionOf(study.corner, found.state);
    return meshParts(study.corner, position);
  };
  const low = partsAt(droop) ?? partsAt(0);
  const high = partsAt(bump) ?? partsAt(0);
  if (!low || !high) return null;
  const fixed = low.map(({ solid }, i) => ({
    from: staysPut(solid, high[i]?.solid, "from"),
    to: staysPut(solid, high[i]?.solid, "to"),
  }));
  return (travel) =>
    partsAt(travel)?.map((part, i) => ({ ...part, solid: clearOfBrackets(part.solid, fixed[i]!) })) ?? null;
}

function staysPut(a: MeshSolid, b: MeshSolid | undefined, end: "from" | "to"): boolean {
  if (a.shape !== "capsule" || b?.shape !== "capsule") return false;
  return Math.hypot(a[end].x - b[end].x, a[end].y - b[end].y, a[end].z - b[end].z) < 1e-6;
}

function clearOfBrackets(solid: MeshSolid, fixed: { readonly from: boolean; readonly to: boolean }): MeshSolid {
  if (solid.shape !== "capsule" || (!fixed.from && !fixed.to)) return solid;
  const { from, to } = solid;
  const size = Math.hypot(to.x - from.x, to.y - from.y, to.z - from.z);
  const share = Math.min(0.4, AT_BRACKET / size);
  return {
    ...solid,
    from: fixed.from ? between(from, to, share) : from,
    to: fixed.to ? between(to, from, share) : to,
  };
}

const between = (a: Vec3, b: Vec3, share: number): Vec3 => ({
  x: a.x + (b.x - a.x) * share,
  y: a.y + (b.y - a.y) * share,
  z: a.z + (b.z - a.z) * share,
});

/** Each part's least gap, the nearest part first. */
export function leastGaps({ parts, travels, gaps }: MeshSamples): readonly LeastGap[] {
  const rows = parts.map(({ id, label, radius }, part): LeastGap => {
    let row: LeastGap = { id, label, gap: null, travel: 0, at: null, isCut: false };
    gaps.forEach((each, i) => {
      const found = each[part];
      if (!found || found.gap >= (row.gap ?? far)) return;
      row = { ...row, gap: found.gap, travel: travels[i] ?? 0, at: found.at, isCut: found.gap <= -radius + 1e-9 };
    });
    return row;
  });
  return rows.sort((a, b) => (a.gap ?? far) - (b.gap ?? far));
}

/** Gaps at a travel, read straight between the two samples beside it; none outside the stops. */
export function gapsAt({ parts, travels, gaps }: MeshSamples, travel: number): readonly GapNow[] {
  const after = travels.findIndex((each) => each >= travel - 1e-9);
  if (after < 0 || (after === 0 && travel < (travels[0] ?? 0) - 1e-9)) return [];
  const before = Math.max(0, after - 1);
  const [t0, t1] = [travels[before] ?? 0, travels[after] ?? 0];
  const share = t1 > t0 ? Math.min(1, (travel - t0) / (t1 - t0)) : 1;
  return parts.flatMap(({ id, label }, part) => {
    const a = gaps[before]?.[part];
    const b = gaps[after]?.[part];
    if (!a || !b) return [];
    const at = between(a.at, b.at, share);
    return [{ id: `${id}:chassis-mesh`, label: `${label} to scan`, gap: a.gap + (b.gap - a.gap) * share, at }];
  });
}
