import type { Corner } from "../cycle/corner.ts";
import { between, dot, subtract, type Vec3 } from "../geometry/vec3.ts";
import type { Member } from "../linkage/kind.ts";
import { keepOutSolid, type MovingSolids } from "./moving-solids.ts";
import { clearanceInsideRim } from "./rim.ts";
import { separation } from "./separation.ts";
import type { Capsule, RoundedSolid, Solid } from "./shapes.ts";

/** Two things that could meet. */
export interface ClearancePair {
  readonly id: string;
  /** As in "shock to fuel tank". */
  readonly label: string;
  /** Clearance wanted, m. */
  readonly wanted: number;
  /** Where that figure comes from. */
  readonly wantedFrom: "document" | "common practice";
  readonly place: string;
  measure(solids: MovingSolids): Gap;
}

export interface Gap {
  /** m, negative when they overlap. */
  readonly gap: number;
  /** Middle of the nearest places. */
  readonly at: Vec3;
}

/** Wanted between moving parts where nobody said otherwise, m: 1/4 in between metal parts, 1/2 in to the tyre. */
const METAL_GAP = 0.25 * 0.0254;
const TYRE_GAP = 0.5 * 0.0254;

/** All pairs of this corner that could meet. */
export function clearancePairs(corner: Corner): readonly ClearancePair[] {
  return [...keepOutPairs(corner), ...movingPairs(corner), ...rimPairs(corner)];
}

type Part = { readonly id: string; readonly label: string; readonly solid: (solids: MovingSolids) => RoundedSolid };

function partsOf(corner: Corner): {
  tyre: Part;
  members: readonly (Part & { member: Member })[];
  shaft?: Part;
  shock?: Part;
} {
  return {
    tyre: { id: "tyre", label: "tyre", solid: (s) => s.tyre },
    members: corner.members.map((member, index) => ({
      id: member.id,
      label: member.label,
      member,
      solid: (s) => s.members[index]!,
    })),
    ...(corner.car.driveshaft && { shaft: { id: "shaft", label: "half shaft", solid: (s) => s.shaft! } }),
    ...(corner.car.shock && { shock: { id: "shock", label: "shock", solid: (s) => s.shock! } }),
  };
}

function keepOutPairs(corner: Corner): ClearancePair[] {
  const { tyre, members, shaft, shock } = partsOf(corner);
  const parts = [tyre, ...members, ...(shaft ? [shaft] : []), ...(shock ? [shock] : [])];
  return corner.car.keepOuts.flatMap((keepOut, index) => {
    const solid = keepOutSolid(keepOut);
    return parts.map((part) =>
      pair(part, { id: keepOut.name, label: keepOut.name, solid }, keepOut.clearance, "document", `keepOuts.${index}`),
    );
  });
}

function movingPairs(corner: Corner): ClearancePair[] {
  const { tyre, members, shaft, shock } = partsOf(corner);
  const pairs: ClearancePair[] = [];
  const add = (a: Part, b: Part, wanted: number) =>
    pairs.push(pair(a, { id: b.id, label: b.label, solid: b.solid }, wanted, "common practice", a.id));
  if (shaft) for (const member of members) if (!meetsShaft(corner, member.member)) add(member, shaft, METAL_GAP);
  if (shock) {
    add(shock, tyre, TYRE_GAP);
    if (shaft) add(shock, shaft, METAL_GAP);
    const carriers = new Set([corner.car.shock?.upper.on, corner.car.shock?.lower.on]);
    for (const member of members) {
      const carries = member.member.body !== "link" && carriers.has(member.member.body);
      if (!carries) add(shock, member, METAL_GAP);
    }
  }
  return pairs;
}

/** A trailing arm's tubes run to the hub, where the shaft runs too. */
const meetsShaft = (corner: Corner, member: Member): boolean =>
  corner.car.linkage.kind === "trailing-arm" && member.body === "trailing-arm";

/** Tubes that reach the spindle, against the inside of the rim; the rod end's head at the end of each is the same ball. */
function rimPairs(corner: Corner): ClearancePair[] {
  const { wheel } = corner.car;
  return corner.members.flatMap((member, index) => {
    const head = headRadiusAt(corner, member);
    if (head === null) return [];
    return [
      {
        id: `${member.id}:rim`,
        label: `${member.label} to inside of rim`,
        wanted: METAL_GAP,
        wantedFrom: "common practice",
        place: `linkage.${member.id}`,
        measure: (solids) => nearestInRim(solids, solids.members[index]!, head, wheel.rimInsideRadius, wheel.rimWidth),
      } satisfies ClearancePair,
    ];
  });
}

/** Head of the rod end at the member's outer end, or null where it does not end at the spindle. */
function headRadiusAt(corner: Corner, member: Member): number | null {
  const pivot = corner.pivots.find(
    ({ boltSide, point }) =>
      boltSide === "spindle" &&
      point.x === member.to.point.x &&
      point.y === member.to.point.y &&
      point.z === member.to.point.z,
  );
  if (!pivot) return null;
  return corner.car.rodEnds.find((end) => end.pivot === pivot.id)?.headRadius ?? member.diameter / 2;
}

const SAMPLES = 10;
const NARROWING = 24;

/**
 * Nearest place of a tube to the inside of the rim. Within the rim's width the distance of a straight tube from the spin
 * axis has its largest value at an end of the part inside, so that only its two ends count; inboard of the rim the nearest
 * place to its edge is narrowed down. The tube's end counts as the rod end's head.
 */
function nearestInRim(
  solids: MovingSolids,
  tube: Capsule,
  headRadius: number,
  insideRadius: number,
  rimWidth: number,
): Gap {
  const { centre, axis } = solids.tyre;
  const rim = { wheelCentre: centre, spinAxis: axis, insideRadius, rimWidth };
  const gapAt = (fraction: number): number =>
    clearanceInsideRim({ pivot: between(tube.from, tube.to, fraction), headRadius: tube.radius }, rim);
  const axialFrom = dot(subtract(tube.from, centre), axis);
  const axialTo = dot(subtract(tube.to, centre), axis);
  const crossing = (-rimWidth / 2 - axialFrom) / (axialTo - axialFrom);
  const edge = crossing > 0 && crossing < 1 ? crossing : axialTo < -rimWidth / 2 ? 1 : 0;
  // Inboard of the edge there may be more than one near place: sampled first, then narrowed by golden section.
  let best = 0;
  for (let i = 1; i <= SAMPLES; i += 1) {
    if (gapAt((edge * i) / SAMPLES) < gapAt((edge * best) / SAMPLES)) best = i;
  }
  let low = (edge * Math.max(0, best - 1)) / SAMPLES;
  let high = (edge * Math.min(SAMPLES, best + 1)) / SAMPLES;
  for (let i = 0; i < NARROWING && high > low; i += 1) {
    const a = low + (high - low) * 0.381966;
    const b = low + (high - low) * 0.618034;
    if (gapAt(a) < gapAt(b)) high = b;
    else low = a;
  }
  const head: Gap = { gap: clearanceInsideRim({ pivot: tube.to, headRadius }, rim), at: tube.to };
  return [0.5 * (low + high), edge, 1].reduce<Gap>((nearest, fraction) => {
    const gap = gapAt(fraction);
    return gap < nearest.gap ? { gap, at: between(tube.from, tube.to, fraction) } : nearest;
  }, head);
}

function pair(
  a: Part,
  b: { readonly id: string; readonly label: string; readonly solid: Solid | ((solids: MovingSolids) => Solid) },
  wanted: number,
  wantedFrom: ClearancePair["wantedFrom"],
  place: string,
): ClearancePair {
  const other = b.solid;
  return {
    id: `${a.id}:${b.id}`,
    label: `${a.label} to ${b.label}`,
    wanted,
    wantedFrom,
    place,
    measure: (solids) => {
      const found = separation(a.solid(solids), typeof other === "function" ? other(solids) : other);
      return { gap: found.distance, at: between(found.onA, found.onB, 0.5) };
    },
  };
}
