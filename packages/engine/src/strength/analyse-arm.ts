import { analyseFrame } from "../frames/analyse-frame.ts";
import type { FrameAnalysis, FrameResult, FrameSupport, NodeLoad } from "../frames/frame.ts";
import { memberStressReader } from "../frames/member-stress.ts";
import type { SectionStress } from "../frames/section-stress.ts";
import type { Rotation } from "../geometry/pose.ts";
import { add, cross, distance, length, ORIGIN, squareTo, subtract, unit, type Vec3 } from "../geometry/vec3.ts";
import { type ArmFrame, type ArmMember, analysable } from "./arm-frame.ts";
import { welded } from "./material.ts";
import type { ArmForces, ArmLoad, PlaceForce, UndecidedForce } from "./part-forces.ts";

/** One end of a member under one load case. */
export interface MemberUse {
  readonly member: ArmMember;
  /** Id and words of the node. */
  readonly node: string;
  readonly nodeLabel: string;
  readonly at: Vec3;
  readonly stress: SectionStress;
  /** What the material bears there: every node is welded. */
  readonly allowable: number;
  /** stress / allowable */
  readonly use: number;
}

export interface ArmCaseResult {
  readonly loadCase: string;
  /** With the force along each hinge line shared so that this place bears most: evenly, or all on either rod end. */
  readonly uses: readonly MemberUse[];
  /** With the forces along hinge lines shared evenly. */
  readonly frame: FrameResult;
  /** What the loads leave over, as a share of the greatest: 0 where they balance. */
  readonly unbalance: number;
}

export type ArmAnalysis =
  | { readonly ok: true; readonly cases: readonly ArmCaseResult[] }
  | { readonly ok: false; readonly fault: Exclude<FrameAnalysis, { readonly ok: true }> };

/**
 * An arm under the forces that act on it, in its design axes. They balance by themselves, so the frame is held only where a
 * rigid body has to be: at one inner pivot, at the other square to the hinge line, and upright at the farthest node.
 * Stress grows straight with how a hinge line's force is shared, so that the worst share is one of the two ends.
 */
export function analyseArm(
  frame: ArmFrame,
  cases: readonly { readonly id: string; readonly load: ArmLoad }[],
): ArmAnalysis {
  const supports = supportsOf(frame);
  if (!supports) return { ok: false, fault: { ok: false, fault: "unknown-node", node: "an inner pivot" } };
  const shared = cases.map(({ id, load }) =>
    sharesOf(load).map((forces) => ({ id, loads: forces.flatMap((force) => nodeLoad(frame, force)) })),
  );
  const analysis = analyseFrame({ ...analysable(frame), supports }, shared.flat());
  if (!analysis.ok) return { ok: false, fault: analysis };
  const readers = analysable(frame).members.map(memberStressReader);
  let at = 0;
  return {
    ok: true,
    cases: shared.map((shares): ArmCaseResult => {
      const results = analysis.results.slice(at, at + shares.length);
      at += shares.length;
      const even = results[0]!;
      return {
        loadCase: even.loadCase,
        uses: results.map((result) => usesOf(frame, readers, result)).reduce(worse),
        frame: even,
        unbalance: unbalanceOf(even, shares[0]!.loads),
      };
    }),
  };
}

const worse = (some: readonly MemberUse[], others: readonly MemberUse[]): readonly MemberUse[] =>
  some.map((one, index) => (others[index]!.use > one.use ? others[index]! : one));

/** The even share first, then every combination of all on the one rod end or all on the other. */
function sharesOf({ forces, undecided }: ArmLoad): readonly ArmForces[] {
  const ends = undecided.reduce<readonly ArmForces[]>(
    (made, { places: [first, second], half }) =>
      made.flatMap((some) => [moved(some, second, first, half), moved(some, first, second, half)]),
    [forces],
  );
  return undecided.length > 0 ? [forces, ...ends] : [forces];
}

const moved = (forces: ArmForces, from: string, to: string, half: UndecidedForce["half"]): ArmForces =>
  forces.map((each) =>
    each.place === to
      ? { ...each, force: add(each.force, half) }
      : each.place === from
        ? { ...each, force: subtract(each.force, half) }
        : each,
  );

type Readers = readonly ReturnType<typeof memberStressReader>[];

function usesOf(frame: ArmFrame, readers: Readers, result: FrameResult): readonly MemberUse[] {
  const nodes = new Map(frame.nodes.map((node) => [node.id, node]));
  return frame.members.flatMap((member, index) => {
    const stress = readers[index]?.(result.members[index]!);
    if (!stress) return [];
    const allowable = welded(member.material);
    return (["from", "to"] as const).map((end): MemberUse => {
      const node = nodes.get(member[end])!;
      return {
        member,
        node: node.id,
        nodeLabel: node.label,
        at: node.point,
        stress: stress[end],
        allowable,
        use: stress[end].combined / allowable,
      };
    });
  });
}

/** A force on a place as its node feels it: the place is stiffly tied to it. */
export function nodeLoad(frame: ArmFrame, { place, point, force, moment = ORIGIN }: PlaceForce): readonly NodeLoad[] {
  const attached = frame.attached.find((each) => each.place === place);
  const at = point ?? attached?.point;
  if (!at) return [];
  const node =
    frame.nodes.find(({ id }) => id === attached?.node) ??
    frame.nodes.reduce((best, each) => (distance(each.point, at) < distance(best.point, at) ? each : best));
  return [{ node: node.id, force, moment: add(moment, cross(subtract(at, node.point), force)) }];
}

/** Two pivots on the hinge line and the node farthest from it; null where the arm has no two inner pivots. */
function supportsOf(frame: ArmFrame): readonly FrameSupport[] | null {
  const inner = frame.attached.filter(({ place }) => isInner(place));
  const nodeOf = (id: string) => frame.nodes.find((node) => node.id === id);
  const [a, b] = [nodeOf(inner[0]?.node ?? ""), nodeOf(inner[1]?.node ?? "")];
  if (!a || !b || a === b) return null;
  const hinge = unit(subtract(b.point, a.point));
  const off = (point: Vec3): Vec3 => squareTo(subtract(point, a.point), hinge);
  const far = frame.nodes.reduce((best, each) => (length(off(each.point)) > length(off(best.point)) ? each : best));
  const out = unit(off(far.point));
  const lift = cross(hinge, out);
  const axes: Rotation = [hinge.x, hinge.y, hinge.z, out.x, out.y, out.z, lift.x, lift.y, lift.z];
  return [
    { node: a.id, holds: ["x", "y", "z"], axes },
    { node: b.id, holds: ["y", "z"], axes },
    { node: far.id, holds: ["z"], axes },
  ];
}

/** Inner pivots are named so by the document; a trailing arm's both are at the chassis. */
const isInner = (place: string): boolean => /\.inner|Pivot$/.test(place);

function unbalanceOf(result: FrameResult, loads: readonly NodeLoad[]): number {
  const largest = Math.max(0, ...loads.map(({ force }) => length(force ?? ORIGIN)));
  const held = Math.max(0, ...result.reactions.map(({ force }) => length(force)));
  return largest === 0 ? 0 : held / largest;
}
