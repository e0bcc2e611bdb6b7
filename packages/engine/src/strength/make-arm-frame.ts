import type { ArmId, Car, Linkage } from "../car/car.ts";
import type { Section } from "../frames/section.ts";
import { add, between, cross, distance, dot, scale, subtract, UP, unit, type Vec3 } from "../geometry/vec3.ts";
import type { Member } from "../linkage/kind.ts";
import { kindOf } from "../linkage/kinds.ts";
import type { ArmFrame, ArmMember, ArmNode, Attachment } from "./arm-frame.ts";
import type { GussetEntry, TubeEntry } from "./entry.ts";
import { type ArmPlace, placesOnArm } from "./places.ts";

/** Where the outer cross tube of an arm with two outer pivots stands, of a leg's length. */
const OUTER_CROSS = 0.92;
/** Where an arm without shock and stop has its only one. */
const PLAIN_CROSS = 0.5;
/** Cross tubes nearer than this along the legs, m, are one: no room to weld two. */
const ONE_CROSS = 0.06;
/** Stations of a tube nearer than this, m, are one. */
const ONE_NODE = 0.012;

/**
 * A starting frame out of the car's points: the arm's tubes as its members are, a cross tube where the shock and where the
 * bump stop bear on it, one near the outer pivots, and every mount stiffly tied to the nearest tube. To be replaced by the
 * builder's own.
 */
export function makeArmFrame(car: Car, arm: ArmId, tube: TubeEntry): ArmFrame {
  const legs = kindOf<Linkage>(car.linkage)
    .members(car.linkage)
    .filter(({ body }) => body === arm);
  const places = placesOnArm(car, arm);
  const mounts = places.filter(({ isPivot }) => !isPivot);
  const stations = legs.map(() => new Map<number, string>());
  const crossings = legs.length === 2 ? crossStations(legs[0]!, legs[1]!, mounts) : [];
  for (const { at, label } of crossings) for (const station of stations) mark(station, at, label, legs[0]!);

  // Mounts go to the nearest tube: a leg, or a cross tube, which is then divided there.
  const onCross: { readonly crossing: number; readonly at: number; readonly place: ArmPlace }[] = [];
  const onLeg: { readonly leg: number; readonly at: number; readonly place: ArmPlace }[] = [];
  for (const place of mounts) {
    const toLegs = legs.map(({ from, to }, leg) => ({ leg, ...foot(place.point, from.point, to.point) }));
    const toCross = crossings.map(({ at }, crossing) => ({
      crossing,
      ...foot(place.point, onMember(legs[0]!, at), onMember(legs[1]!, at)),
    }));
    const leg = toLegs.reduce((best, each) => (each.off < best.off ? each : best));
    const nearest = toCross.reduce<(typeof toCross)[number] | null>(
      (best, each) => (!best || each.off < best.off ? each : best),
      null,
    );
    // A cross tube only where it is clearly nearer, and the foot is not at a leg anyway.
    if (nearest && nearest.off < leg.off - ONE_NODE && nearest.at > 0.04 && nearest.at < 0.96) {
      onCross.push({ crossing: nearest.crossing, at: nearest.at, place });
    } else {
      onLeg.push({ leg: leg.leg, at: mark(stations[leg.leg]!, leg.at, place.label, legs[leg.leg]!), place });
    }
  }
  const gusset = tube.gusset && onLeg.find(({ place }) => place.id === tube.gusset!.at);
  if (gusset && tube.gusset) {
    const { from, to } = legs[gusset.leg]!;
    const share = tube.gusset.reach / distance(from.point, to.point);
    for (const side of [-1, 1]) {
      const at = Math.min(0.97, Math.max(0.03, gusset.at + side * share));
      mark(stations[gusset.leg]!, at, "the gusset's end", legs[gusset.leg]!);
    }
  }

  const nodes: ArmNode[] = [];
  const members: ArmMember[] = [];
  const pivotIds = places.filter(({ isPivot }) => isPivot);
  const nodeAt = (point: Vec3, label: string): string => {
    const found = nodes.find((node) => distance(node.point, point) < 1e-6);
    if (found) return found.id;
    const pivot = pivotIds.find((each) => distance(each.point, point) < 1e-6);
    const id = pivot?.id ?? `${arm} ${nodes.length + 1}`;
    nodes.push({ id, label: pivot?.label ?? label, point });
    return id;
  };
  const round = (diameter: number, wall: number): Section => ({
    shape: "round-tube",
    diameter,
    wall: Math.min(wall, diameter / 2),
  });
  const chain = (id: string, label: string, ids: readonly string[], section: Section, role: "main" | "cross"): void => {
    for (let i = 1; i < ids.length; i += 1) {
      members.push({
        id: `${id} ${i}`,
        label,
        from: ids[i - 1]!,
        to: ids[i]!,
        section,
        material: tube.material,
        role,
      });
    }
  };
  legs.forEach((leg, index) => {
    const inside = [...stations[index]!].sort(([a], [b]) => a - b);
    const ids = [
      nodeAt(leg.from.point, "its inner end"),
      ...inside.map(([at, label]) => nodeAt(onMember(leg, at), label)),
      nodeAt(leg.to.point, leg.id.startsWith("trailingArm") ? "the hub" : "its outer end"),
    ];
    chain(leg.id, leg.label, ids, round(leg.diameter, tube.wall), "main");
  });
  const crossSection = round(tube.crossDiameter, tube.crossWall);
  crossings.forEach(({ at, label }, crossing) => {
    const ends = [onMember(legs[0]!, at), onMember(legs[1]!, at)] as const;
    const inside = onCross
      .filter((each) => each.crossing === crossing)
      .sort((a, b) => a.at - b.at)
      .map((each) => nodeAt(between(ends[0], ends[1], each.at), each.place.label));
    const ids = [nodeAt(ends[0], label), ...inside, nodeAt(ends[1], label)];
    chain(
      `cross tube ${crossing + 1}`,
      `${armWords(arm)}, cross tube ${label.replace("the cross tube ", "")}`,
      ids,
      crossSection,
      "cross",
    );
  });

  const attached: Attachment[] = [
    ...pivotIds.map(({ id, point }) => ({ place: id, node: nodeAt(point, id), point })),
    ...onLeg.map(({ leg, at, place }) => ({
      place: place.id,
      node: nodeAt(onMember(legs[leg]!, at), place.label),
      point: place.point,
    })),
    ...onCross.map(({ crossing, at, place }) => {
      const { at: along } = crossings[crossing]!;
      const point = between(onMember(legs[0]!, along), onMember(legs[1]!, along), at);
      return { place: place.id, node: nodeAt(point, place.label), point: place.point };
    }),
  ];
  if (gusset && tube.gusset) members.push(...gussetMembers(legs[gusset.leg]!, gusset.at, tube, tube.gusset, nodes));
  return { arm, isAssumed: true, nodes, members, attached };
}

export const armWords = (arm: ArmId): string => arm.replace("-", " ");

/** Two plates under the tube (over it where the load pulls up is the same), from the place to its reach either way. */
function gussetMembers(
  leg: Member,
  at: number,
  tube: TubeEntry,
  { thickness, depth, reach }: GussetEntry,
  nodes: readonly ArmNode[],
): readonly ArmMember[] {
  const along = unit(subtract(leg.to.point, leg.from.point));
  const down = scale(unit(cross(cross(along, UP), along)), -1);
  const offset = scale(down, (leg.diameter + depth) / 2);
  const total = distance(leg.from.point, leg.to.point);
  const middle = nodes.find(({ point }) => distance(point, onMember(leg, at)) < 1e-6)!;
  return [-1, 1].map((side): ArmMember => {
    const end = onMember(leg, Math.min(0.97, Math.max(0.03, at + (side * reach) / total)));
    const node = nodes.reduce((best, each) => (distance(each.point, end) < distance(best.point, end) ? each : best));
    return {
      id: `${leg.id} gusset ${side < 0 ? "in" : "out"}`,
      label: `${leg.label}, gusset`,
      from: middle.id,
      to: node.id,
      section: { shape: "flat-bar", width: thickness, depth },
      material: tube.material,
      role: "gusset",
      offsetFrom: offset,
      offsetTo: offset,
    };
  });
}

interface Crossing {
  /** Of the legs' length from the inner end. */
  readonly at: number;
  readonly label: string;
}

function crossStations(a: Member, b: Member, mounts: readonly ArmPlace[]): readonly Crossing[] {
  const isOpen = distance(a.to.point, b.to.point) > ONE_CROSS;
  const length = Math.min(distance(a.from.point, a.to.point), distance(b.from.point, b.to.point));
  const found: Crossing[] = [];
  const push = (at: number, label: string): void => {
    if (found.every((each) => Math.abs(each.at - at) * length > ONE_CROSS)) found.push({ at, label });
  };
  const inner = between(a.from.point, b.from.point, 0.5);
  const outer = between(a.to.point, b.to.point, 0.5);
  const most = isOpen ? OUTER_CROSS : 0.8;
  const least = distance(a.from.point, b.from.point) > ONE_CROSS ? 0.15 : 0.3;
  for (const id of ["shock.lower", "shock.upper", "bumpStop.strikes", "bumpStop.base"]) {
    const mount = mounts.find((each) => each.id === id);
    if (!mount) continue;
    const at = Math.min(most, Math.max(least, foot(mount.point, inner, outer).at));
    push(at, `the cross tube by ${mount.label}`);
  }
  if (isOpen) push(OUTER_CROSS, "the cross tube at its outer end");
  if (found.length === 0) push(PLAIN_CROSS, "the cross tube in its middle");
  return found.sort((one, other) => one.at - other.at);
}

const onMember = ({ from, to }: Member, at: number): Vec3 => between(from.point, to.point, at);

/** Marks a station, or joins it to one that is there; a mount's name goes before a cross tube's. Gives where it came to stand. */
function mark(stations: Map<number, string>, at: number, label: string, { from, to }: Member): number {
  const length = distance(from.point, to.point);
  const near = [...stations.keys()].find((each) => Math.abs(each - at) * length < ONE_NODE);
  if (near === undefined) {
    stations.set(at, label);
    return at;
  }
  if (stations.get(near)!.startsWith("the cross tube")) stations.set(near, label);
  return near;
}

/** Nearest point of a segment, kept off its ends by a node's width: where along, and how far off. */
function foot(point: Vec3, from: Vec3, to: Vec3): { readonly at: number; readonly off: number } {
  const d = subtract(to, from);
  const size = dot(d, d);
  const margin = size > 0 ? (2 * ONE_NODE) / Math.sqrt(size) : 0;
  const at = Math.min(1 - margin, Math.max(margin, size > 0 ? dot(subtract(point, from), d) / size : 0));
  return { at, off: distance(point, add(from, scale(d, at))) };
}
