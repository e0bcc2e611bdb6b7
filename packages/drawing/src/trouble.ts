import {
  type ClearanceReport,
  distance,
  type LimitReport,
  midpoint,
  type Position,
  placeOn,
  type Study,
  type Vec3,
} from "@armwright/engine";
import { reading } from "./words.ts";

/** Something that stops the wheel here, or would have stopped it before: where it is, and what to write beside it. */
export interface Trouble {
  readonly id: string;
  /** Its order among what stops the wheel this way, as on the tape. */
  readonly order: number;
  readonly label: string;
  /** What was found, e.g. `29.1° of 28°`. */
  readonly finding: string;
  /** Part to tint: `driveshaft.outer`, `shock`, a pivot's place, or empty for a clearance. */
  readonly place: string;
  /** Spot on the car, vehicle axes, m. */
  readonly at: Vec3;
  readonly kind: "part" | "fouling" | "ground";
}

/** A gap between two things at the position that is drawn. */
export interface GapNow {
  /** As in the study's clearances. */
  readonly id: string;
  readonly label: string;
  /** m, negative where they overlap. */
  readonly gap: number;
  readonly at: Vec3;
}

/** Within this of its limit a thing counts as at it: lengths m, angles rad. */
const AT_LIMIT = 1e-5;

/** Everything that is at its limit or past it at this position, worst placed first as on the tape. */
export function troublesAt(
  study: Study,
  position: Position,
  row: Float64Array | null,
  gaps: readonly GapNow[] = gapsFromStudy(study, position),
): readonly Trouble[] {
  if (!row) return [];
  const found = [
    ...partTroubles(study, position, row),
    ...groundTrouble(study, position, row),
    ...gapTroubles(study, gaps),
  ];
  return found
    .map((trouble) => ({ ...trouble, order: orderOf(study, trouble.id, position.travel) }))
    .sort((a, b) => a.order - b.order);
}

/** The hard limits of one direction in the order in which the wheel would meet them, as numbered on tape and drawing. */
export const hardLimits = (study: Study, direction: "bump" | "droop"): readonly LimitReport[] =>
  study.travel[direction].limits.filter(({ nature, pastAtRide }) => nature === "hard" && !pastAtRide);

function orderOf(study: Study, id: string, travel: number): number {
  const ways = travel < 0 ? (["droop", "bump"] as const) : (["bump", "droop"] as const);
  for (const way of ways) {
    const index = hardLimits(study, way).findIndex((limit) => limit.id === id);
    if (index >= 0) return index + 1;
  }
  return 0;
}

type Unordered = Omit<Trouble, "order">;

function partTroubles(study: Study, position: Position, row: Float64Array): Unordered[] {
  const { car, corner } = study;
  const system = car.units;
  const read = (id: string): number | null =>
    study.quantities.find((quantity) => quantity.id === id)?.read(row, corner) ?? null;
  const found: Unordered[] = [];
  const add = (trouble: Omit<Unordered, "kind">): void => {
    found.push({ ...trouble, kind: "part" });
  };
  const shaft = car.driveshaft;
  if (shaft) {
    const outerNow = placeOn(position, shaft.outer.centre, "spindle");
    for (const [side, at] of [
      ["inner", shaft.inner.centre],
      ["outer", outerNow],
    ] as const) {
      const most = shaft[side].angleLimit;
      const now = read(`${side}Joint`);
      if (most === undefined || now === null || now < most - AT_LIMIT) continue;
      const name = shaft[side].kind === "u-joint" ? "U-joint" : "CV joint";
      add({
        id: `${side}-joint`,
        label: `${side} ${name} at its limit`,
        finding: `${reading(now, "angle", system)} of ${reading(most, "angle", system)}`,
        place: `driveshaft.${side}`,
        at,
      });
    }
    const middle = midpoint(shaft.inner.centre, outerNow);
    const engaged = read("slipEngagement");
    if (shaft.slip && engaged !== null && engaged <= shaft.slip.leastEngagement + AT_LIMIT) {
      add({
        id: "slip-engagement",
        label: "spline at its least",
        finding: `${reading(engaged, "length", system)} of ${reading(shaft.slip.leastEngagement, "length", system)} engaged`,
        place: "driveshaft.slip",
        at: middle,
      });
    }
    const plunge = read("plunge");
    const left = shaft.slip?.pushInLeft;
    if (left !== undefined && plunge !== null && left + plunge <= AT_LIMIT) {
      add({ id: "slip-bottoms", label: "slip bottoms", finding: "no push left", place: "driveshaft.slip", at: middle });
    }
  }
  const shock = car.shock;
  const eyeToEye = read("shockLength");
  if (shock && eyeToEye !== null) {
    const at = midpoint(
      placeOn(position, shock.upper.point, shock.upper.on),
      placeOn(position, shock.lower.point, shock.lower.on),
    );
    const end =
      eyeToEye <= shock.shortest + AT_LIMIT ? "shortest" : eyeToEye >= shock.longest - AT_LIMIT ? "longest" : null;
    if (end !== null) {
      add({
        id: `shock-${end}`,
        label: `shock at its ${end}`,
        finding: `${reading(eyeToEye, "length", system)} of ${reading(shock[end], "length", system)}`,
        place: "shock",
        at,
      });
    }
  }
  for (const rodEnd of car.rodEnds) {
    const most = rodEnd.misalignmentLimit;
    const now = read(`rodEnd:${rodEnd.pivot}`);
    const pivot = corner.pivots.find(({ id }) => id === rodEnd.pivot);
    if (most === undefined || now === null || !pivot || now < most - AT_LIMIT) continue;
    add({
      id: `rod-end:${rodEnd.pivot}`,
      label: `rod end at its limit`,
      finding: `${reading(now, "angle", system)} of ${reading(most, "angle", system)}`,
      place: `linkage.${rodEnd.pivot}`,
      at: placeOn(position, pivot.point, pivot.boltSide),
    });
  }
  return found;
}

function groundTrouble(study: Study, position: Position, row: Float64Array): Unordered[] {
  const clear = study.quantities.find(({ id }) => id === "groundClearance")?.read(row, study.corner) ?? null;
  if (clear === null || clear > AT_LIMIT) return [];
  const lowest = study.car.underbody.reduce((a, b) => (b.point.z < a.point.z ? b : a));
  return [
    {
      id: "underbody",
      label: `${lowest.name} on the ground`,
      finding: reading(clear, "length", study.car.units),
      place: "underbody",
      at: { ...lowest.point, x: position.wheelCentre.x },
      kind: "ground",
    },
  ];
}

const gapTroubles = (study: Study, gaps: readonly GapNow[]): Unordered[] =>
  gaps
    .filter(({ gap }) => gap <= AT_LIMIT)
    .map(({ id, label, gap, at }) => ({
      id: `clearance:${id}`,
      label,
      finding: gap < -AT_LIMIT ? `${reading(-gap, "length", study.car.units)} into one another` : "touching",
      place: "",
      at,
      kind: "fouling",
    }));

/** A study knows each pair's gap where it is least; that counts at travels this near to it, m. */
const SAME_TRAVEL = 5e-4;

/** What a study itself knows of gaps at a position: the least ones, where they are least, and those past their touching. */
export function gapsFromStudy(study: Study, position: Position): readonly GapNow[] {
  return study.travel.clearances.flatMap((report) => {
    const here = Math.abs(report.travel - position.travel) < SAME_TRAVEL;
    if (here) return [{ id: report.id, label: report.label, gap: report.leastGap, at: report.at }];
    return isPastTouch(study, report, position.travel) ? [{ ...report, gap: Math.min(report.leastGap, 0) }] : [];
  });
}

function isPastTouch(study: Study, { id, leastGap }: ClearanceReport, travel: number): boolean {
  if (leastGap > 0) return false;
  const direction = travel < 0 ? study.travel.droop : study.travel.bump;
  const limit = direction.limits.find((candidate) => candidate.id === `clearance:${id}`);
  return limit !== undefined && Math.abs(travel) >= Math.abs(limit.travel) - AT_LIMIT;
}

/** The least of the gaps whose pair has the tyre in it. */
export function nearestToTyre(gaps: readonly GapNow[]): GapNow | null {
  const mine = gaps.filter(({ id }) => id === "tyre" || id.startsWith("tyre:") || id.endsWith(":tyre"));
  return mine.length === 0 ? null : mine.reduce((a, b) => (b.gap < a.gap ? b : a));
}

/** Troubles that would be drawn on top of one another are told once: the first of those within `near` metres. */
export const distinctSpots = (troubles: readonly Trouble[], near: number): readonly Trouble[] =>
  troubles.filter((trouble, index) => troubles.slice(0, index).every((other) => distance(other.at, trouble.at) > near));
