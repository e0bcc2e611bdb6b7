import type { Car, RodEnd } from "../car/car.ts";
import { cross, dot, length, squareTo, subtract, unit, type Vec3 } from "../geometry/vec3.ts";
import type { ArmAxis, Lengths, Pivot } from "../linkage/kind.ts";
import { AT, type MotionState } from "../linkage/motion-state.ts";
import { givenLength } from "../linkage/parts.ts";
import type { Gathering } from "./carried-list.ts";
import { ROW as ROW_PLACES } from "./row.ts";

// A local copy: its numbers are then constants to the compiler, where an imported object is looked up at run time.
const ROW = ROW_PLACES;

/**
 * How far each rod end's ball is tilted in its housing. The housing is set true to its bolt in the design position.
 *
 * On an arm the housing is carried along by the arm. A link may turn about its own line, and takes the turn that suits both
 * its ends: each end bears a turn of acos(cos limit / cos e), e being the tilt along the link that no turn can take away,
 * and what both bolts ask for is shared in that proportion. So one end is at its limit only when both are, and then the
 * link truly binds.
 */
export interface RodEndSwings {
  readonly hinges: readonly HingeEnd[];
  readonly arms: readonly ArmEnd[];
  readonly links: readonly LinkEnds[];
}

/** An arm's end whose bolt is held by the chassis: the arm only turns about its hinge line. */
interface HingeEnd {
  /** In the row. */
  readonly place: number;
  /** Place of the arm's angle in a state. */
  readonly angle: number;
  /** Sine of the angle between bolt and hinge line. */
  readonly slant: number;
}

/** Directions and points are places in the list of what is carried. */
interface ArmEnd {
  /** In the row. */
  readonly place: number;
  readonly housing: number;
  readonly bolt: number;
}

interface LinkEnds {
  /** One over its length, 1/m. */
  readonly perLength: number;
  readonly first: LinkEnd;
  readonly second: LinkEnd;
  /** Turn between the two bolts, seen along the link, in the design position, rad. */
  readonly clocking: number;
}

interface LinkEnd {
  readonly place: number;
  readonly centre: number;
  readonly bolt: number;
  /** cos of the limit; 0 where none is given, so that ends without limits share evenly. */
  readonly cosLimit: number;
}

/** `lengths`: see LinkageKind.mechanism. */
export function rodEndSwings(
  car: Car,
  pivots: readonly Pivot[],
  axes: readonly ArmAxis[],
  lengths: Lengths,
  gathering: Gathering,
): RodEndSwings {
  const endAt = new Map(car.rodEnds.map((end, index) => [end.pivot, { end, place: ROW.rodEnds + index }]));
  const hinges: HingeEnd[] = [];
  const arms: ArmEnd[] = [];
  const links: LinkEnds[] = [];
  const done = new Set<string>();
  for (const pivot of pivots) {
    const found = endAt.get(pivot.id);
    if (!found) continue;
    const { end, place } = found;
    if (pivot.shank.body !== "link") {
      const { body } = pivot.shank;
      if (end.boltOn === "chassis") {
        const index = axes.findIndex((arm) => arm.body === body);
        const angle = 2 + (index === 0 ? AT.firstArm : AT.secondArm);
        hinges.push({ place, angle, slant: length(cross(end.boltAxis, axes[index]!.axis)) });
        continue;
      }
      const housing = gathering.direction(end.boltAxis, body);
      arms.push({ place, housing, bolt: gathering.direction(end.boltAxis, end.boltOn) });
      continue;
    }
    const { member } = pivot.shank;
    if (done.has(member)) continue;
    done.add(member);
    const other = pivots.find(({ id, shank }) => shank.body === "link" && shank.member === member && id !== pivot.id);
    const second = other && endAt.get(other.id);
    if (!other || !second) throw new Error(`bug in armwright: link ${member} has one rod end`);
    links.push({
      perLength: 1 / givenLength(lengths, member, pivot.point, other.point),
      first: linkEnd(pivot, end, place, gathering),
      second: linkEnd(other, second.end, second.place, gathering),
      clocking: turnBetween(unit(subtract(other.point, pivot.point)), end.boltAxis, second.end.boltAxis),
    });
  }
  return { hinges, arms, links };
}

const linkEnd = (pivot: Pivot, end: RodEnd, place: number, gathering: Gathering): LinkEnd => ({
  place,
  centre: gathering.point({ point: pivot.point, on: pivot.boltSide }),
  bolt: gathering.direction(end.boltAxis, end.boltOn),
  cosLimit: end.misalignmentLimit === undefined ? 0 : Math.cos(end.misalignmentLimit),
});

/** Turn about `line` from one bolt to the other, as lines without sense, −π/2…π/2 rad. */
function turnBetween(line: Vec3, first: Vec3, second: Vec3): number {
  const a = squareTo(first, line);
  const b = squareTo(second, line);
  return asLine(Math.atan2(dot(cross(a, b), line), dot(a, b)));
}

/** Brings an angle between −3π/2 and 3π/2 into −π/2…π/2 by half turns. */
const asLine = (angle: number): number =>
  angle > 0.5 * Math.PI ? angle - Math.PI : angle < -0.5 * Math.PI ? angle + Math.PI : angle;

/** Writes every rod end's tilt (rad, not negative) into the row. `now`: see CarriedList. */
export function writeRodEndSwings(swings: RodEndSwings, s: MotionState, now: Float64Array, row: Float64Array): void {
  const { hinges, arms, links } = swings;
  for (let i = 0; i < hinges.length; i += 1) writeHingeEnd(hinges[i]!, s, row);
  for (let i = 0; i < arms.length; i += 1) writeArmEnd(arms[i]!, now, row);
  for (let i = 0; i < links.length; i += 1) writeLinkEnds(links[i]!, now, row);
}

function writeHingeEnd({ place, angle, slant }: HingeEnd, s: MotionState, row: Float64Array): void {
  // The chord between where the bolt and the housing point.
  const tilt = 2 * Math.asin(slant * Math.abs(Math.sin(0.5 * s[angle]!)));
  row[place] = Math.min(tilt, Math.PI - tilt);
}

function writeArmEnd({ place, housing, bolt }: ArmEnd, now: Float64Array, row: Float64Array): void {
  const ax = now[housing]!;
  const ay = now[housing + 1]!;
  const az = now[housing + 2]!;
  const bx = now[bolt]!;
  const by = now[bolt + 1]!;
  const bz = now[bolt + 2]!;
  const cx = ay * bz - az * by;
  const cy = az * bx - ax * bz;
  const cz = ax * by - ay * bx;
  row[place] = Math.atan(Math.sqrt(cx * cx + cy * cy + cz * cz) / Math.abs(ax * bx + ay * by + az * bz));
}

function writeLinkEnds({ perLength, first, second, clocking }: LinkEnds, now: Float64Array, row: Float64Array): void {
  const from = first.centre;
  const to = second.centre;
  const lx = (now[to]! - now[from]!) * perLength;
  const ly = (now[to + 1]! - now[from + 1]!) * perLength;
  const lz = (now[to + 2]! - now[from + 2]!) * perLength;
  const ax = now[first.bolt]!;
  const ay = now[first.bolt + 1]!;
  const az = now[first.bolt + 2]!;
  const bx = now[second.bolt]!;
  const by = now[second.bolt + 1]!;
  const bz = now[second.bolt + 2]!;
  // Sine and cosine of the tilt along the link; what is left of each bolt is square to the link.
  const along1 = ax * lx + ay * ly + az * lz;
  const along2 = bx * lx + by * ly + bz * lz;
  const cos1 = Math.sqrt(Math.max(0, 1 - along1 * along1));
  const cos2 = Math.sqrt(Math.max(0, 1 - along2 * along2));
  const across = (ay * bz - az * by) * lx + (az * bx - ax * bz) * ly + (ax * by - ay * bx) * lz;
  const level = ax * bx + ay * by + az * bz - along1 * along2;
  const turn = asLine((across === 0 ? 0 : Math.atan(across / level)) - clocking);
  const room1 = cos1 > first.cosLimit ? Math.acos(first.cosLimit / cos1) : 0;
  const room2 = cos2 > second.cosLimit ? Math.acos(second.cosLimit / cos2) : 0;
  const room = room1 + room2;
  const turn1 = room > 0 ? (turn * room1) / room : 0.5 * turn;
  const side1 = cos1 * Math.sin(turn1);
  const side2 = cos2 * Math.sin(turn - turn1);
  // A turn is at most a right angle either way, so that the sine of the whole tilt tells it.
  row[first.place] = Math.asin(Math.min(1, Math.sqrt(along1 * along1 + side1 * side1)));
  row[second.place] = Math.asin(Math.min(1, Math.sqrt(along2 * along2 + side2 * side2)));
}
