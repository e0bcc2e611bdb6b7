import type { FiveLinkLinkage } from "../car/car.ts";
import { solveLinear } from "../geometry/solve-linear.ts";
import { cross, subtract, type Vec3 } from "../geometry/vec3.ts";
import { eliminateFive, FIVE_WIDTH } from "./eliminate-five.ts";
import type { AdjustedLinkage, Lengths, LinkageKind, Mechanism, RangeEnd, TravelRange } from "./kind.ts";
import { AT, designState, type MotionState, STATE_SIZE } from "./motion-state.ts";
import { givenLength, linkPivots, linkTube } from "./parts.ts";
import { turnbuckle } from "./screw.ts";

/**
 * Five links with a ball at each end. No closed form: Newton's method on the five lengths, with the wheel centre's height
 * given, for the wheel centre's x and y and the spindle's rotation. The range is found by following the motion along its
 * own length (pseudo-arclength continuation), which does not mind where the height turns back.
 */
export const fiveLink: LinkageKind<FiveLinkLinkage> = {
  kind: "five-link",
  title: "five links",
  arms: () => [],
  members: ({ links }) => links.map((link) => linkTube(idOf(link.name), link.name, link)),
  pivots: ({ links }) => links.flatMap((link) => linkPivots(idOf(link.name), link.name, link)),
  adjusters: ({ links }) => links.map((link) => turnbuckle(idOf(link.name), link.name)),
  adjust: (linkage, id, change): AdjustedLinkage<FiveLinkLinkage> => {
    const link = linkage.links.find(({ name }) => idOf(name) === id)!;
    return { linkage, moved: {}, lengths: { [id]: givenLength({}, id, link.inner, link.outer) + change } };
  },
  mechanism: fiveLinkMechanism,
};

const idOf = (name: string): string => `links.${name}`;

/** Points of the five links, flat; rows are in the order that elimination without exchange bears best. */
export interface Constants {
  readonly wheelCentre: Vec3;
  /** Chassis ends, 5 × 3, m. */
  readonly inner: Float64Array;
  /** Spindle ends from the wheel centre in the design position, 5 × 3, m. */
  readonly arm: Float64Array;
  /** Half of each length squared, m². */
  readonly halfSquare: Float64Array;
}

export function constantsOf(linkage: FiveLinkLinkage, wheelCentre: Vec3, lengths: Lengths): Constants {
  const rows = linkage.links.map((link) => {
    const reach = subtract(link.outer, wheelCentre);
    const along = subtract(link.outer, link.inner);
    const turning = cross(reach, along);
    return {
      link,
      reach,
      length: givenLength(lengths, idOf(link.name), link.inner, link.outer),
      gradient: [along.x, along.y, turning.x, turning.y, turning.z],
    };
  });
  const order = rowOrder(rows.map((row) => row.gradient));
  const sorted = order.map((index) => rows[index]!);
  const flat = (pick: (row: (typeof rows)[number]) => Vec3) =>
    Float64Array.from(sorted.flatMap((row) => [pick(row).x, pick(row).y, pick(row).z]));
  return {
    wheelCentre,
    inner: flat((row) => row.link.inner),
    arm: flat((row) => row.reach),
    halfSquare: Float64Array.from(sorted, (row) => 0.5 * row.length * row.length),
  };
}

/** The order of rows that partial pivoting would choose. */
function rowOrder(matrix: readonly (readonly number[])[]): readonly number[] {
  const m = matrix.map((row) => [...row]);
  const order = m.map((_, index) => index);
  for (let p = 0; p < m.length; p += 1) {
    let best = p;
    for (let r = p + 1; r < m.length; r += 1) if (Math.abs(m[r]![p]!) > Math.abs(m[best]![p]!)) best = r;
    [m[p], m[best]] = [m[best]!, m[p]!];
    [order[p], order[best]] = [order[best]!, order[p]!];
    if (m[p]![p] === 0) continue;
    for (let r = p + 1; r < m.length; r += 1) {
      const factor = m[r]![p]! / m[p]![p]!;
      for (let c = p; c < m.length; c += 1) m[r]![c] = m[r]![c]! - factor * m[p]![c]!;
    }
  }
  return order;
}

function fiveLinkMechanism(linkage: FiveLinkLinkage, wheelCentre: Vec3, lengths: Lengths = {}): Mechanism {
  const five = constantsOf(linkage, wheelCentre, lengths);
  const work = workspace();
  const path = followPath(five);
  const low = path.range.droop.travel;
  const high = path.range.bump.travel;
  return {
    range: path.range,
    solve: (travel, state) => {
      if (travel < low || travel > high) return -1;
      if (isTrusted(state, travel)) {
        const iterations = solveFiveLink(five, travel, state, work);
        if (iterations > 0 && iterations <= FEW_ITERATIONS) {
          state.set(work.state);
          return iterations;
        }
      }
      const iterations = solveFromPath(five, path, travel, work);
      if (iterations > 0) state.set(work.state);
      return iterations;
    },
  };
}

/** Newton's method that needs more than this has left the neighbourhood that the prediction was meant for. */
const FEW_ITERATIONS = 6;
/** Farther than this from a known position, m, a prediction is not trusted. */
const TRUSTED_STEP = 0.025;

/** A state's prediction is trusted where its derivatives change little on the way: not near where the height turns back. */
function isTrusted(s: MotionState, travel: number): boolean {
  const h = travel - s[AT.travel]!;
  if (!(h <= TRUSTED_STEP && h >= -TRUSTED_STEP) || s[AT.velocity + 2] !== 1) return false;
  const ux = s[AT.spin]!;
  const uy = s[AT.spin + 1]!;
  const uz = s[AT.spin + 2]!;
  const ax = s[AT.spinRate]!;
  const ay = s[AT.spinRate + 1]!;
  const az = s[AT.spinRate + 2]!;
  return h * h * (ax * ax + ay * ay + az * az) < 0.06 * (1 + ux * ux + uy * uy + uz * uz);
}

/** From the path's node next inside the travel; where that is too bold, along the path itself until the height is right. */
function solveFromPath(five: Constants, path: Path, travel: number, work: Workspace): number {
  const nodes = travel >= 0 ? path.bump : path.droop;
  let index = 0;
  while (index + 1 < nodes.length && Math.abs(nodes[index + 1]!.state[AT.travel]!) <= Math.abs(travel)) index += 1;
  const node = nodes[index]!;
  if (isTrusted(node.state, travel)) {
    const iterations = solveFiveLink(five, travel, node.state, work);
    if (iterations > 0 && iterations <= FEW_ITERATIONS) return iterations;
  }
  const seed = alongPath(five, node, travel, work);
  return seed ? solveFiveLink(five, travel, seed, work) : -1;
}

/** A state on the path at the travel, by halving the step from a node outward. */
function alongPath(five: Constants, node: PathNode, travel: number, work: Workspace): MotionState | null {
  const target = five.wheelCentre.z + travel;
  const outward = node.tangent[2]! > 0 ? 1 : -1;
  let inside = 0;
  let outside = node.step;
  let point: PathPoint = node.point;
  for (let i = 0; i < 60; i += 1) {
    const middle = 0.5 * (inside + outside);
    const found = correct(five, node.point, node.tangent, middle, work);
    const at = found && tangentAt(five, found, work, node.tangent);
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

interface Workspace {
  readonly state: MotionState;
  readonly matrix: Float64Array;
  /** Link vectors and spindle arms of the present iterate, 5 × 3 each. */
  readonly along: Float64Array;
  readonly reach: Float64Array;
}

const workspace = (): Workspace => ({
  state: new Float64Array(STATE_SIZE),
  matrix: new Float64Array(5 * FIVE_WIDTH),
  along: new Float64Array(15),
  reach: new Float64Array(15),
});

/** Lengths agree to this after the last step, as (|d|² − L²)/2, m². */
const CLOSE_ENOUGH = 1e-11;
const MOST_ITERATIONS = 40;

/**
 * Flat kernel: Newton's method from a second-order prediction; leaves the result in `work.state`, with first and second
 * derivative by travel from the same matrix. Gives the iterations, or −1 where it did not converge.
 */
function solveFiveLink(five: Constants, travel: number, from: MotionState, work: Workspace): number {
  const s = work.state;
  const h = travel - from[AT.travel]!;
  const hh = 0.5 * h * h;
  let x = from[AT.wheelCentre]! + h * from[AT.velocity]! + hh * from[AT.acceleration]!;
  let y = from[AT.wheelCentre + 1]! + h * from[AT.velocity + 1]! + hh * from[AT.acceleration + 1]!;
  const z = five.wheelCentre.z + travel;
  s.set(from);
  turn(
    s,
    h * from[AT.spin]! + hh * from[AT.spinRate]!,
    h * from[AT.spin + 1]! + hh * from[AT.spinRate + 1]!,
    h * from[AT.spin + 2]! + hh * from[AT.spinRate + 2]!,
  );
  const m = work.matrix;
  let iteration = 0;
  let last = false;
  for (;;) {
    iteration += 1;
    const miss = assemble(five, s, x, y, z, work);
    last = last || miss < CLOSE_ENOUGH;
    // Second right-hand side: the height's own column, for the velocity.
    if (!eliminate(m)) return -1;
    x += m[5]!;
    y += m[FIVE_WIDTH + 5]!;
    if (last) break;
    if (iteration >= MOST_ITERATIONS) return -1;
    turn(s, m[2 * FIVE_WIDTH + 5]!, m[3 * FIVE_WIDTH + 5]!, m[4 * FIVE_WIDTH + 5]!);
  }
  const vx = m[6]!;
  const vy = m[FIVE_WIDTH + 6]!;
  const px = m[2 * FIVE_WIDTH + 6]!;
  const py = m[3 * FIVE_WIDTH + 6]!;
  const pz = m[4 * FIVE_WIDTH + 6]!;
  const tx = m[2 * FIVE_WIDTH + 5]!;
  const ty = m[3 * FIVE_WIDTH + 5]!;
  const tz = m[4 * FIVE_WIDTH + 5]!;
  // Accelerations: same matrix, right-hand side −(|v|² + d·(ω×(ω×r))) of each spindle end.
  for (let i = 0; i < 5; i += 1) {
    const k = 3 * i;
    const rx = work.reach[k]!;
    const ry = work.reach[k + 1]!;
    const rz = work.reach[k + 2]!;
    const cx = py * rz - pz * ry;
    const cy = pz * rx - px * rz;
    const cz = px * ry - py * rx;
    const ex = vx + cx;
    const ey = vy + cy;
    const ez = 1 + cz;
    m[i * FIVE_WIDTH + 6] = -(
      ex * ex +
      ey * ey +
      ez * ez +
      work.along[k]! * (py * cz - pz * cy) +
      work.along[k + 1]! * (pz * cx - px * cz) +
      work.along[k + 2]! * (px * cy - py * cx)
    );
  }
  if (!eliminate(m)) return -1;
  turn(s, tx, ty, tz);
  s[AT.travel] = travel;
  s[AT.wheelCentre] = x;
  s[AT.wheelCentre + 1] = y;
  s[AT.wheelCentre + 2] = z;
  s[AT.velocity] = vx;
  s[AT.velocity + 1] = vy;
  s[AT.velocity + 2] = 1;
  s[AT.spin] = px;
  s[AT.spin + 1] = py;
  s[AT.spin + 2] = pz;
  s[AT.acceleration] = m[6]!;
  s[AT.acceleration + 1] = m[FIVE_WIDTH + 6]!;
  s[AT.acceleration + 2] = 0;
  s[AT.spinRate] = m[2 * FIVE_WIDTH + 6]!;
  s[AT.spinRate + 1] = m[3 * FIVE_WIDTH + 6]!;
  s[AT.spinRate + 2] = m[4 * FIVE_WIDTH + 6]!;
  return iteration;
}

/** Below this a pivot (m or m²) is too small to divide by safely, and rows are exchanged. */
const LEAST_PIVOT = 1e-5;

/** Replaces both right-hand sides by their solutions, exchanging rows only where it must; false where singular. */
function eliminate(m: Float64Array): boolean {
  if (eliminateFive(m, LEAST_PIVOT) > LEAST_PIVOT) return true;
  const rows = Array.from({ length: 5 }, (_, r) => Array.from(m.subarray(r * FIVE_WIDTH, r * FIVE_WIDTH + 5)));
  const right = (k: number) => Array.from({ length: 5 }, (_, r) => m[r * FIVE_WIDTH + 5 + k]!);
  const first = solveLinear(rows, right(0));
  const second = solveLinear(rows, right(1));
  if (!first || !second) return false;
  for (let r = 0; r < 5; r += 1) {
    m[r * FIVE_WIDTH + 5] = first[r]!;
    m[r * FIVE_WIDTH + 6] = second[r]!;
  }
  return true;
}

/** Fills the 5 × 7 system of the present iterate; gives the largest miss of a length, (|d|² − L²)/2, m². */
function assemble(five: Constants, s: MotionState, x: number, y: number, z: number, work: Workspace): number {
  const { inner, arm, halfSquare } = five;
  const { matrix, along, reach } = work;
  const r0 = s[AT.rotation]!;
  const r1 = s[AT.rotation + 1]!;
  const r2 = s[AT.rotation + 2]!;
  const r3 = s[AT.rotation + 3]!;
  const r4 = s[AT.rotation + 4]!;
  const r5 = s[AT.rotation + 5]!;
  const r6 = s[AT.rotation + 6]!;
  const r7 = s[AT.rotation + 7]!;
  const r8 = s[AT.rotation + 8]!;
  let largest = 0;
  for (let i = 0; i < 5; i += 1) {
    const k = 3 * i;
    const bx = arm[k]!;
    const by = arm[k + 1]!;
    const bz = arm[k + 2]!;
    const rx = r0 * bx + r1 * by + r2 * bz;
    const ry = r3 * bx + r4 * by + r5 * bz;
    const rz = r6 * bx + r7 * by + r8 * bz;
    const dx = x + rx - inner[k]!;
    const dy = y + ry - inner[k + 1]!;
    const dz = z + rz - inner[k + 2]!;
    reach[k] = rx;
    reach[k + 1] = ry;
    reach[k + 2] = rz;
    along[k] = dx;
    along[k + 1] = dy;
    along[k + 2] = dz;
    const row = i * FIVE_WIDTH;
    matrix[row] = dx;
    matrix[row + 1] = dy;
    // d·(ω×r) = ω·(r×d)
    matrix[row + 2] = ry * dz - rz * dy;
    matrix[row + 3] = rz * dx - rx * dz;
    matrix[row + 4] = rx * dy - ry * dx;
    const miss = 0.5 * (dx * dx + dy * dy + dz * dz) - halfSquare[i]!;
    matrix[row + 5] = -miss;
    matrix[row + 6] = -dz;
    const size = miss < 0 ? -miss : miss;
    if (size > largest) largest = size;
  }
  return largest;
}

/** Turns the spindle farther by the rotation vector (rad), keeping a unit quaternion so that no error of shape builds up. */
function turn(s: MotionState, vx: number, vy: number, vz: number): void {
  const half = 0.5 * Math.sqrt(vx * vx + vy * vy + vz * vz);
  // sin(half)/(2 half), by its series where it is flat.
  const k = half > 1e-4 ? (0.5 * Math.sin(half)) / half : 0.5 * (1 - (half * half) / 6);
  const a = Math.cos(half);
  const b = vx * k;
  const c = vy * k;
  const d = vz * k;
  const q0 = s[AT.quaternion]!;
  const q1 = s[AT.quaternion + 1]!;
  const q2 = s[AT.quaternion + 2]!;
  const q3 = s[AT.quaternion + 3]!;
  let w = a * q0 - b * q1 - c * q2 - d * q3;
  let i = a * q1 + b * q0 + c * q3 - d * q2;
  let j = a * q2 - b * q3 + c * q0 + d * q1;
  let n = a * q3 + b * q2 - c * q1 + d * q0;
  const per = 1 / Math.sqrt(w * w + i * i + j * j + n * n);
  w *= per;
  i *= per;
  j *= per;
  n *= per;
  s[AT.quaternion] = w;
  s[AT.quaternion + 1] = i;
  s[AT.quaternion + 2] = j;
  s[AT.quaternion + 3] = n;
  s[AT.rotation] = 1 - 2 * (j * j + n * n);
  s[AT.rotation + 1] = 2 * (i * j - w * n);
  s[AT.rotation + 2] = 2 * (i * n + w * j);
  s[AT.rotation + 3] = 2 * (i * j + w * n);
  s[AT.rotation + 4] = 1 - 2 * (i * i + n * n);
  s[AT.rotation + 5] = 2 * (j * n - w * i);
  s[AT.rotation + 6] = 2 * (i * n - w * j);
  s[AT.rotation + 7] = 2 * (j * n + w * i);
  s[AT.rotation + 8] = 1 - 2 * (i * i + j * j);
}

/** The motion followed once from end to end: its range, and known positions along it to set out from. */
interface Path {
  readonly range: TravelRange;
  /** In order outward, the design position first. */
  readonly droop: readonly PathNode[];
  readonly bump: readonly PathNode[];
}

interface PathNode {
  readonly state: MotionState;
  readonly point: PathPoint;
  /** Unit tangent, outward, and the step along it that leads to the next node or past the end. */
  readonly tangent: readonly number[];
  step: number;
}

/** Step along the path: rotation counts as this many metres a radian. */
const METRES_PER_RADIAN = 0.3;
const PATH_STEP = 0.008;
const LONGEST_PATH = 4;

function followPath(five: Constants): Path {
  const work = workspace();
  const start = designState();
  start[AT.wheelCentre] = five.wheelCentre.x;
  start[AT.wheelCentre + 1] = five.wheelCentre.y;
  start[AT.wheelCentre + 2] = five.wheelCentre.z;
  start[AT.velocity + 2] = 1;
  // Where lengths differ from the given points, the first solve brings the spindle to them.
  if (solveFiveLink(five, 0, start, work) < 0) {
    const stuck: RangeEnd = { travel: 0, toggles: [] };
    return { range: { droop: stuck, bump: stuck }, droop: [], bump: [] };
  }
  const design = Float64Array.from(work.state);
  const bump = followOneWay(five, design, 1);
  const droop = followOneWay(five, design, -1);
  return {
    range: { droop: { travel: droop.travel, toggles: [] }, bump: { travel: bump.travel, toggles: [] } },
    droop: droop.nodes,
    bump: bump.nodes,
  };
}

/** Where the spindle is along the path: x, y, z of the wheel centre and a state that holds its rotation. */
interface PathPoint {
  readonly centre: readonly [number, number, number];
  readonly state: MotionState;
}

function followOneWay(five: Constants, design: MotionState, direction: 1 | -1): { travel: number; nodes: PathNode[] } {
  const work = workspace();
  let here: PathPoint = { centre: centreOf(design), state: design };
  let tangent = tangentAt(five, here, work, [0, 0, direction, 0, 0, 0]);
  let step = PATH_STEP;
  const nodes: PathNode[] = [{ state: design, point: here, tangent, step }];
  for (let gone = 0; gone < LONGEST_PATH && step > 1e-6; gone += step) {
    const next = correct(five, here, tangent, step, work);
    const nextTangent = next && tangentAt(five, next, work, tangent);
    // A sharp turn between two points means that the step was too long to be sure of the same branch.
    if (!next || !nextTangent || inner(tangent, nextTangent) < 0.95) {
      gone -= step;
      step *= 0.5;
      continue;
    }
    nodes[nodes.length - 1]!.step = step;
    if (nextTangent[2]! * direction <= 0) {
      return { travel: foldHeight(five, here, tangent, step, work, direction) - five.wheelCentre.z, nodes };
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
    if (solveFiveLink(five, travel, seed, work) > 0) {
      nodes.push({ state: Float64Array.from(work.state), point: here, tangent, step });
    }
    step = Math.min(PATH_STEP, step * 1.5);
  }
  return { travel: here.centre[2] - five.wheelCentre.z, nodes };
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
  five: Constants,
  here: PathPoint,
  tangent: readonly number[],
  step: number,
  work: Workspace,
  direction: 1 | -1,
): number {
  let inside = 0;
  let outside = step;
  let height = here.centre[2];
  for (let i = 0; i < 60 && outside - inside > 1e-13; i += 1) {
    const middle = 0.5 * (inside + outside);
    const point = correct(five, here, tangent, middle, work);
    const at = point && tangentAt(five, point, work, tangent);
    if (point && at && at[2]! * direction > 0) {
      inside = middle;
      height = point.centre[2];
    } else outside = middle;
  }
  return height;
}

/** Lengths' gradients by x, y, z and scaled rotation, and their misses, from the assembled 5 × 7 system. */
function systemAt(five: Constants, point: PathPoint, work: Workspace) {
  assemble(five, point.state, ...point.centre, work);
  const m = work.matrix;
  return Array.from({ length: 5 }, (_, i) => {
    const k = i * FIVE_WIDTH;
    return {
      gradient: [
        m[k]!,
        m[k + 1]!,
        -m[k + 6]!,
        m[k + 2]! / METRES_PER_RADIAN,
        m[k + 3]! / METRES_PER_RADIAN,
        m[k + 4]! / METRES_PER_RADIAN,
      ],
      miss: -m[k + 5]!,
    };
  });
}

/** Unit tangent of the path, on the side of `along`; null where the path branches. */
function tangentAt(five: Constants, point: PathPoint, work: Workspace, along: readonly number[]): number[] {
  const rows = systemAt(five, point, work).map((row) => row.gradient);
  const solution = solveLinear([...rows, [...along]], [0, 0, 0, 0, 0, 1]);
  if (!solution) return [...along];
  const size = Math.sqrt(inner(solution, solution));
  return solution.map((value) => value / size);
}

/** One step along the tangent, then Newton's method square to it; null where it does not converge. */
function correct(
  five: Constants,
  here: PathPoint,
  tangent: readonly number[],
  step: number,
  work: Workspace,
): PathPoint | null {
  let point = moved(
    here,
    tangent.map((value) => value * step),
  );
  for (let i = 0; i < 12; i += 1) {
    const rows = systemAt(five, point, work);
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
  turn(state, change[3]! / METRES_PER_RADIAN, change[4]! / METRES_PER_RADIAN, change[5]! / METRES_PER_RADIAN);
  const [x, y, z] = point.centre;
  return { centre: [x + change[0]!, y + change[1]!, z + change[2]!], state };
}
