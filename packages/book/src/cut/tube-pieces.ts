import {
  type ArmFrame,
  type ArmMember,
  addScaled,
  type Corner,
  cross,
  distance,
  dot,
  lengthOf,
  type linkTubes,
  type RodEnd,
  subtract,
  unitVector,
  type Vec3,
} from "@armwright/engine";
import { copeLine, usualSeam } from "../cope/cope-line.ts";
import { bungSetBack } from "./bung-set-back.ts";
import type { CopeEnd, TubeEnd, TubePiece } from "./tube-piece.ts";

type LinkTubes = ReturnType<typeof linkTubes>;

/**
 * Every round tube of the left corner as it is cut: links between their rod ends, and the arms' frames, whose members are put
 * together again where they run straight on. Where tubes meet, the one that runs on is whole and the others sit on it; where
 * only ends meet, the heavier one goes to the pivot's bung.
 */
export function tubePieces(corner: Corner, frames: readonly ArmFrame[], links: LinkTubes): readonly TubePiece[] {
  return [...frames.flatMap((frame) => withEndsMet(armPieces(frame, corner))), ...linkPieces(corner, links)];
}

/**
 * Copes are reckoned onto tubes without end. Where one reaches past the end of the tube that it sits on (an apex: both axes
 * aim at one ball, and the tube ends short of it with its bung), that is kept with the cope.
 */
function withEndsMet(pieces: readonly TubePiece[]): TubePiece[] {
  const met = (end: TubeEnd): TubeEnd =>
    end.kind === "cope" ? { ...end, pastEndOf: end.onto.map(({ id }) => id).filter(isPast(end, pieces)) } : end;
  return pieces.map((piece) => ({ ...piece, from: met(piece.from), to: met(piece.to) }));
}

/** Whether a cope touches a tube beyond that tube's ends by more than a saw cut's width. */
const isPast =
  (end: CopeEnd, pieces: readonly TubePiece[]) =>
  (id: string, which: number): boolean => {
    const tube = pieces.find((piece) => piece.id === id);
    if (!tube) return false;
    const way = unitVector(subtract(tube.to.point, tube.from.point));
    const [first, last] = [shortBy(tube.from), tube.centres - shortBy(tube.to)];
    const side = cross(end.outward, end.seam);
    return end.line.some(({ angle, cut, meets }) => {
      if (cut === null || meets !== which) return false;
      const radial = addScaled(
        addScaled({ x: 0, y: 0, z: 0 }, end.seam, end.cut.outerRadius * Math.cos(angle)),
        side,
        end.cut.outerRadius * Math.sin(angle),
      );
      const touched = addScaled(addScaled(end.cut.origin, radial, 1), end.outward, cut);
      const at = dot(subtract(touched, tube.from.point), way);
      return at < first - SAW || at > last + SAW;
    });
  };

/** Width of a saw cut, m. */
const SAW = 0.003;

/** How far a tube ends short of its end's point, m. */
const shortBy = (end: TubeEnd): number =>
  end.kind === "bung" ? end.setBack.length : end.kind === "cope" ? -end.tip : 0;

function linkPieces({ members, car }: Corner, links: LinkTubes): TubePiece[] {
  return members
    .filter(({ body }) => body === "link")
    .flatMap((member): TubePiece[] => {
      const tube = links[member.id];
      if (!tube) return [];
      const end = (which: "inner" | "outer", point: Vec3): TubeEnd =>
        bungEnd(`${member.id}.${which}`, `${member.label}, ${which}`, point, car.rodEnds);
      const [from, to] = [end("inner", member.from.point), end("outer", member.to.point)];
      return [
        finished({
          id: member.id,
          name: member.label,
          part: member.label,
          diameter: member.diameter,
          wall: tube.wall,
          material: tube.material.name,
          density: tube.material.density,
          from,
          to,
          isAssumed: false,
        }),
      ];
    });
}

/** Members in one line, from node to node. */
interface Chain {
  readonly first: ArmMember;
  readonly nodes: readonly string[];
}

function armPieces(frame: ArmFrame, corner: Corner): TubePiece[] {
  const at = new Map(frame.nodes.map(({ id, point, label }) => [id, { point, label }]));
  const round = frame.members.filter(({ section }) => section.shape === "round-tube");
  const chains = chainsOf(round, (id) => at.get(id)!.point);
  const tubes = chains.map((chain) => ({
    chain,
    start: at.get(chain.nodes[0]!)!.point,
    stop: at.get(chain.nodes.at(-1)!)!.point,
    weight: weightOf(chain.first),
  }));
  // Heavier tubes are laid first; those of one weight in the frame's own order.
  const order = tubes
    .map((tube, index) => ({ ...tube, index }))
    .sort((a, b) => b.weight - a.weight || a.index - b.index);
  return order.flatMap((tube, rank): TubePiece[] => {
    const { section } = tube.chain.first;
    if (section.shape !== "round-tube") return [];
    const makeEnd = (node: string, point: Vec3, other: Vec3): TubeEnd => {
      const through = order.filter((each) => each !== tube && each.chain.nodes.slice(1, -1).includes(node));
      const before = order.slice(0, rank).filter(({ chain }) => chain.nodes[0] === node || chain.nodes.at(-1) === node);
      const onto = through.length > 0 ? through : before;
      const place = at.get(node)!;
      const label = place.label;
      if (onto.length > 0) {
        return copeEnd(
          label,
          point,
          unitVector(subtract(point, other)),
          onto.map((each) => ({
            ...roundTube(each.start, each.stop, each.chain.first),
            id: each.chain.first.id,
            name: each.chain.first.label,
          })),
          section.diameter,
          section.wall,
        );
      }
      const pivot = corner.pivots.find((each) => distance(each.point, point) < 1e-6);
      return pivot ? bungEnd(pivot.id, pivot.label, point, corner.car.rodEnds) : { kind: "square", point, at: label };
    };
    const from = makeEnd(tube.chain.nodes[0]!, tube.start, tube.stop);
    const to = makeEnd(tube.chain.nodes.at(-1)!, tube.stop, tube.start);
    const { material, label, id } = tube.chain.first;
    return [
      finished({
        id,
        name: label,
        part: frame.arm.replace("-", " "),
        diameter: section.diameter,
        wall: section.wall,
        material: material.name,
        density: material.density,
        ...inStep(from, to),
        isAssumed: frame.isAssumed,
      }),
    ];
  });
}

/** Coped at both ends: both papers' seams on one straight line along the tube. */
function inStep(from: TubeEnd, to: TubeEnd): { readonly from: TubeEnd; readonly to: TubeEnd } {
  if (from.kind !== "cope" || to.kind !== "cope") return { from, to };
  return { from, to: copedAgain(to, from.seam) };
}

function copedAgain(end: CopeEnd, seam: Vec3): CopeEnd {
  const line = copeLine({ ...end.cut, seam });
  return { ...end, seam, line, cut: { ...end.cut, seam } };
}

function finished(piece: Omit<TubePiece, "centres" | "length">): TubePiece {
  const centres = distance(piece.to.point, piece.from.point);
  return { ...piece, centres, length: Math.max(centres - shortBy(piece.from) - shortBy(piece.to), 0) };
}

function bungEnd(pivot: string, at: string, point: Vec3, rodEnds: readonly RodEnd[]): TubeEnd {
  const rodEnd = rodEnds.find((each) => each.pivot === pivot);
  return { kind: "bung", pivot, at, point, setBack: bungSetBack(rodEnd ?? {}), hand: rodEnd?.hand ?? "right" };
}

function copeEnd(
  at: string,
  point: Vec3,
  outward: Vec3,
  onto: CopeEnd["onto"],
  diameter: number,
  wall: number,
): TubeEnd {
  const seam = usualSeam(outward, onto[0]!.direction);
  const cut = { origin: point, outward, seam, outerRadius: diameter / 2, wall, onto };
  const line = copeLine(cut);
  const cuts = line.flatMap((place) => place.cut ?? []);
  if (cuts.length === 0) return { kind: "square", point, at };
  const slant = lengthOf(cross(outward, onto[0]!.direction));
  return {
    kind: "cope",
    at,
    point,
    onto,
    outward,
    seam,
    cut,
    line,
    tip: Math.max(...cuts),
    angle: Math.asin(Math.min(1, slant)),
    pastEndOf: [],
  };
}

function roundTube(start: Vec3, stop: Vec3, { section }: ArmMember) {
  const diameter = section.shape === "round-tube" ? section.diameter : 0;
  return { point: start, direction: unitVector(subtract(stop, start)), radius: diameter / 2 };
}

const weightOf = ({ section }: ArmMember): number =>
  section.shape === "round-tube" ? section.wall * (section.diameter - section.wall) : 0;

/** Members of one section that go straight on into each other are one tube; told by their ends, the longest runs first found. */
function chainsOf(members: readonly ArmMember[], pointOf: (id: string) => Vec3): Chain[] {
  const left = new Set(members);
  const chains: Chain[] = [];
  for (const member of members) {
    if (!left.delete(member)) continue;
    const nodes = [member.from, member.to];
    const heading = unitVector(subtract(pointOf(member.to), pointOf(member.from)));
    const grow = (end: "first" | "last"): boolean => {
      const node = end === "first" ? nodes[0]! : nodes.at(-1)!;
      for (const next of left) {
        const other = next.from === node ? next.to : next.to === node ? next.from : undefined;
        if (other === undefined || !isSameTube(member, next)) continue;
        const way = subtract(pointOf(other), pointOf(node));
        const onward = end === "last" ? heading : addScaled({ x: 0, y: 0, z: 0 }, heading, -1);
        if (lengthOf(subtract(unitVector(way), onward)) > STRAIGHT) continue;
        left.delete(next);
        if (end === "first") nodes.unshift(other);
        else nodes.push(other);
        return true;
      }
      return false;
    };
    while (grow("last"));
    while (grow("first"));
    chains.push({ first: member, nodes });
  }
  return chains;
}

/** Directions nearer than this go straight on. */
const STRAIGHT = 1e-4;

const isSameTube = (a: ArmMember, b: ArmMember): boolean =>
  a.section.shape === "round-tube" &&
  b.section.shape === "round-tube" &&
  a.section.diameter === b.section.diameter &&
  a.section.wall === b.section.wall &&
  a.material.name === b.material.name;
