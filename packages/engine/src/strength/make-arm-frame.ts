import type { ArmId, Car, Linkage } from "../car/car.ts";
import type { Section } from "../frames/section.ts";
import { add, between, distance, dot, scale, subtract, type Vec3 } from "../geometry/vec3.ts";
import type { Member } from "../linkage/kind.ts";
import { kindOf } from "../linkage/kinds.ts";
import type { ArmFrame, ArmMember, ArmNode, Attachment } from "./arm-frame.ts";
import type { GussetEntry, TubeEntry } from "./entry.ts";
import { type ArmPlace, placesOnArm } from "./places.ts";
import { downFrom, keptOffBungs, underTube } from "./under-tube.ts";

// Where a made-up frame's tubes stand is common practice, no source; the builder's own frame takes its place.
/** Where the outer cross tube of an arm with two outer pivots stands, of a leg's length: past the bungs. */
const OUTER_CROSS = 0.92;
/** Its inner one, where the inner pivots lie apart too. */
const INNER_CROSS = 1 - OUTER_CROSS;
/** Where an arm without shock and stop has its only one. */
const PLAIN_CROSS = 0.5;
/** Cross tubes nearer than this along the legs, m, are one: no room to weld two. */
const ONE_CROSS = 0.06;
/** Stations of a tube nearer than this, m, are one: a weld's width. */
const ONE_NODE = 0.012;
/** Along a gusset's weld, m. */
const ONE_WELD = 0.003;

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
  const plate =
    gusset && tube.gusset
      ? gussetStations(legs[gusset.leg]!, gusset.at, tube.gusset).map((at) =>
          mark(stations[gusset.leg]!, at, GUSSET, legs[gusset.leg]!, ONE_WELD),
        )
      : [];
  // Along each leg: where its second tube leaves it, the posts, where it comes back. Stations that fall together are one.
  const under = (tube.under ? postStations(legs, onLeg, onCross, crossings) : []).map((posts, index) => {
    const leg = legs[index]!;
    return posts.length === 0
      ? []
      : [0, ...posts, 1].map((at) => mark(stations[index]!, keptOffBungs(leg, at), SECOND_END, leg));
  });

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
  under.forEach((stops, leg) => {
    if (tube.under && stops.length > 0) {
      members.push(...underTube(legs[leg]!, stops, tube.under, tube.material, nodeAt));
    }
  });
  if (gusset && tube.gusset) members.push(...gussetMembers(legs[gusset.leg]!, plate, tube, tube.gusset, nodeAt));
  return { arm, isAssumed: true, nodes, members, attached };
}

/** Of each leg's length, where shock or stop press on it: they are what the second tube is for. */
function postStations(
  legs: readonly Member[],
  onLeg: readonly { readonly leg: number; readonly at: number; readonly place: ArmPlace }[],
  onCross: readonly { readonly crossing: number; readonly place: ArmPlace }[],
  crossings: readonly Crossing[],
): readonly (readonly number[])[] {
  const isPressed = ({ id }: ArmPlace): boolean => !id.startsWith("strap");
  const shared = onCross.filter(({ place }) => isPressed(place)).map(({ crossing }) => crossings[crossing]!.at);
  return legs.map((_, index) => {
    const own = onLeg.filter(({ leg, place }) => leg === index && isPressed(place)).map(({ at }) => at);
    return [...new Set([...own, ...shared])].sort((a, b) => a - b);
  });
}

export const armWords = (arm: ArmId): string => arm.replace("-", " ");

/** A gusset is welded all along: it is tied to its tube at this many places either way of the mount. */
const GUSSET_PIECES = 3;

/** From the gusset's inner end to its outer one, of the tube's length. */
function gussetStations({ from, to }: Member, at: number, { reach }: GussetEntry): readonly number[] {
  const share = reach / distance(from.point, to.point);
  return Array.from({ length: 2 * GUSSET_PIECES + 1 }, (_, i) => at + ((i - GUSSET_PIECES) / GUSSET_PIECES) * share)
    .map((each) => Math.min(0.97, Math.max(0.03, each)))
    .filter((each, index, all) => index === 0 || each > all[index - 1]!);
}

/** A plate on edge under the tube (over it would be the same), piece by piece. */
function gussetMembers(
  leg: Member,
  stations: readonly number[],
  tube: TubeEntry,
  { thickness, depth }: GussetEntry,
  nodeAt: (point: Vec3, label: string) => string,
): readonly ArmMember[] {
  const offset = scale(downFrom(leg), (leg.diameter + depth) / 2);
  const ids = [...new Set(stations)].map((at) => nodeAt(onMember(leg, at), ""));
  return ids.slice(1).map(
    (to, i): ArmMember => ({
      id: `${leg.id} gusset ${i + 1}`,
      label: `${leg.label}, gusset`,
      from: ids[i]!,
      to,
      section: { shape: "flat-bar", width: thickness, depth },
      material: tube.material,
      role: "gusset",
      offsetFrom: offset,
      offsetTo: offset,
    }),
  );
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
  const isWide = distance(a.from.point, b.from.point) > ONE_CROSS;
  const least = isWide ? 0.15 : 0.3;
  for (const id of ["shock.lower", "shock.upper", "bumpStop.strikes", "bumpStop.base"]) {
    const mount = mounts.find((each) => each.id === id);
    if (!mount) continue;
    const at = Math.min(most, Math.max(least, foot(mount.point, inner, outer).at));
    push(at, `the cross tube by ${mount.label}`);
  }
  if (isOpen) push(OUTER_CROSS, "the cross tube at its outer end");
  // Without it each of two side by side tubes alone would have to bear what one inner rod end takes fore and aft.
  if (isOpen && isWide) push(INNER_CROSS, "the cross tube at its inner end");
  if (found.length === 0) push(PLAIN_CROSS, "the cross tube in its middle");
  return found.sort((one, other) => one.at - other.at);
}

const onMember = ({ from, to }: Member, at: number): Vec3 => between(from.point, to.point, at);

const SECOND_END = "the second tube's end";
const GUSSET = "the gusset";

/** Marks a station, or joins it to one that is there; a mount's name goes before a cross tube's. Gives where it came to stand. */
function mark(stations: Map<number, string>, at: number, label: string, { from, to }: Member, one = ONE_NODE): number {
  const length = distance(from.point, to.point);
  const near = [...stations.keys()].find((each) => Math.abs(each - at) * length < one);
  if (near === undefined) {
    stations.set(at, label);
    return at;
  }
  const isMount = label !== SECOND_END && label !== GUSSET;
  if (isMount && stations.get(near)!.startsWith("the cross tube")) stations.set(near, label);
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
