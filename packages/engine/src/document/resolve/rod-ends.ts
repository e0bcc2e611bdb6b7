import type { RodEnd } from "../../car/car.ts";
import { cross, LEFT, length, subtract, UP, unit, type Vec3 } from "../../geometry/vec3.ts";
import { parseThread } from "../../units/thread.ts";
import type { PivotPlace } from "../linkages/form.ts";
import { linkageForm } from "../linkages/kinds.ts";
import { type Path, valueAt } from "../path.ts";
import type { LinkageDocument, PointDocument, RodEndDocument, RodEndsDocument } from "../schema.ts";
import { ROD_END_ASSUMED } from "../sections/rod-ends.ts";
import type { Resolver } from "./resolver.ts";

/** One rod end for every pivot of the linkage, in the order of the linkage's pivots. */
export function resolveRodEnds(
  linkage: LinkageDocument,
  pointOf: (typed: PointDocument) => Vec3,
  given: RodEndsDocument | undefined,
  r: Resolver,
): readonly RodEnd[] {
  const pivots = linkageForm(linkage.kind)?.pivots(linkage) ?? [];
  const pointAt = (path: Path): Vec3 => pointOf(valueAt(linkage, path) as PointDocument);
  return pivots.map((pivot) => {
    const own = given && Object.hasOwn(given, pivot.name) ? given[pivot.name] : undefined;
    return resolveRodEnd(pivot, own ?? {}, pointAt, r);
  });
}

function resolveRodEnd(pivot: PivotPlace, given: RodEndDocument, pointAt: (path: Path) => Vec3, r: Resolver): RodEnd {
  const at: Path = ["rodEnds", pivot.name];
  const thread = given.thread === undefined ? undefined : parseThread(given.thread);
  return {
    pivot: pivot.name,
    boltAxis: given.boltAxis === undefined ? assumedAxis(pivot, pointAt, at, r) : r.direction(given.boltAxis),
    boltOn: given.boltOn ?? assumedBody(pivot, at, r),
    ...(given.misalignmentLimit === undefined ? {} : { misalignmentLimit: r.value(given.misalignmentLimit, "angle") }),
    ...(thread ? { pitch: thread.pitch, threadDiameter: thread.diameter } : {}),
    ...(given.length === undefined ? {} : { length: r.length(given.length) }),
    hand: given.hand ?? assumedHand(pivot, thread !== undefined, at, r),
    headRadius: headDiameter(pivot, given, thread?.diameter, at, r) / 2,
  };
}

function assumedBody(pivot: PivotPlace, at: Path, r: Resolver): RodEnd["boltOn"] {
  const body = pivot.boltOn[0];
  r.note([...at, "boltOn"], "word", body, `common practice: the shank is screwed into the arm or link`);
  return body;
}

function assumedAxis(pivot: PivotPlace, pointAt: (path: Path) => Vec3, at: Path, r: Resolver): Vec3 {
  if ("hinge" in pivot.along) {
    const [from, to] = pivot.along.hinge;
    r.note(
      [...at, "boltAxis"],
      "word",
      "along the arm's hinge line",
      "common practice: the ball then only turns about its bolt",
    );
    return unit(subtract(pointAt(to), pointAt(from)));
  }
  const [inner, outer] = pivot.along.link;
  r.note(
    [...at, "boltAxis"],
    "word",
    "level and square to the link",
    "common practice: the pull runs square to the bolt",
  );
  const square = cross(subtract(pointAt(outer), pointAt(inner)), UP);
  // An upright link has no level direction square to it that is better than another.
  return length(square) < 1e-6 ? LEFT : unit(square);
}

function assumedHand(pivot: PivotPlace, threaded: boolean, at: Path, r: Resolver): "right" | "left" {
  const hand = ROD_END_ASSUMED.hand.from("link" in pivot.along && pivot.end === "outer" ? "outer-link" : pivot.end);
  if (threaded) r.note([...at, "hand"], "word", hand, ROD_END_ASSUMED.hand.because);
  return hand;
}

/** Only heads at the wheel end have to clear the rim: the others are not listed as assumed. */
function headDiameter(
  pivot: PivotPlace,
  given: RodEndDocument,
  thread: number | undefined,
  at: Path,
  r: Resolver,
): number {
  if (given.headDiameter !== undefined) return r.length(given.headDiameter);
  const { headDiameter: plain, headDiameterOfThread: ofThread } = ROD_END_ASSUMED;
  const value = thread === undefined ? plain.from() : ofThread.from(thread);
  const because = thread === undefined ? plain.because : ofThread.because;
  if (pivot.end === "outer") r.note([...at, "headDiameter"], "length", value, because);
  return value;
}
