import type { Corner } from "../cycle/corner.ts";
import { between, distance, type Vec3 } from "../geometry/vec3.ts";
import type { Member } from "../linkage/kind.ts";
import type { MotionState } from "../linkage/motion-state.ts";
import { memberSpeed, pointSpeed, STILL, shockSpeed, sum, tyreSpeed } from "./fastest.ts";
import { keepOutSolid, type MovingSolids } from "./moving-solids.ts";
import { tubeInsideRim } from "./rim.ts";
import { separation } from "./separation.ts";
import type { RoundedSolid, Solid } from "./shapes.ts";

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
  /** Bound of how fast the two move against each other in this state, m per m of travel. */
  fastest(state: MotionState): number;
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
  return [...keepOutPairs(corner), ...movingPairs(corner), ...memberPairs(corner), ...rimPairs(corner)];
}

interface Part {
  readonly id: string;
  readonly label: string;
  readonly solid: (solids: MovingSolids) => RoundedSolid;
  readonly fastest: (state: MotionState) => number;
}

function partsOf(corner: Corner): {
  tyre: Part;
  members: readonly (Part & { member: Member })[];
  shaft?: Part;
  shock?: Part;
} {
  return {
    tyre: { id: "tyre", label: "tyre", solid: (s) => s.tyre, fastest: tyreSpeed(corner) },
    members: corner.members.map((member, index) => ({
      id: member.id,
      label: member.label,
      member,
      solid: (s) => s.members[index]!,
      fastest: memberSpeed(corner, member),
    })),
    ...(corner.car.driveshaft && {
      shaft: {
        id: "shaft",
        label: "half shaft",
        solid: (s: MovingSolids) => s.shaft!,
        fastest: pointSpeed(corner, corner.car.driveshaft.outer.centre, "spindle"),
      },
    }),
    ...(corner.car.shock && {
      shock: {
        id: "shock",
        label: "shock",
        solid: (s: MovingSolids) => s.shock!,
        fastest: shockSpeed(corner, corner.car.shock),
      },
    }),
  };
}

function keepOutPairs(corner: Corner): ClearancePair[] {
  const { tyre, members, shaft, shock } = partsOf(corner);
  const parts = [tyre, ...members, ...(shaft ? [shaft] : []), ...(shock ? [shock] : [])];
  return corner.car.keepOuts.flatMap((keepOut, index) => {
    const solid = keepOutSolid(keepOut);
    return parts.map((part) =>
      pair(
        part,
        { id: keepOut.name, label: keepOut.name, solid, fastest: STILL },
        keepOut.clearance,
        "document",
        `keepOuts[${index}]`,
      ),
    );
  });
}

function movingPairs(corner: Corner): ClearancePair[] {
  const { tyre, members, shaft, shock } = partsOf(corner);
  const pairs: ClearancePair[] = [];
  const add = (a: Part, b: Part, wanted: number) => pairs.push(pair(a, b, wanted, "common practice", a.id));
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

/** Arms and links against each other, but those that are one body or meet at a pivot. */
function memberPairs(corner: Corner): ClearancePair[] {
  const { members } = partsOf(corner);
  return members.flatMap((a, i) =>
    members
      .slice(i + 1)
      .filter((b) => !isOneBody(a.member, b.member) && !haveOneEnd(a.member, b.member))
      .map((b) => pair(a, b, METAL_GAP, "common practice", a.id)),
  );
}

const isOneBody = (a: Member, b: Member): boolean => a.body !== "link" && a.body === b.body;

const haveOneEnd = (a: Member, b: Member): boolean =>
  [a.from, a.to].some((one) => [b.from, b.to].some((other) => distance(one.point, other.point) < ONE_PLACE));

/** Ends nearer than this, m, are one joint. */
const ONE_PLACE = 0.02;

/** A trailing arm's tubes run to the hub, where the shaft runs too. */
const meetsShaft = (corner: Corner, member: Member): boolean =>
  corner.car.linkage.kind === "trailing-arm" && member.body === "trailing-arm";

/**
 * Tubes that run to the wheel, against the inside of the rim (the rod end's head at the end of each is the same ball) and
 * against the tyre's sidewall.
 */
function rimPairs(corner: Corner): ClearancePair[] {
  const { wheel } = corner.car;
  return corner.members.flatMap((member, index): ClearancePair[] => {
    const head = headRadiusAt(corner, member);
    if (head === null) return [];
    const place = `linkage.${member.id}`;
    const wantedFrom = "common practice" as const;
    const fastest = sum(memberSpeed(corner, member), tyreSpeed(corner));
    return [
      {
        id: `${member.id}:rim`,
        label: `${member.label} to inside of rim`,
        wanted: METAL_GAP,
        wantedFrom,
        place,
        measure: (solids) => inWheel(solids, index, head, wheel.rimInsideRadius, wheel.rimWidth),
        fastest,
      },
      {
        id: `${member.id}:sidewall`,
        label: `${member.label} to tyre sidewall`,
        wanted: TYRE_GAP,
        wantedFrom,
        place,
        measure: (solids) => {
          const ring = inWheel(solids, index, head, wheel.rimDiameter / 2, wheel.sectionWidth);
          if (ring.gap > 0) return ring;
          // The ring has no outer edge; a tube that passes over the tread is clear of the tyre all the same.
          const whole = separation(solids.members[index]!, solids.tyre);
          return whole.distance > ring.gap ? { gap: whole.distance, at: between(whole.onA, whole.onB, 0.5) } : ring;
        },
        fastest,
      },
    ];
  });
}

function inWheel(solids: MovingSolids, index: number, headRadius: number, insideRadius: number, rimWidth: number): Gap {
  const tube = solids.members[index]!;
  const { centre, axis } = solids.tyre;
  const { gap, fraction } = tubeInsideRim(
    { from: tube.from, to: tube.to, radius: tube.radius, headRadius },
    { wheelCentre: centre, spinAxis: axis, insideRadius, rimWidth },
  );
  return { gap, at: between(tube.from, tube.to, fraction) };
}

/** Radius of the member's outer end (a rod end's head, or the bare tube), or null where it does not end at the wheel. */
function headRadiusAt(corner: Corner, member: Member): number | null {
  if (member.body === "trailing-arm") return member.diameter / 2;
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

function pair(
  a: Part,
  b: Pick<Part, "id" | "label" | "fastest"> & { readonly solid: Solid | ((solids: MovingSolids) => Solid) },
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
    fastest: sum(a.fastest, b.fastest),
  };
}
