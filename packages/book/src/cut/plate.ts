import { circle, line, type PathStep, type Primitive, polyline, spot, stroke, text } from "@armwright/drawing";
import { type Car, type Corner, formatLength, formatNumber, INCH } from "@armwright/engine";
import { type BoltedPlace, boltedPlaces, placeLabel } from "./bolted-place.ts";

/** A flat part at true size, mm, from its own upper left corner. */
export interface Plate {
  readonly id: string;
  readonly title: string;
  /** `2 × 1 1/2, plate 1/4`. */
  readonly size: string;
  readonly where: string;
  /** For both sides of the car. */
  readonly count: number;
  readonly width: number;
  readonly height: number;
  readonly parts: readonly Primitive[];
}

/** Rounds a quarter circle's Bézier handles: 4/3·(√2 − 1). */
const QUARTER = 0.5522847498;
const MM = 1000;

/** Tabs and gussets that the document gives sizes for. */
export function plates(corner: Corner): readonly Plate[] {
  const { car } = corner;
  const { strength } = car;
  if (!strength) return [];
  const places = boltedPlaces(corner);
  const tabs = Object.entries(strength.tabs).flatMap(([place, tab]): Plate[] => {
    // `all` stands for every bolted place that is not named.
    const at = places.filter((each) => (place === "all" ? each.tab === tab : each.place === place));
    const holes = [...new Set(at.map(({ bolt }) => bolt?.thread.diameter))];
    return holes.map((hole) => {
      const here = at.filter(({ bolt }) => bolt?.thread.diameter === hole);
      return tabPlate(place, here, tab, hole, car.units);
    });
  });
  const gussets = Object.entries(strength.tubes).flatMap(([tube, { gusset }]) =>
    gusset ? [gussetPlate(tube, gusset, placeLabel(corner, gusset.at), car.units)] : [],
  );
  return [...tabs, ...gussets];
}

type Strength = NonNullable<Car["strength"]>;

/** A tab as it is welded by its foot: its hole at the height and edge distance given, its upper corners rounded. */
function tabPlate(
  place: string,
  at: readonly BoltedPlace[],
  { width, height, edge, thickness, count: aPlace }: Strength["tabs"][string],
  hole: number | undefined,
  units: Car["units"],
): Plate {
  const [w, h, e] = [width * MM, height * MM, edge * MM];
  const top = h + e;
  const r = Math.min(w / 2, e);
  const k = r * (1 - QUARTER);
  const outline: PathStep[] = [
    { to: "move", at: spot(0, top) },
    { to: "line", at: spot(0, r) },
    { to: "curve", c1: spot(0, k), c2: spot(k, 0), at: spot(r, 0) },
    { to: "line", at: spot(w - r, 0) },
    { to: "curve", c1: spot(w - k, 0), c2: spot(w, k), at: spot(w, r) },
    { to: "line", at: spot(w, top) },
    { to: "close" },
  ];
  const middle = spot(w / 2, e);
  const count = 2 * aPlace * at.length;
  const words = place === "all" ? "tab, all places not named" : `tab, ${at.map(({ label }) => label).join("; ")}`;
  return {
    id: `tab-${place}-${hole === undefined ? "no-bolt" : Math.round(hole * 1e5) / 100}`,
    title: words,
    size: `${sizeWords(width, height + edge, units)}, ${plateWords(thickness, units)}, ${holeWords(hole, units)}`,
    where: at.map(({ label }) => label).join("; "),
    count,
    width: w,
    height: top,
    parts: [
      line("cut", outline, { weight: "thin" }),
      ...(hole === undefined ? [] : [line("hole", circle(middle, (hole * MM) / 2), { weight: "thin" })]),
      stroke("mark", spot(middle.x - 7, middle.y), spot(middle.x + 7, middle.y), { weight: "hair" }),
      stroke("mark", spot(middle.x, middle.y - 7), spot(middle.x, middle.y + 7), { weight: "hair" }),
      ...under(w, top, [
        words,
        `${plateWords(thickness, units)}, make ${count}`,
        holeWords(hole, units),
        "weld along this edge",
      ]),
    ],
  };
}

/** A plate on edge along a tube: as long as it reaches either way, sloping from its full depth in the middle. */
function gussetPlate(
  tube: string,
  { reach, depth, thickness }: NonNullable<Strength["tubes"][string]["gusset"]>,
  at: string,
  units: Car["units"],
): Plate {
  const [length, d] = [2 * reach * MM, depth * MM];
  const flat = length / 8;
  return {
    id: `gusset-${tube}`,
    title: `gusset under ${at}`,
    size: `${sizeWords(2 * reach, depth, units)}, ${plateWords(thickness, units)}`,
    where: at,
    count: 2,
    width: length,
    height: d,
    parts: [
      line(
        "cut",
        polyline([spot(0, 0), spot(length, 0), spot(length / 2 + flat, d), spot(length / 2 - flat, d)], true),
        {
          weight: "thin",
        },
      ),
      stroke("mark", spot(length / 2, 0), spot(length / 2, d), { weight: "hair", dash: "centre" }),
      ...under(length, d, [`gusset under ${at}`, `${plateWords(thickness, units)}, make 2`, "long edge on the tube"]),
    ],
  };
}

const sizeWords = (width: number, height: number, units: Car["units"]): string =>
  `${formatLength(width, units)} × ${formatLength(height, units)}`;

const plateWords = (thickness: number, units: Car["units"]): string =>
  units === "metric"
    ? `plate ${formatNumber(thickness * MM, 1)}`
    : `plate ${formatLength(thickness, units, { denominator: 32 })}`;

const holeWords = (hole: number | undefined, units: Car["units"]): string =>
  hole === undefined
    ? "bolt not entered: drill to your bolt"
    : `hole ${units === "metric" ? formatNumber(hole * MM, 0) : formatLength(hole, units, { denominator: Math.abs((hole / INCH) * 16 - Math.round((hole / INCH) * 16)) < 1e-6 ? 16 : 32 })}`;

/** Words beneath the outline, where they do not lie on what is cut. */
const under = (width: number, top: number, lines: readonly string[]): Primitive[] =>
  lines.map((words, index) =>
    text("words", spot(width / 2, top + 5 + index * 4.8), words, { anchor: "middle", ink: "ink" }),
  );

/** Height that the words beneath take, mm. */
export const WORDS_UNDER = 24;
/** The words may be wider than the plate; so much room each side of its middle, mm. */
export const WORDS_HALF = 31;
