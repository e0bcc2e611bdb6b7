import { type Corner, type Member, type Pivot, placeMember, type RodEnd, type Vec3 } from "@armwright/engine";
import { Group } from "three";
import { directionNow, type Frame, mountNow, pivotPath, stateOf } from "../frame.ts";
import { Batch } from "../kit/batch.ts";
import { DASH, Lines } from "../kit/lines.ts";
import { fillMaterial, outlineMaterial, STATE, type State } from "../kit/materials.ts";
import { ball, bar, geometryOf, lathe, prism, run } from "../kit/shape.ts";
import { add, along, apart, carried, INCH, squareUnit, subtract, unit } from "../kit/space.ts";
import type { Part, Workshop } from "../part.ts";

/** How a rod end is built, as shares of its head's radius (common practice; the car gives the head alone). */
const ROD_END = {
  tubeFrom: 2.75,
  nut: 0.55,
  nutRadius: 0.72,
  shank: 0.43,
  ball: 0.72,
  bolt: 0.36,
  boltOut: 1.55,
  tab: 0.16,
};
const BUSH = 0.8 * INCH;

interface Joint {
  readonly pivot: Pivot;
  readonly rodEnd: RodEnd | undefined;
  readonly path: string;
  readonly radius: number;
  /** Members that end here: which, and whether it is their first end. */
  readonly ends: readonly { readonly member: number; readonly isFrom: boolean }[];
}

/** Arms and links: tubes, and at each pivot a rod end with its ball on its bolt, shank and jam nut. */
export function membersPart({ inks, sides }: Workshop): Part {
  const object = new Group();
  const fill = fillMaterial(inks);
  const outline = outlineMaterial(inks, 1);
  const materials = [fill, outline];
  const batch = (geometry: ConstructorParameters<typeof Batch>[0]) => new Batch(geometry, materials);
  const tubes = batch(geometryOf(bar(sides)));
  const nuts = batch(geometryOf(prism(6)));
  const heads = batch(geometryOf(headShape(sides)));
  const balls = batch(geometryOf(ball(sides)));
  const hinges = new Lines(inks, { colour: inks.uniforms.ink.value, width: 1.2, dash: DASH.hinge });
  const batches = [tubes, nuts, heads, balls];
  for (const each of batches) object.add(each.object);
  object.add(hinges.mesh);
  let corner: Corner | undefined;
  let joints: readonly Joint[] = [];

  return {
    object,
    show(frame) {
      if (corner !== frame.corner) {
        corner = frame.corner;
        joints = jointsOf(frame);
      }
      for (const each of batches) each.begin();
      hinges.begin();
      const ends = frame.corner.members.map((member) => placeMember(frame.position, member));
      frame.corner.members.forEach((member, index) => {
        placeTube(tubes, frame, member, ends[index]!, joints, index);
      });
      for (const joint of joints) placeJoint({ tubes, nuts, heads, balls }, frame, joint, ends);
      for (const arm of frame.corner.arms) {
        // A hinge line runs a little past the bushings, as on a drawing.
        const spread = hingeSpread(joints, arm.body, frame);
        if (!spread) continue;
        const axis = unit(subtract(spread[1], spread[0]));
        hinges.segment(along(spread[0], axis, -3 * INCH), along(spread[1], axis, 3 * INCH));
      }
      hinges.end();
      for (const each of batches) each.end();
    },
    dispose() {
      for (const each of batches) each.dispose();
      hinges.dispose();
      fill.dispose();
      outline.dispose();
    },
  };
}

function jointsOf({ corner, car }: Frame): readonly Joint[] {
  return corner.pivots.map((pivot) => {
    const rodEnd = car.rodEnds.find((end) => end.pivot === pivot.id);
    const ends = corner.members.flatMap((member, index) => [
      ...(apart(member.from.point, pivot.point) < 1e-6 ? [{ member: index, isFrom: true }] : []),
      ...(apart(member.to.point, pivot.point) < 1e-6 ? [{ member: index, isFrom: false }] : []),
    ]);
    return { pivot, rodEnd, path: pivotPath(car, pivot.id), radius: rodEnd?.headRadius ?? BUSH, ends };
  });
}

type Ends = readonly [Vec3, Vec3];

function placeTube(
  tubes: Batch,
  frame: Frame,
  member: Member,
  [a, b]: Ends,
  joints: readonly Joint[],
  index: number,
): void {
  const axis = unit(subtract(b, a));
  const trim = (isFrom: boolean): number => {
    const joint = joints.find(({ ends }) => ends.some((end) => end.member === index && end.isFrom === isFrom));
    return joint ? joint.radius * (joint.rodEnd ? ROD_END.tubeFrom : 0.7) : 0;
  };
  const from = along(a, axis, trim(true));
  const to = along(b, axis, -trim(false));
  tubes.between(from, to, member.diameter / 2, stateOf(frame, memberPath(frame, member)));
}

function memberPath({ car }: Frame, { id }: Member): string {
  if (car.linkage.kind === "five-link") {
    return `linkage.links[${car.linkage.links.findIndex(({ name }) => id === `links.${name}`)}]`;
  }
  return `linkage.${id}`;
}

interface Batches {
  readonly tubes: Batch;
  readonly nuts: Batch;
  readonly heads: Batch;
  readonly balls: Batch;
}

function placeJoint({ tubes, nuts, heads, balls }: Batches, frame: Frame, joint: Joint, ends: readonly Ends[]): void {
  const { pivot, rodEnd, radius, path } = joint;
  const at = mountNow(frame, { point: pivot.point, on: pivot.boltSide });
  const state: State = jointState(frame, joint, path);
  let away: Vec3 = { x: 0, y: 0, z: 0 };
  for (const { member, isFrom } of joint.ends) {
    const [from, to] = ends[member]!;
    away = add(away, unit(isFrom ? subtract(to, from) : subtract(from, to)));
  }
  const shank = unit(away);
  const designBolt = rodEnd?.boltAxis ?? hingeDirection(pivot);
  const bolt = directionNow(frame, designBolt, pivot.boltSide);
  const bore = squareUnit(boreNow(frame, pivot, designBolt, ends, joint), shank);
  heads.along(at, bore, radius, radius, state, shank);
  balls.along(at, bolt, radius * ROD_END.ball, radius * ROD_END.ball, state);
  const out = radius * ROD_END.boltOut;
  tubes.between(along(at, bolt, -out), along(at, bolt, out), radius * ROD_END.bolt, state);
  nuts.along(along(at, bolt, out - 0.2 * radius), bolt, radius * 0.62, radius * 0.45, state);
  nuts.along(along(at, bolt, -out - 0.25 * radius), bolt, radius * 0.62, radius * 0.45, state);
  // Tabs that take the bolt, to either side of the head.
  for (const side of [-1, 1]) {
    const inner = along(at, bolt, side * radius * 1.05);
    tubes.between(inner, along(inner, bolt, side * radius * ROD_END.tab), radius * 0.92, STATE.plain);
  }
  if (!rodEnd || joint.ends.length === 0) return;
  const tubeFrom = radius * ROD_END.tubeFrom;
  const nutFrom = tubeFrom - radius * ROD_END.nut;
  tubes.between(
    along(at, shank, radius * 0.8),
    along(at, shank, tubeFrom + radius * 0.4),
    radius * ROD_END.shank,
    state,
  );
  nuts.along(along(at, shank, nutFrom), shank, radius * ROD_END.nutRadius, radius * ROD_END.nut, STATE.plain, bore);
}

/** The bore of the head stays with the shank, so that bolt and head are seen to tilt against one another. */
function boreNow(frame: Frame, { shank }: Pivot, bolt: Vec3, ends: readonly Ends[], joint: Joint): Vec3 {
  if (shank.body !== "link") return directionNow(frame, bolt, shank.body);
  const end = joint.ends[0];
  if (!end) return bolt;
  const member = frame.corner.members[end.member]!;
  const [from, to] = ends[end.member]!;
  return carried(bolt, unit(subtract(member.to.point, member.from.point)), unit(subtract(to, from)));
}

const hingeDirection = ({ shank }: Pivot): Vec3 =>
  shank.body !== "link" && shank.hinge ? unit(shank.hinge) : { x: 1, y: 0, z: 0 };

function jointState(frame: Frame, { pivot }: Joint, path: string): State {
  const byPath = stateOf(frame, path);
  return byPath === STATE.plain ? stateOf(frame, `linkage.${pivot.id}`) : byPath;
}

/** The two chassis pivots of an arm that are farthest apart, where they are now. */
function hingeSpread(joints: readonly Joint[], body: string, frame: Frame): Ends | null {
  const mine = joints.filter(({ pivot }) => pivot.shank.body === body && pivot.boltSide === "chassis");
  const [first, last] = [mine[0], mine.at(-1)];
  if (!first || !last || first === last) return null;
  return [
    mountNow(frame, { point: first.pivot.point, on: "chassis" }),
    mountNow(frame, { point: last.pivot.point, on: "chassis" }),
  ];
}

/** A rod end's head about its bore (z): a ring with chamfered edges. */
const headShape = (sides: number) =>
  lathe(
    [
      run([0.62, -0.62], [0.88, -0.62]),
      run([0.88, -0.62], [1, -0.42]),
      run([1, -0.42], [1, 0.42]),
      run([1, 0.42], [0.88, 0.62]),
      run([0.88, 0.62], [0.62, 0.62]),
      run([0.62, 0.62], [0.62, -0.62]),
    ],
    sides,
  );
