import { solveLinear } from "../geometry/solve-linear.ts";
import type { FiveLinkConstants } from "./five-link-constants.ts";
import { FEW_ITERATIONS, isTrusted, linkRows, solveFiveLink, turn } from "./five-link-newton.ts";
import type { TravelRange } from "./kind.ts";
import { AT, designState, type MotionState } from "./motion-state.ts";

/** The motion followed once from end to end: its range, and known positions along it to set out from. */
export interface Path {
  readonly range: TravelRange;
  /** In order outward, the design position first. */
  readonly droop: readonly PathNode[];
  readonly bump: readonly PathNode[];
}

export interface PathNode {
  readonly state: MotionState;
  readonly point: PathPoint;
  /** Unit tangent, outward, and the step along it that leads to the next node or past the end. */
  readonly tangent: readonly number[];
  step: number;
}

/** Along the path, rotation counts as this many metres a radian. */
const METRES_PER_RADIAN = 0.3;
const PATH_STEP = 0.008;
const LONGEST_PATH = 4;

/** The design position, solved; null where the lengths do not go together at its height. */
export function solveDesign(five: FiveLinkConstants): MotionState | null {
  const start = designState();
  start[AT.wheelCentre] = five.wheelCentre.x;
  start[AT.wheelCentre + 1] = five.wheelCentre.y;
  start[AT.wheelCentre + 2] = five.wheelCentre.z;
  start[AT.velocity + 2] = 1;
  // Where lengths differ from the given points, this brings the spindle to them.
  const design = designState();
  return solveFiveLink(five, 0, start, design) > 0 ? design : null;
}

/** Follows the motion both ways from the design position. */
export function followPath(five: FiveLinkConstants, design: MotionState): Path {
  const bump = followOneWay(five, design, 1);
  const droop = followOneWay(five, design, -1);
  return {
    range: { droop: { travel: droop.travel, toggles: [] }, bump: { travel: bump.travel, toggles: [] } },
    droop: droop.nodes,
    bump: bump.nodes,
  };
}

/** Near enough for Newton's method to finish: a step of 8 mm halved to nanometres. */
const HALVINGS = 24;

/** A state on the path at the travel, by halving the step from a node outward. */
export function alongPath(five: FiveLinkConstants, node: PathNode, travel: number): MotionState {
  const target = five.wheelCentre.z + travel;
  const outward = node.tangent[2]! > 0 ? 1 : -1;
  let inside = 0;
  let outside = node.step;
  let point: PathPoint = node.point;
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = 0.5 * (inside + outside);
    const found = correct(five, node.point, node.tangent, middle);
    const at = found && tangentAt(five, found, node.tangent);
    const isInside = found && at && at[2]! * outward > 0 && (found.centre[2] - target) * outward <= 0;
    if (isInside) {
      inside = middle;
      point = found;
    } else outside = middle;
  }
  const seed = Float64Array.from(point.state);
  seed[AT.travel] = point.centre[2] - five.wheelCentre.z;
  seed.set(point.centre, AT.wheelCentre);
  seed.fill(0, AT.spin, AT.firstArm);
  return seed;
}

/** Where the spindle is along the path: x, y, z of the wheel centre and a state that holds its rotation. */
interface PathPoint {
  readonly centre: readonly [number, number, number];
  readonly state: MotionState;
}

function followOneWay(
  five: FiveLinkConstants,
  design: MotionState,
  direction: 1 | -1,
): { travel: number; nodes: PathNode[] } {
  const nodes = followByHeight(five, design, direction);
  // Near its end the height is no measure of the way any more: from there on, along the path itself.
  const last = nodes[nodes.length - 1]!;
  let here = last.point;
  let tangent = tangentAt(five, here, last.tangent);
  let step = PATH_STEP;
  for (let gone = 0; gone < LONGEST_PATH && step > 1e-6; gone += step) {
    const next = correct(five, here, tangent, step);
    const nextTangent = next && tangentAt(five, next, tangent);
    // A sharp turn between two points means that the step was too long to be sure of the same branch.
    if (!next || !nextTangent || inner(tangent, nextTangent) < 0.95) {
      gone -= step;
      step *= 0.5;
      continue;
    }
    nodes[nodes.length - 1]!.step = step;
    if (nextTangent[2]! * direction <= 0) {
      return { travel: foldHeight(five, here, tangent, step, direction) - five.wheelCentre.z, nodes };
    }
    here = next;
    tangent = nextTangent;
    const travel = here.centre[2] - five.wheelCentre.z;
    const seed = Float64Array.from(here.state);
    seed[AT.travel] = travel;
    seed[AT.wheelCentre] = here.centre[0];
    seed[AT.wheelCentre + 1] = here.centre[1];
    seed[AT.wheelCentre + 2] = here.centre[2];
    for (let i = AT.spin; i < AT.firstArm; i += 1) seed[i] = 0;
    const state = designState();
    if (solveFiveLink(five, travel, seed, state) > 0) nodes.push({ state, point: here, tangent, step });
    step = Math.min(PATH_STEP, step * 1.5);
  }
  return { travel: here.centre[2] - five.wheelCentre.z, nodes };
}

/** As far as equal steps of height can be trusted; at least the design position. */
function followByHeight(five: FiveLinkConstants, design: MotionState, direction: 1 | -1): PathNode[] {
  const nodes = [nodeOf(design, direction)];
  for (let i = 1; i < MOST_HEIGHT_STEPS; i += 1) {
    const from = nodes[nodes.length - 1]!.state;
    const travel = direction * i * HEIGHT_STEP;
    const state = designState();
    if (!isTrusted(from, travel) || solveFiveLink(five, travel, from, state, FEW_ITERATIONS) < 0) break;
    nodes.push(nodeOf(state, direction));
  }
  return nodes;
}

/** m; a step that is trusted twice over, so that a node is trusted from halfway to the next. */
const HEIGHT_STEP = 0.012;
const MOST_HEIGHT_STEPS = 200;

function nodeOf(state: MotionState, direction: 1 | -1): PathNode {
  const way = [
    state[AT.velocity]!,
    state[AT.velocity + 1]!,
    1,
    state[AT.spin]! * METRES_PER_RADIAN,
    state[AT.spin + 1]! * METRES_PER_RADIAN,
    state[AT.spin + 2]! * METRES_PER_RADIAN,
  ];
  const length = Math.sqrt(inner(way, way));
  return {
    state,
    point: { centre: centreOf(state), state },
    tangent: way.map((value) => (value * direction) / length),
    step: 1.5 * HEIGHT_STEP * length,
  };
}

const centreOf = (s: MotionState): [number, number, number] => [
  s[AT.wheelCentre]!,
  s[AT.wheelCentre + 1]!,
  s[AT.wheelCentre + 2]!,
];

const inner = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, index) => sum + value * b[index]!, 0);

/** Closes in on the place inside the step where the height turns back, and gives the height there. */
function foldHeight(
  five: FiveLinkConstants,
  here: PathPoint,
  tangent: readonly number[],
  step: number,
  direction: 1 | -1,
): number {
  let inside = 0;
  let outside = step;
  let height = here.centre[2];
  for (let i = 0; i < 60 && outside - inside > 1e-13; i += 1) {
    const middle = 0.5 * (inside + outside);
    const point = correct(five, here, tangent, middle);
    const at = point && tangentAt(five, point, tangent);
    if (point && at && at[2]! * direction > 0) {
      inside = middle;
      height = point.centre[2];
    } else outside = middle;
  }
  return height;
}

/** Gradients of the links' lengths by x, y, z and scaled rotation, and their misses. */
const systemAt = (five: FiveLinkConstants, { state, centre }: PathPoint) =>
  linkRows(five, state, ...centre).map(({ along, turning, miss }) => ({
    gradient: [along.x, along.y, along.z, ...[turning.x, turning.y, turning.z].map((part) => part / METRES_PER_RADIAN)],
    miss,
  }));

/** Unit tangent of the path, on the side of `along`; null where the path branches. */
function tangentAt(five: FiveLinkConstants, point: PathPoint, along: readonly number[]): number[] {
  const rows = systemAt(five, point).map((row) => row.gradient);
  const solution = solveLinear([...rows, [...along]], [0, 0, 0, 0, 0, 1]);
  if (!solution) return [...along];
  const size = Math.sqrt(inner(solution, solution));
  return solution.map((value) => value / size);
}

/** One step along the tangent, then Newton's method square to it; null where it does not converge. */
function correct(five: FiveLinkConstants, here: PathPoint, tangent: readonly number[], step: number): PathPoint | null {
  let point = moved(
    here,
    tangent.map((value) => value * step),
  );
  for (let i = 0; i < 12; i += 1) {
    const rows = systemAt(five, point);
    const change = solveLinear(
      [...rows.map((row) => row.gradient), [...tangent]],
      [...rows.map((row) => -row.miss), 0],
    );
    if (!change) return null;
    point = moved(point, change);
    const size = Math.sqrt(inner(change, change));
    if (size < 1e-14) return point;
    if (size > 4 * PATH_STEP) return null;
    // Converged to rounding.
    if (i > 3 && size < 1e-12) return point;
  }
  return null;
}

function moved(point: PathPoint, change: readonly number[]): PathPoint {
  const state = Float64Array.from(point.state);
  turn(state, [0, 0, ...change.slice(3).map((part) => part / METRES_PER_RADIAN)]);
  const [x, y, z] = point.centre;
  return { centre: [x + change[0]!, y + change[1]!, z + change[2]!], state };
}
