import type { Study, SurveyReading, Vec3 } from "@armwright/engine";
import { gapOf, headingOf, middle, offset, polyline, shift, spot } from "./path.ts";
import type { Drawing, Primitive, Sheet, Spot } from "./primitive.ts";
import { group, patch, stroke, text } from "./sketch.ts";
import { carBehind, cross, ringed, VIEWS } from "./survey-marks.ts";
import { widthOf } from "./text-size.ts";
import type { View } from "./view.ts";

/** A reading of a survey to be drawn: where the tape goes. */
export interface ReadingPicture {
  /** The car behind it, in pencil; left out where there is none yet. */
  readonly study: Study | null;
  /** Every named point where it is thought to be, m. */
  readonly points: readonly { readonly name: string; readonly at: Vec3 }[];
  /** As in the survey: points by their place in the list. */
  readonly reading: SurveyReading;
  /** Where the wheel stands in it, travel, m; ride height unless said. */
  readonly travel?: number;
  /** What stands on the tape: a reading, or nothing. */
  readonly text: string;
}

export interface ReadingDrawing extends Drawing {
  readonly view: View["name"];
}

/** The two ends of a reading as they lie on the car, m, each with its name; and what else shows how it is taken. */
interface Ends {
  readonly from: Vec3;
  readonly to: Vec3;
  readonly names: readonly [string, string];
  /** Lines that help the eye: a level, a string, the car's centreline. */
  readonly helpers: readonly (readonly [Vec3, Vec3])[];
  readonly views: readonly View["name"][];
  /** Points named in the reading: drawn as held. */
  readonly held: readonly Vec3[];
}

/** Shown round a reading at least, m: less would show no part that can be recognised. */
const LEAST_SHOWN = 0.42;

/** A reading on the car, in the view that shows it longest: its points ringed and named, the tape between them in hand. */
export function drawReading(picture: ReadingPicture, width: number, height: number, pen = 1): ReadingDrawing {
  const ends = endsOf(picture);
  const name = [...ends.views].sort((a, b) => lengthIn(b, ends) - lengthIn(a, ends))[0]!;
  const sheet = sheetFor(name, ends, width, height, pen);
  const view = VIEWS[name](sheet);
  const others = picture.points.filter(({ at }) => !ends.held.includes(at));
  const a = view.at(ends.from);
  const b = view.at(ends.to);
  const parts: Primitive[] = [
    ...carBehind(picture.study, name, sheet, picture.travel),
    ...others.flatMap(({ at }) => cross(view.at(at), 3.5 * pen)),
    ...ends.helpers.map(([from, to]) =>
      stroke("survey", view.at(from), view.at(to), { ink: "ink-2", weight: "thin", dash: "centre" }),
    ),
    stroke("survey", a, b, { ink: "hold", weight: "curve", meaning: "tape" }),
    ...[a, b].flatMap((at, k) => endMark(at, headingOf(at, k === 0 ? b : a), pen)),
    ...ends.held.flatMap((at) => ringed(view.at(at), pen)),
    ...namesAt([a, b], ends.names, sheet),
    ...onTape(a, b, picture.text, pen),
    text("title", spot(4 * pen, 15 * pen), name, { halo: "paper" }),
  ];
  return {
    sheet,
    view: name,
    parts: [group("reading", parts, { clip: { x: 0, y: 0, width, height } })],
    handles: picture.points.map(({ name: label, at }, index) => ({ path: `points[${index}]`, label, at: view.at(at) })),
  };
}

const ALL: readonly View["name"][] = ["from behind", "from above", "from the left"];

function endsOf({ points, reading }: ReadingPicture): Ends {
  const nowhere = { name: "", at: { x: 0, y: 0, z: 0 } };
  const point = (index: number) => points[index] ?? nowhere;
  switch (reading.kind) {
    case "tape":
    case "offset": {
      const [from, to] = [point(reading.from), point(reading.to)];
      return {
        from: from.at,
        to: to.at,
        names: [from.name, to.name],
        helpers: [],
        views: ALL,
        held: [from.at, to.at],
      };
    }
    case "level": {
      const [from, to] = [point(reading.from), point(reading.to)];
      const level = { ...to.at, z: from.at.z };
      return {
        from: from.at,
        to: to.at,
        names: [from.name, to.name],
        helpers: [[from.at, level]],
        views: ["from behind", "from the left"],
        held: [from.at, to.at],
      };
    }
    case "height": {
      const { at, name } = point(reading.point);
      const above = reading.above === undefined ? undefined : point(reading.above);
      const foot = { ...at, z: above?.at.z ?? 0 };
      return {
        from: at,
        to: foot,
        names: [name, above?.name ?? "floor"],
        helpers: above ? [[above.at, foot]] : [],
        views: ["from behind", "from the left"],
        held: above ? [at, above.at] : [at],
      };
    }
    case "out": {
      const { at, name } = point(reading.point);
      const from = reading.from === undefined ? undefined : point(reading.from);
      const y = from?.at.y ?? 0;
      const line = (x: number): Vec3 => ({ x, y, z: at.z });
      return {
        from: at,
        to: line(at.x),
        names: [name, from ? `string at ${from.name}` : "centreline"],
        helpers: [[line(at.x + 0.5), line(at.x - 0.5)]],
        views: ["from above"],
        held: from ? [at, from.at] : [at],
      };
    }
    case "along": {
      const { at, name } = point(reading.point);
      const from = reading.from === undefined ? undefined : point(reading.from);
      const x = from?.at.x ?? 0;
      const line = (y: number): Vec3 => ({ x, y, z: at.z });
      return {
        from: at,
        to: line(at.y),
        names: [name, from?.name ?? "mark"],
        helpers: [[line(at.y + 0.3), line(at.y - 0.3)]],
        views: ["from above"],
        held: from ? [at, from.at] : [at],
      };
    }
    case "in-line": {
      const [at, from, to] = [point(reading.point), point(reading.from), point(reading.to)];
      return {
        from: from.at,
        to: to.at,
        names: [from.name, to.name],
        helpers: [[from.at, at.at]],
        views: ALL,
        held: [from.at, to.at, at.at],
      };
    }
    case "mirror": {
      const [left, right] = [point(reading.left), point(reading.right)];
      const high = Math.max(left.at.z, right.at.z) + 0.1;
      return {
        from: left.at,
        to: right.at,
        names: [left.name, right.name],
        helpers: [
          [
            { x: left.at.x, y: 0, z: high },
            { x: left.at.x, y: 0, z: high - 0.3 },
          ],
        ],
        views: ["from behind"],
        held: [left.at, right.at],
      };
    }
  }
}

/** On a sheet of one unit a metre. */
const flat = (name: View["name"]): View =>
  VIEWS[name]({ width: 1, height: 1, scale: 1, origin: { x: 0, y: 0 }, pen: 1 });

const lengthIn = (name: View["name"], { from, to }: Ends): number => {
  const { at } = flat(name);
  return gapOf(at(from), at(to));
};

function sheetFor(name: View["name"], ends: Ends, width: number, height: number, pen: number): Sheet {
  const { at } = flat(name);
  const spots = [ends.from, ends.to, ...ends.held].map(at);
  const span = (values: readonly number[]): readonly [number, number] => [Math.min(...values), Math.max(...values)];
  const [left, right] = span(spots.map(({ x }) => x));
  const [top, bottom] = span(spots.map(({ y }) => y));
  // Room for the names above and below, and for the part round each point.
  const scale = Math.min(
    (width - 96 * pen) / Math.max(right - left, LEAST_SHOWN),
    (height - 88 * pen) / Math.max(bottom - top, LEAST_SHOWN * 0.5),
  );
  return {
    width,
    height,
    scale,
    pen,
    origin: { x: width / 2 - ((left + right) / 2) * scale, y: height / 2 + 4 * pen - ((top + bottom) / 2) * scale },
  };
}

/** A slim arrow at the tape's end. */
const endMark = (at: Spot, inward: Spot, pen: number): Primitive[] => [
  patch(
    "survey",
    polyline([at, offset(at, inward, 13 * pen, 3.2 * pen), offset(at, inward, 13 * pen, -3.2 * pen)], true),
    { fill: "hold" },
  ),
];

/** Each name beyond its own end, the higher one above and the lower one below; none past the sheet's edge. */
function namesAt(
  spots: readonly [Spot, Spot],
  names: readonly [string, string],
  { width, height, pen }: Sheet,
): Primitive[] {
  const firstIsUpper = spots[0].y <= spots[1].y;
  return spots.map((at, k) => {
    const isUpper = (k === 0) === firstIsUpper;
    const half = widthOf(names[k]!, "label", pen) / 2 + 4 * pen;
    const x = Math.min(Math.max(at.x, half), width - half);
    const y = isUpper ? Math.max(at.y - 14 * pen, 32 * pen) : Math.min(at.y + 26 * pen, height - 6 * pen);
    return text("survey", spot(x, y), names[k]!, { anchor: "middle", halo: "paper", ink: "ink" });
  });
}

function onTape(a: Spot, b: Spot, words: string, pen: number): Primitive[] {
  if (words === "") return [];
  const at = shift(middle(a, b), 0, 6 * pen);
  return [text("survey", at, words, { size: "reading", bold: true, anchor: "middle", ink: "hold", halo: "paper" })];
}
