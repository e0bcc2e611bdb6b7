import { type ArmCheck, addScaled, cross, lengthOf, subtract, type Vec3 } from "@armwright/engine";

/** How much of what it may bear a piece is asked. */
export type UseClass = "little" | "half" | "most" | "over";

/** Shares of what a piece may bear at which its look changes. */
const CLASSES: readonly (readonly [number, UseClass])[] = [
  [0.5, "little"],
  [0.8, "half"],
  [1, "most"],
];
export const useClassOf = (use: number): UseClass => CLASSES.find(([most]) => use <= most)?.[1] ?? "over";

/** An arm under one load case, in its design position, its bending drawn larger than it is. m. */
export interface BentArm {
  readonly pieces: readonly BentPiece[];
  readonly nodes: readonly BentNode[];
  /** How many times larger than it is the bending is drawn. */
  readonly times: number;
  /** The node that moves farthest, and how far it does, m. */
  readonly farthest: { readonly label: string; readonly shift: number };
}

export interface BentPiece {
  readonly id: string;
  readonly from: Vec3;
  readonly to: Vec3;
  /** From end to end, bent. */
  readonly bent: readonly Vec3[];
  /** Greatest stress ÷ what it may bear there. */
  readonly use: number;
}

export interface BentNode {
  readonly id: string;
  readonly label: string;
  /** Where it moves to, as drawn. */
  readonly at: Vec3;
  /** The greatest of the pieces that meet there; 0 where none is known. */
  readonly use: number;
}

/** The farthest node moves about this share of the arm's size in the picture. */
const SEEN = 0.14;
const TIMES = [1000, 500, 200, 100, 50, 20, 10, 5, 2, 1];
const SPOTS = 9;

/** Null where the arm could not be analysed, or not in that case. */
export function bentArm({ frame, analysis }: ArmCheck, loadCase: string): BentArm | null {
  const found = analysis.ok ? analysis.cases.find((each) => each.loadCase === loadCase) : undefined;
  if (!found) return null;
  const points = new Map(frame.nodes.map(({ id, point }) => [id, point]));
  const moved = new Map(found.frame.movements.map((each) => [each.node, each]));
  const farthest = frame.nodes.reduce(
    (most, { id, label }) => {
      const shift = lengthOf(moved.get(id)?.shift ?? NOWHERE);
      return shift > most.shift ? { label, shift } : most;
    },
    { label: "", shift: 0 },
  );
  const wished = (SEEN * spanOf([...points.values()])) / Math.max(farthest.shift, 1e-9);
  const times = TIMES.find((each) => each <= wished) ?? 1;
  const pieces = frame.members.flatMap((member): BentPiece[] => {
    const [a, b] = [points.get(member.from), points.get(member.to)];
    const [p, q] = [moved.get(member.from), moved.get(member.to)];
    if (!a || !b || !p || !q) return [];
    const from = addScaled(a, member.offsetFrom ?? NOWHERE, 1);
    const to = addScaled(b, member.offsetTo ?? NOWHERE, 1);
    const along = subtract(to, from);
    const begin = addScaled(from, carried(p, member.offsetFrom), times);
    const end = addScaled(to, carried(q, member.offsetTo), times);
    const bent = hermite(
      begin,
      addScaled(along, cross(p.turn, along), times),
      end,
      addScaled(along, cross(q.turn, along), times),
    );
    const uses = found.uses.filter((each) => each.member.id === member.id).map(({ use }) => use);
    return [{ id: member.id, from, to, bent, use: Math.max(0, ...uses) }];
  });
  const nodes = frame.nodes.map(({ id, label, point }): BentNode => {
    const uses = found.uses.filter(({ node }) => node === id).map(({ use }) => use);
    return { id, label, at: addScaled(point, moved.get(id)?.shift ?? NOWHERE, times), use: Math.max(0, ...uses) };
  });
  return { pieces, nodes, times, farthest };
}

const NOWHERE: Vec3 = { x: 0, y: 0, z: 0 };

/** How a spot stiffly tied to a node moves with it. */
function carried(node: { readonly shift: Vec3; readonly turn: Vec3 }, offset: Vec3 | undefined): Vec3 {
  return offset ? addScaled(node.shift, cross(node.turn, offset), 1) : node.shift;
}

/** A beam without loads between its ends takes the shape of the cubic through both with their slopes. */
function hermite(a: Vec3, slopeA: Vec3, b: Vec3, slopeB: Vec3): readonly Vec3[] {
  return Array.from({ length: SPOTS }, (_, i) => {
    const s = i / (SPOTS - 1);
    const [h1, h2, h3, h4] = [
      2 * s ** 3 - 3 * s ** 2 + 1,
      s ** 3 - 2 * s ** 2 + s,
      3 * s ** 2 - 2 * s ** 3,
      s ** 3 - s ** 2,
    ] as const;
    const mix = (of: (v: Vec3) => number): number => h1 * of(a) + h2 * of(slopeA) + h3 * of(b) + h4 * of(slopeB);
    return { x: mix((v) => v.x), y: mix((v) => v.y), z: mix((v) => v.z) };
  });
}

function spanOf(points: readonly Vec3[]): number {
  const range = (of: (v: Vec3) => number): number => Math.max(...points.map(of)) - Math.min(...points.map(of));
  return Math.hypot(
    range((v) => v.x),
    range((v) => v.y),
    range((v) => v.z),
  );
}
