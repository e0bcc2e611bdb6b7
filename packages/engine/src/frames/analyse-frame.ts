import { CholeskyDecomposition, Matrix } from "ml-matrix";
import { type Rotation, rotate, transpose } from "../geometry/pose.ts";
import { ORIGIN, type Vec3, vec } from "../geometry/vec3.ts";
import { equilibriumResidual } from "./equilibrium.ts";
import {
  type EndForce,
  type Frame,
  type FrameAnalysis,
  type FrameLoadCase,
  type FrameResult,
  type FrameSupport,
  MOVEMENTS,
} from "./frame.ts";
import { type MemberElement, memberElement } from "./member-element.ts";

/**
 * Movements, member forces and reactions of a frame under each load case: linear, small movements, Timoshenko beams,
 * no warping restraint. One support a node at most. A frame that can move freely is refused, with the place.
 */
export function analyseFrame(frame: Frame, cases: readonly FrameLoadCase[]): FrameAnalysis {
  const index = new Map(frame.nodes.map((node, order) => [node.id, order]));
  const unknown = unknownNode(frame, cases, index);
  if (unknown !== undefined) return { ok: false, fault: "unknown-node", node: unknown };
  const elements: MemberElement[] = [];
  for (const member of frame.members) {
    const from = frame.nodes[index.get(member.from)!]!;
    const to = frame.nodes[index.get(member.to)!]!;
    const element = memberElement(member, from.point, to.point);
    if (!element) return { ok: false, fault: "member-without-length", member: member.id };
    elements.push(element);
  }
  const size = 6 * frame.nodes.length;
  const axes = supportAxes(frame, index);
  const stiffness = assemble(elements, index, axes, size);
  const { held, settled } = heldMovements(frame.supports, index, size);
  const free = Array.from({ length: size }, (_, at) => at).filter((at) => !held[at]);
  const solver = makeSolver(stiffness, free);
  if ("stuckAt" in solver) {
    const at = solver.stuckAt;
    return {
      ok: false,
      fault: "mechanism",
      node: frame.nodes[Math.floor(at / 6)]!.id,
      movement: MOVEMENTS[at % 6]!,
    };
  }
  const loads = cases.map((loadCase) => loadVector(loadCase, index, axes, size));
  const movements = solver.solve(loads, settled);
  const results = cases.map((loadCase, at) =>
    resultOf(frame, loadCase, elements, index, axes, stiffness, loads[at]!, movements[at]!),
  );
  return { ok: true, results };
}

type Index = ReadonlyMap<string, number>;
type NodeAxes = readonly (Rotation | undefined)[];

function unknownNode(frame: Frame, cases: readonly FrameLoadCase[], index: Index): string | undefined {
  const named = [
    ...frame.members.flatMap(({ from, to }) => [from, to]),
    ...frame.supports.map(({ node }) => node),
    ...cases.flatMap(({ loads }) => loads.map(({ node }) => node)),
  ];
  return named.find((id) => !index.has(id));
}

const supportAxes = (frame: Frame, index: Index): NodeAxes => {
  const axes: (Rotation | undefined)[] = frame.nodes.map(() => undefined);
  for (const support of frame.supports) axes[index.get(support.node)!] = support.axes;
  return axes;
};

/** Whole stiffness; the rows of a node with axes of its own speak in those. */
function assemble(elements: readonly MemberElement[], index: Index, axes: NodeAxes, size: number): Matrix {
  const whole = Matrix.zeros(size, size);
  for (const { member, own, carry } of elements) {
    const nodes = [index.get(member.from)!, index.get(member.to)!];
    const turned = carry.mmul(nodeTurn(nodes.map((node) => axes[node])));
    const k = turned.transpose().mmul(own).mmul(turned);
    const place = nodes.flatMap((node) => [0, 1, 2, 3, 4, 5].map((movement) => 6 * node + movement));
    for (let r = 0; r < 12; r += 1) {
      for (let c = 0; c < 12; c += 1) {
        whole.set(place[r]!, place[c]!, whole.get(place[r]!, place[c]!) + k.get(r, c));
      }
    }
  }
  return whole;
}

/** From the nodes' own axes to vehicle axes, 12 × 12. */
function nodeTurn(axes: NodeAxes): Matrix {
  const turn = Matrix.eye(12, 12);
  axes.forEach((rotation, end) => {
    if (!rotation) return;
    for (let r = 0; r < 3; r += 1) {
      for (let c = 0; c < 3; c += 1) {
        for (const at of [6 * end, 6 * end + 3]) turn.set(at + r, at + c, rotation[3 * c + r]!);
      }
    }
  });
  return turn;
}

function heldMovements(supports: readonly FrameSupport[], index: Index, size: number) {
  const held = new Array<boolean>(size).fill(false);
  const settled = new Array<number>(size).fill(0);
  for (const { node, holds, settles = {} } of supports) {
    for (const movement of holds) {
      const at = 6 * index.get(node)! + MOVEMENTS.indexOf(movement);
      held[at] = true;
      settled[at] = settles[movement] ?? 0;
    }
  }
  return { held, settled };
}

/** Least pivot of the stiffness scaled to a unit diagonal: below it the movement is free to working precision. */
const LEAST_PIVOT = 1e-12;

type Solver =
  | {
      /** Movements under each of several load vectors. */
      readonly solve: (loads: readonly (readonly number[])[], settled: readonly number[]) => readonly number[][];
    }
  | { readonly stuckAt: number };

function makeSolver(stiffness: Matrix, free: readonly number[]): Solver {
  const scale = free.map((at) => {
    const diagonal = stiffness.get(at, at);
    return diagonal > 0 ? 1 / Math.sqrt(diagonal) : 0;
  });
  const loose = scale.indexOf(0);
  if (loose >= 0) return { stuckAt: free[loose]! };
  if (free.length === 0) return { solve: (loads, settled) => loads.map(() => [...settled]) };
  const scaled = stiffness.selection([...free], [...free]);
  scaled.mulColumnVector(scale).mulRowVector(scale);
  // Rounding of the products leaves the two halves apart in the last digit, which the library takes for no symmetry.
  for (let r = 0; r < free.length; r += 1) for (let c = 0; c < r; c += 1) scaled.set(r, c, scaled.get(c, r));
  const factors = new CholeskyDecomposition(scaled);
  const lower = factors.lowerTriangularMatrix;
  const weak = free.findIndex((_, at) => !(lower.get(at, at) ** 2 > LEAST_PIVOT));
  if (weak >= 0) return { stuckAt: free[weak]! };
  return {
    solve: (loads, settled) => {
      if (loads.length === 0) return [];
      const right = free.map((at, row) => {
        let bySettling = 0;
        for (let c = 0; c < settled.length; c += 1) {
          if (settled[c] !== 0) bySettling += stiffness.get(at, c) * settled[c]!;
        }
        return loads.map((load) => (load[at]! - bySettling) * scale[row]!);
      });
      const found = factors.solve(new Matrix(right));
      return loads.map((_, column) => {
        const movement = [...settled];
        free.forEach((at, row) => {
          movement[at] = found.get(row, column) * scale[row]!;
        });
        return movement;
      });
    },
  };
}

function loadVector({ loads }: FrameLoadCase, index: Index, axes: NodeAxes, size: number): number[] {
  const out = new Array<number>(size).fill(0);
  for (const { node, force = ORIGIN, moment = ORIGIN } of loads) {
    const order = index.get(node)!;
    const turn = axes[order];
    [force, moment].forEach((vector, half) => {
      const own = turn ? rotate(turn, vector) : vector;
      const at = 6 * order + 3 * half;
      out[at] = out[at]! + own.x;
      out[at + 1] = out[at + 1]! + own.y;
      out[at + 2] = out[at + 2]! + own.z;
    });
  }
  return out;
}

function resultOf(
  frame: Frame,
  loadCase: FrameLoadCase,
  elements: readonly MemberElement[],
  index: Index,
  axes: NodeAxes,
  stiffness: Matrix,
  loads: readonly number[],
  movement: readonly number[],
): FrameResult {
  const inVehicleAxes = (flat: readonly number[], order: number, half: 0 | 1): Vec3 => {
    const at = 6 * order + 3 * half;
    const own = vec(flat[at]!, flat[at + 1]!, flat[at + 2]!);
    const turn = axes[order];
    return turn ? rotate(transpose(turn), own) : own;
  };
  const movements = frame.nodes.map(({ id }, order) => ({
    node: id,
    shift: inVehicleAxes(movement, order, 0),
    turn: inVehicleAxes(movement, order, 1),
  }));
  const members = elements.map(({ member, toForces }) => {
    const ends = [member.from, member.to].flatMap((node) => {
      const { shift, turn } = movements[index.get(node)!]!;
      return [shift.x, shift.y, shift.z, turn.x, turn.y, turn.z];
    });
    const forces = toForces.mmul(Matrix.columnVector(ends)).to1DArray();
    return { member: member.id, from: endForce(forces, 0), to: endForce(forces, 6) };
  });
  const carried: number[] = [];
  const reactions = frame.supports.map(({ node }) => {
    const order = index.get(node)!;
    for (let at = 6 * order; at < 6 * order + 6; at += 1) {
      let taken = 0;
      for (let c = 0; c < movement.length; c += 1) taken += stiffness.get(at, c) * movement[c]!;
      carried[at] = taken - loads[at]!;
    }
    return { node, force: inVehicleAxes(carried, order, 0), moment: inVehicleAxes(carried, order, 1) };
  });
  const residual = equilibriumResidual(frame, loadCase.loads, reactions);
  return { loadCase: loadCase.id, movements, members, reactions, residual };
}

const endForce = (flat: readonly number[], at: number): EndForce => ({
  force: vec(flat[at]!, flat[at + 1]!, flat[at + 2]!),
  moment: vec(flat[at + 3]!, flat[at + 4]!, flat[at + 5]!),
});
