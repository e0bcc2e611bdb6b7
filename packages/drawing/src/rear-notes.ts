import { type NoteRoom, type NoteWish, takeWords } from "./note.ts";
import type { Ghost } from "./parts/ghosts.ts";
import type { KeepOutShape } from "./parts/keep-out.ts";
import { strapSpots } from "./parts/strap.ts";
import { tyreSpots } from "./parts/wheel.ts";
import { shift, spot, toward } from "./path.ts";
import { grown } from "./placement.ts";
import type { Box, Primitive, Spot } from "./primitive.ts";
import { mountAt, numberOf, type Scene } from "./scene.ts";
import { group, text } from "./sketch.ts";
import { wrapped } from "./tape/flags.ts";
import { boxOfText } from "./text-size.ts";
import { distinctSpots, type GapNow, gapsFromStudy, nearestToTyre } from "./trouble.ts";
import { reading, travelReading } from "./words.ts";

/** What is in trouble here, as notes in red: the spot is ringed and numbered as on the tape. */
export const troubleNotes = (scene: Scene): readonly NoteWish[] =>
  distinctSpots(scene.troubles, 0.01).map((trouble) => ({
    id: trouble.id,
    at: scene.view.at(trouble.at),
    label: trouble.label,
    reading: trouble.finding,
    ink: "stop",
    ...(trouble.order > 0 && { order: trouble.order }),
    spoken: `${trouble.label}: ${trouble.finding}`,
  }));

/** Shock, strap, the bump stop's gap, and what is nearest to the tyre. */
export function partNotes(scene: Scene, gaps?: readonly GapNow[]): readonly NoteWish[] {
  const { study, car, row, view } = scene;
  const system = car.units;
  const wishes: NoteWish[] = [];
  const eyeToEye = numberOf(study, row, "shockLength");
  if (car.shock && eyeToEye !== null) {
    const at = toward(mountAt(scene, car.shock.upper), mountAt(scene, car.shock.lower), 0.16);
    wishes.push({ id: "shock", at, label: "shock", reading: reading(eyeToEye, "length", system) });
  }
  const slack = numberOf(study, row, "strapSlack");
  if (car.strap && slack !== null) {
    const spots = strapSpots(scene);
    wishes.push({
      id: "strap",
      at: spots[Math.round(spots.length * 0.3)]!,
      label: "strap",
      reading: slack > 1e-4 ? `${reading(slack, "length", system)} slack` : "taut",
    });
  }
  const gap = numberOf(study, row, "bumpStopGap");
  if (car.bumpStop && gap !== null) {
    const at = toward(mountAt(scene, car.bumpStop.base), mountAt(scene, car.bumpStop.strikes), 0.25);
    wishes.push({
      id: "bump-stop",
      at,
      label: "bump stop",
      reading:
        gap > 0
          ? `${reading(gap, "length", system)} gap`
          : `squeezed ${reading(Math.min(-gap, car.bumpStop.reach), "length", system)}`,
    });
  }
  const nearest = nearestToTyre(gaps ?? gapsFromStudy(study, scene.position));
  // A gap before or behind the tyre cannot be pointed at from here.
  if (nearest && nearest.gap > 0 && !isInside(tyreSpots(scene), view.at(nearest.at))) {
    wishes.push({
      id: "tyre-gap",
      at: view.at(nearest.at),
      label: nearest.label,
      reading: reading(nearest.gap, "length", system),
    });
  }
  return wishes;
}

/** Ghosts are named with their travel, in the part of their outline that the wheel does not cover. */
export function ghostNames(scene: Scene, ghosts: readonly Ghost[], room: NoteRoom): Primitive[] {
  const { car, view, pen, scale, position } = scene;
  return ghosts.flatMap(({ name, position: there }) => {
    const up = there.travel > position.travel ? -1 : 1;
    const edge = view.at(there.wheelCentre).y + up * car.wheel.freeRadius * scale;
    const x = view.at(there.wheelCentre).x;
    const inward = -up;
    const heights = [26, 40, 60, 80]
      .map((px) => edge + inward * px * pen)
      .concat([22, 40].map((px) => edge - inward * px * pen));
    const shifts = [30, -30, 36, -36, 44, -44, 0].map((px) => px * pen);
    for (const y of heights) {
      for (const dx of shifts) {
        const found = twoLines(spot(x + dx, y), name, travelReading(there.travel, car.units), pen, "ghost");
        if (!found.boxes.every((box) => room.all.isFree(box))) continue;
        for (const box of found.boxes) takeWords(room, box);
        return [group("ghost", found.parts, { meaning: name })];
      }
    }
    return [];
  });
}

/** Each keep-out's name inside it on a halo where it fits, else beside it. */
export function keepOutNames(scene: Scene, shapes: readonly KeepOutShape[], room: NoteRoom): Primitive[] {
  const { pen } = scene;
  return shapes.flatMap(({ keepOut, outline }): Primitive[] => {
    const centre = outline.reduce((sum, p) => shift(sum, p.x / outline.length, p.y / outline.length), spot(0, 0));
    const others = shapes.filter((shape) => shape.outline !== outline);
    // Best where no part and no other keep-out's edge runs through it; in the middle, where all places are crossed.
    let named: ReturnType<typeof twoLines> | undefined;
    for (const at of placesIn(outline, centre)) {
      const tried = twoLines(at, keepOut.name, "keep out", pen, "keep-out");
      if (!tried.boxes.every((box) => isWithin(outline, box) && room.words.isFree(box))) continue;
      named ??= tried;
      const isClear = tried.boxes.every(
        (box) => room.parts.isFree(box) && !others.some((other) => crosses(other.outline, box)),
      );
      if (!isClear) continue;
      named = tried;
      break;
    }
    if (!named) return sideName(scene, keepOut.name, outline, room);
    for (const box of named.boxes) takeWords(room, box);
    return [group("keep-out", named.parts, { meaning: keepOut.name })];
  });
}

/** Places within an outline, the nearest to its middle first. */
function placesIn(outline: readonly Spot[], centre: Spot): readonly Spot[] {
  const shares = [0, 0.25, -0.25, 0.5, -0.5, 0.7, -0.7];
  const [xs, ys] = [outline.map(({ x }) => x), outline.map(({ y }) => y)];
  const half = spot((Math.max(...xs) - Math.min(...xs)) / 2, (Math.max(...ys) - Math.min(...ys)) / 2);
  return shares
    .flatMap((up) => shares.map((across) => spot(across, up)))
    .sort((a, b) => Math.hypot(a.x, a.y) - Math.hypot(b.x, b.y))
    .map(({ x, y }) => shift(centre, x * half.x, y * half.y));
}

const cornersOf = ({ x, y, width, height }: Box): readonly Spot[] => [
  spot(x, y),
  spot(x + width, y),
  spot(x, y + height),
  spot(x + width, y + height),
];

const isWithin = (outline: readonly Spot[], box: Box): boolean =>
  cornersOf(box).every((corner) => isInside(outline, corner));

/** Whether an edge of the outline runs through the box. */
function crosses(outline: readonly Spot[], { x, y, width, height }: Box): boolean {
  return outline.some((a, index) => {
    const b = outline[(index + 1) % outline.length]!;
    // The edge cut to the box, one way after the other (Liang and Barsky): something is left where they meet.
    let [from, to] = [0, 1];
    for (const [start, way, low, high] of [
      [a.x, b.x - a.x, x, x + width],
      [a.y, b.y - a.y, y, y + height],
    ] as const) {
      if (Math.abs(way) < 1e-12) {
        if (start < low || start > high) return false;
        continue;
      }
      const [one, other] = [(low - start) / way, (high - start) / way];
      from = Math.max(from, Math.min(one, other));
      to = Math.min(to, Math.max(one, other));
    }
    return from <= to;
  });
}

/** A slim keep-out's name stands along it, outside. */
function sideName(scene: Scene, name: string, outline: readonly Spot[], room: NoteRoom): Primitive[] {
  const { pen } = scene;
  const xs = outline.map(({ x }) => x);
  const ys = outline.map(({ y }) => y);
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  for (const share of [0.08, 0.2, 0.35, 0.5, 0.65, 0.8, 0.92]) {
    for (const side of [1, -1] as const) {
      const at = spot(side > 0 ? right + 8 * pen : left - 8 * pen, top + share * (bottom - top));
      const found = twoLines(at, name, "keep out", pen, "keep-out", side > 0 ? "start" : "end");
      if (!found.boxes.every((box) => room.all.isFree(box))) continue;
      for (const box of found.boxes) takeWords(room, box);
      return [group("keep-out", found.parts, { meaning: name })];
    }
  }
  return [];
}

/** Longer names go on in a further line, px. */
const LONGEST_LINE = 120;

function twoLines(
  at: Spot,
  upper: string,
  lower: string,
  pen: number,
  layer: string,
  anchor: "start" | "middle" | "end" = "middle",
) {
  const isGhost = layer === "ghost";
  const lines = wrapped(upper, LONGEST_LINE * pen, pen);
  const high = ((lines.length - 1) * 17 * pen) / 2;
  const parts = [
    ...lines.map((words, index) =>
      text(layer, shift(at, 0, (17 * index - 3) * pen - high), words, {
        anchor,
        halo: "paper",
        ink: isGhost ? "ink-2" : "ink",
      }),
    ),
    text(layer, shift(at, 0, 15 * pen + high), lower, { anchor, halo: "paper", size: isGhost ? "text" : "label" }),
  ];
  return { parts, boxes: parts.map((part) => grown(boxOfText(part, pen), 1 * pen)) };
}

/** Whether a spot lies in a convex outline, whichever way round that runs. */
function isInside(outline: readonly Spot[], p: Spot): boolean {
  const turns = outline.map((a, index) => {
    const b = outline[(index + 1) % outline.length]!;
    return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
  });
  return turns.every((turn) => turn >= 0) || turns.every((turn) => turn <= 0);
}
