import {
  area,
  type Box,
  bar,
  boxesAlong,
  circle,
  type DimensionWish,
  type GroupPrimitive,
  grown,
  line,
  makePlacement,
  type NoteRoom,
  type Primitive,
  placeDimension,
  polyline,
  type Spot,
  spot,
  stroke,
  text,
  widthOf,
} from "@armwright/drawing";
import { addScaled, distance, subtract, unitVector, type Vec3 } from "@armwright/engine";
import type { TubeEnd, TubePiece } from "../cut/tube-piece.ts";
import type { JigPoint } from "../jig/jig-part.ts";
import { PEN } from "./leaf.ts";
import { norths, type Side } from "./side.ts";
import { namedRatio } from "./true-scale.ts";

export interface PartDrawing {
  readonly tubes: readonly TubePiece[];
  readonly points: readonly JigPoint[];
  /** What each tube is called on the cut list; none where left out. */
  readonly numbers?: ReadonlyMap<TubePiece, number>;
  /** Lines of no thickness: between places that belong together, or a flat face seen from its edge. */
  readonly lines?: readonly PartLine[];
  /** Measures that are wanted, most needful first: between two points, the way a tape or a square reads them in this view. */
  readonly measures: readonly Measure[];
}

export interface PartLine {
  readonly from: Vec3;
  readonly to: Vec3;
  readonly as: "axis" | "reach" | "face";
}

export interface Measure {
  readonly from: Vec3;
  readonly to: Vec3;
  readonly words: string;
  readonly along?: "level" | "upright";
}

/** One welded part in one view, to a named scale: tubes with their bungs, places with their marks, dimensions where they find room. */
export function partView(
  part: PartDrawing,
  side: Side,
  box: Box,
): { readonly parts: Primitive[]; readonly ratio: number } {
  const flat = (point: Vec3): Spot => spot(side.across(point), -side.up(point));
  const lines = part.lines ?? [];
  const all = [
    ...part.points.map(({ point }) => point),
    ...[...part.tubes, ...lines.map(({ from, to }) => ({ from: { point: from }, to: { point: to } }))].flatMap(
      ({ from, to }) => [from.point, to.point],
    ),
  ].map(flat);
  const xs = all.map(({ x }) => x);
  const ys = all.map(({ y }) => y);
  const wide = Math.max(...xs) - Math.min(...xs);
  const high = Math.max(...ys) - Math.min(...ys);
  // Beside the norths, under the title, with room round the part for dimensions or for marks alone.
  const clear = {
    x: side.toward === "left" ? box.x : box.x + NORTHS,
    y: box.y + TITLE,
    width: box.width - NORTHS,
    height: box.height - TITLE,
  };
  const [besides, above] = margins(part.measures);
  const ratio = namedRatio(
    Math.max((wide * 1000) / Math.max(clear.width - besides, 10), (high * 1000) / Math.max(clear.height - above, 10)),
  );
  const scale = 1000 / ratio;
  const middle = spot((Math.max(...xs) + Math.min(...xs)) / 2, (Math.max(...ys) + Math.min(...ys)) / 2);
  const at = (point: Vec3): Spot => {
    const p = flat(point);
    return spot(
      clear.x + clear.width / 2 + (p.x - middle.x) * scale,
      clear.y + clear.height / 2 + (p.y - middle.y) * scale,
    );
  };
  const room = roomIn(box, part, side, at, scale);
  const tubes = [...part.tubes].sort((a, b) => depthOf(b, side) - depthOf(a, side));
  const parts: Primitive[] = [
    text("title", spot(box.x + 1, box.y + 4), `${side.title}, 1 : ${ratio}`, { ink: "ink-2" }),
    ...norths(side, northsFrom(side, box), box.y + box.height),
    ...lines.map(({ from, to, as }) => stroke("part-line", at(from), at(to), LINE_STYLES[as])),
    ...tubes.flatMap((tube) => tubeParts(tube, at, scale)),
    ...part.points.flatMap(({ point }) => placeParts(at(point))),
  ];
  const dimensions: GroupPrimitive[] = [];
  for (const measure of part.measures) {
    const placed = placeDimension(wishOf(measure, side, at), room, PEN);
    if (!placed) continue;
    dimensions.push(placed);
    for (const [from, to] of straightLines(placed)) room.all.takeLine(from, to, 0.3);
  }
  // All lines first: an extension line is broken where another dimension's figures stand in it.
  parts.push(...dimensions.map(withoutWords), ...dimensions.flatMap(wordsOf));
  parts.push(...tubes.flatMap((tube) => balloon(tube, tubes, part, side, at, scale, room)));
  // Last, so that no extension line runs through a mark.
  parts.push(...markParts(part.points, side, at, room));
  return { parts, ratio };
}

/** Along a tube, where its number may stand: the middle first. */
const ALONG_TUBE = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8];

/** A tube's number in a ring on the tube itself, where no nearer tube hides it; none in a view that does not show it. */
function balloon(
  tube: TubePiece,
  tubes: readonly TubePiece[],
  { numbers, points }: PartDrawing,
  side: Side,
  at: (point: Vec3) => Spot,
  scale: number,
  room: NoteRoom,
): Primitive[] {
  const number = numbers?.get(tube);
  if (number === undefined) return [];
  const places = points.map(({ point }) => at(point));
  const run = subtract(tube.to.point, tube.from.point);
  const nearer = tubes.filter((other) => other !== tube && depthOf(other, side) < depthOf(tube, side));
  const isHidden = (c: Spot): boolean =>
    nearer.some(({ from, to, diameter }) => gapToLine(c, at(from.point), at(to.point)) < (diameter / 2) * scale + 0.5);
  for (const share of ALONG_TUBE) {
    const c = at(addScaled(tube.from.point, run, share));
    const box = { x: c.x - RING, y: c.y - RING, width: 2 * RING, height: 2 * RING };
    const isOnPlace = places.some((place) => Math.hypot(place.x - c.x, place.y - c.y) < RING + 2.4);
    if (isHidden(c) || isOnPlace || !room.words.isFree(box)) continue;
    room.words.take(box);
    room.all.take(box);
    return [
      area("number", circle(c, RING), { weight: "thin" }),
      text("number", spot(c.x, c.y + 1.35), String(number), { anchor: "middle", ink: "ink", bold: true }),
    ];
  }
  return [];
}

/** Radius of a number's ring, mm. */
const RING = 2.7;

/** How far a spot is from a straight line between two others, mm. */
function gapToLine(c: Spot, a: Spot, b: Spot): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const length = dx * dx + dy * dy;
  const t = length === 0 ? 0 : Math.min(1, Math.max(0, ((c.x - a.x) * dx + (c.y - a.y) * dy) / length));
  return Math.hypot(c.x - a.x - t * dx, c.y - a.y - t * dy);
}

/** Room beside and above the part for its dimensions, mm, both sides together. */
function margins(measures: readonly Measure[]): readonly [besides: number, above: number] {
  const count = (way: Measure["along"]): number => measures.filter(({ along }) => along === way).length;
  const slanting = count(undefined);
  return [Math.min(18 + 10 * count("upright") + 6 * slanting, 60), Math.min(16 + 5 * (count("level") + slanting), 40)];
}

const withoutWords = (dimension: GroupPrimitive): GroupPrimitive => ({
  ...dimension,
  parts: dimension.parts.filter(({ shape }) => shape !== "text"),
});

const wordsOf = ({ parts }: GroupPrimitive): Primitive[] =>
  parts.flatMap((each) => (each.shape === "text" ? [{ ...each, halo: "paper" as const }] : []));

/** Both ends of each straight line of a dimension, its extension lines with them. */
const straightLines = ({ parts }: GroupPrimitive): (readonly [Spot, Spot])[] =>
  parts.flatMap((each) => {
    if (each.shape !== "line" || each.path.length !== 2) return [];
    const [from, to] = each.path;
    return from && to && from.to !== "close" && to.to !== "close" ? [[from.at, to.at] as const] : [];
  });

/** Measures that read the same the same way are one, with the marks of all. */
export function mergedMeasures(
  measures: readonly (Omit<Measure, "words"> & { readonly mark: string; readonly reads: string })[],
): Measure[] {
  const found = new Map<string, Measure & { readonly marks: string; readonly reads: string }>();
  for (const { mark, reads, ...measure } of measures) {
    const key = `${measure.along} ${reads}`;
    const before = found.get(key);
    const marks = before ? `${before.marks} ${mark}` : mark;
    found.set(key, { ...(before ?? measure), marks, reads, words: `${marks} ${reads.replace("−", "")}` });
  }
  return [...found.values()].map(({ marks: _, reads: __, ...measure }) => measure);
}

/** Kept free beside a view for its norths and at its top for its title, mm. */
const NORTHS = 20;
const TITLE = 6;

/** The norths stand on the side away from where the level one points: there a part has its first places and most dimensions. */
const northsFrom = ({ toward }: Side, { x, width }: Box): number => (toward === "left" ? x + width - NORTHS - 2 : x);

/** A right part's sheet is its left one's in a mirror, down to where dimensions and marks are tried first. */
const mirrored = ({ toward }: Side, across: number): number => (toward === "left" ? -across : across);

const LINE_STYLES = {
  axis: { weight: "thin", dash: "centre", ink: "ink-2" },
  reach: { weight: "visible", ink: "pencil" },
  face: { weight: "outline" },
} as const satisfies Readonly<Record<PartLine["as"], object>>;

const depthOf = ({ from, to }: TubePiece, side: Side): number => (side.depth(from.point) + side.depth(to.point)) / 2;

function roomIn(box: Box, part: PartDrawing, side: Side, at: (point: Vec3) => Spot, scale: number): NoteRoom {
  const bounds = grown(box, -1);
  const room = { all: makePlacement(bounds), words: makePlacement(bounds), parts: makePlacement(bounds) };
  const corners: readonly Box[] = [
    // Where the title stands, and its mirror image, so that left and right have the same room.
    { x: box.x, y: box.y, width: 46, height: 6 },
    { x: box.x + box.width - 46, y: box.y, width: 46, height: 6 },
    { x: northsFrom(side, box), y: box.y + box.height - 18, width: NORTHS + 2, height: 18 },
  ];
  for (const placement of [room.all, room.words]) for (const corner of corners) placement.take(corner);
  for (const { from, to, diameter } of part.tubes) {
    for (const strip of boxesAlong(at(from.point), at(to.point), (diameter / 2) * scale + 1)) room.all.take(strip);
  }
  for (const { from, to } of part.lines ?? []) {
    // Dimensions may cross such a line, no words may.
    for (const strip of boxesAlong(at(from), at(to), 0.7)) room.all.take(strip);
  }
  for (const { point } of part.points) {
    const c = at(point);
    room.all.take({ x: c.x - 2.4, y: c.y - 2.4, width: 4.8, height: 4.8 });
  }
  return room;
}

/** A tube as two edges with paper between, its bungs as narrower ends, its rod ends as the line to the ball. */
function tubeParts({ from, to, diameter }: TubePiece, at: (point: Vec3) => Spot, scale: number): Primitive[] {
  const heading = unitVector(subtract(to.point, from.point));
  const start = addScaled(from.point, heading, shortBy(from));
  const stop = addScaled(to.point, heading, -shortBy(to));
  const half = (diameter / 2) * scale;
  const [a, b] = [at(start), at(stop)];
  const ends = [[from, start] as const, [to, stop] as const].flatMap(([end, face]): Primitive[] =>
    end.kind === "bung"
      ? [
          stroke("rod-end", at(face), at(end.point), { weight: "visible" }),
          area(
            "bung",
            bar(
              at(face),
              at(addScaled(face, unitVector(subtract(end.point, face)), Math.min(0.006, shortBy(end) / 3))),
              half * 1.08,
            ),
            {
              weight: "thin",
            },
          ),
        ]
      : [],
  );
  // Seen along its length a tube is its ring.
  if (Math.hypot(b.x - a.x, b.y - a.y) < half * 0.5) {
    return [area("tube", circle(a, half), { hatch: "cut" }), ...ends];
  }
  return [
    area("tube", bar(a, b, half), { weight: "visible" }),
    stroke("tube", a, b, { weight: "hair", dash: "centre", ink: "ink-2" }),
    ...ends,
  ];
}

function shortBy(end: TubeEnd): number {
  if (end.kind === "bung") return end.setBack.length;
  return end.kind === "cope" ? Math.max(-end.tip, 0) : 0;
}

const placeParts = (c: Spot): Primitive[] => [
  area("pivot", circle(c, 1.5), { weight: "visible" }),
  line("pivot", polyline([spot(c.x - 2.6, c.y), spot(c.x + 2.6, c.y)]), { weight: "hair" }),
  line("pivot", polyline([spot(c.x, c.y - 2.6), spot(c.x, c.y + 2.6)]), { weight: "hair" }),
];

const ROUND: readonly (readonly [number, number])[] = [
  [1, -1],
  [-1, -1],
  [1, 1],
  [-1, 1],
  [0, -1.4],
  [0, 1.4],
  [1.5, 0],
  [-1.5, 0],
];

/** Marks beside their places; places that fall on each other in this view share one. */
function markParts(points: readonly JigPoint[], side: Side, at: (point: Vec3) => Spot, room: NoteRoom): Primitive[] {
  const spots: { readonly at: Spot; mark: string }[] = [];
  for (const { mark, point } of points) {
    const c = at(point);
    const same = spots.find((each) => Math.hypot(each.at.x - c.x, each.at.y - c.y) < 1.6);
    if (same) same.mark = `${same.mark} ${mark}`;
    else spots.push({ at: c, mark });
  }
  return spots.map(({ at: c, mark }) => {
    const width = widthOf(mark, "reading", PEN);
    const boxes = [4.4, 6.5, 9].flatMap((reach) =>
      ROUND.map(
        ([dx, dy]): Box => ({
          x: c.x + mirrored(side, dx) * (reach + width / 3) - width / 2,
          y: c.y + dy * reach - 2.2,
          width,
          height: 4.6,
        }),
      ),
    );
    const free =
      boxes.find((each) => room.all.isFree(each)) ?? boxes.find((each) => room.words.isFree(each)) ?? boxes[0]!;
    room.all.take(free);
    room.words.take(free);
    return text("mark", spot(free.x + width / 2, free.y + 3.9), mark, {
      size: "reading",
      bold: true,
      anchor: "middle",
      ink: "ink",
      halo: "paper",
    });
  });
}

const OFFSETS = [7, -7, 11, -11, 15, -15, 20, -20, 26, -26, 33, -33, 41, -41, 50, -50, 60, -60];

const wishOf = ({ from, to, words, along: way }: Measure, side: Side, at: (point: Vec3) => Spot): DimensionWish => ({
  id: words,
  from: at(from),
  to: at(to),
  text: words,
  offsets: OFFSETS.map((offset) => mirrored(side, offset)),
  ...(way && { along: way }),
});

/** Whether two places stand apart in a view enough to be measured there, m. */
export const isSeenApart = (side: Side, a: Vec3, b: Vec3): boolean =>
  Math.hypot(side.across(a) - side.across(b), side.up(a) - side.up(b)) > 0.9 * distance(a, b);
