import {
  type Car,
  type Corner,
  formatLength,
  formatNumber,
  formatValue,
  INCH,
  type RodEnd,
  type Spring,
  type UnitSystem,
  unitOf,
} from "@armwright/engine";
import { type BoltedPlace, boltedPlaces } from "./bolted-place.ts";
import { type Plate, plates } from "./plate.ts";
import type { TubeEnd, TubePiece } from "./tube-piece.ts";

/** A bought part, both sides of the car together. */
export interface HardwareLine {
  readonly count: number;
  readonly name: string;
  readonly size: string;
  readonly where: string;
  /** What to look at before it is ordered; empty where nothing. */
  readonly note: string;
}

/**
 * Width of the ball of common inch rod ends by bore, in: SAE AS81935/1, sizes −08 to −16. Only these are told; others are to
 * be measured.
 */
const BALL_WIDTHS: readonly (readonly [bore: number, width: number])[] = [
  [0.5, 0.625],
  [0.625, 0.75],
  [0.75, 0.875],
  [1, 1.375],
];

/**
 * Everything bought or cut from plate for both sides, as a list to order by; equal ones are counted together. In the order of
 * the shop: rod ends and what holds them, then what is bolted on, then plate.
 */
export function hardware(corner: Corner, pieces: readonly TubePiece[]): readonly HardwareLine[] {
  const { car } = corner;
  const places = boltedPlaces(corner);
  return [
    places.flatMap((place) => rodEndLines(place, car.units)),
    pieces.flatMap((piece) => [piece.from, piece.to].flatMap((end) => bungLine(end, piece, car))),
    places.map((place) => boltLine(place, car.units)),
    boughtParts(car),
    plates(corner).map(plateLine),
  ].flatMap(gathered);
}

function rodEndLines({ rodEnd: end, label: where }: BoltedPlace, units: UnitSystem): HardwareLine[] {
  if (!end) return [];
  const size = threadWords(end, units);
  const note = [
    end.misalignmentLimit === undefined ? "its tilt limit is not entered" : "",
    end.length === undefined ? "measure ball to end of thread" : "",
  ];
  return [
    {
      count: 2,
      name: `rod end, ${end.hand} hand`,
      size,
      where,
      note: note.filter((words) => words !== "").join("; "),
    },
    { count: 2, name: `jam nut, ${end.hand} hand`, size, where, note: "" },
  ];
}

function bungLine(end: TubeEnd, { diameter, wall }: TubePiece, { rodEnds, units }: Car): HardwareLine[] {
  if (end.kind !== "bung") return [];
  const rodEnd = rodEnds.find(({ pivot }) => pivot === end.pivot);
  return [
    {
      count: 2,
      name: `bung, ${end.hand} hand`,
      size: `${rodEnd ? threadWords(rodEnd, units) : "?"} for ${tubeWords(diameter, wall, units)}`,
      where: end.at,
      note: "",
    },
  ];
}

/** A place's bolt: through its tabs and the ball or the eye. */
function boltLine({ place, label, rodEnd, bolt, tab }: BoltedPlace, units: UnitSystem): HardwareLine {
  const bore = bolt?.thread.diameter ?? rodEnd?.threadDiameter;
  const ball = rodEnd && BALL_WIDTHS.find(([size]) => bore !== undefined && Math.abs(size * INCH - bore) < 1e-5)?.[1];
  const eye = place.startsWith("strap") ? "the strap's eye" : "the shock's eye with its sleeves";
  return {
    count: 2,
    name: boltName(bolt),
    size: boltSize(bolt, bore, units),
    where: label,
    note: notes(
      bolt || bore === undefined ? "" : "size taken from the rod end's thread: measure its bore",
      gripWords(tab, ball === undefined ? undefined : ball * INCH, rodEnd ? "the ball" : eye, units),
    ),
  };
}

type Bolt = NonNullable<BoltedPlace["bolt"]>;
type Tab = NonNullable<BoltedPlace["tab"]>;

const boltName = (bolt: Bolt | undefined): string =>
  bolt ? `bolt, grade ${bolt.grade}, lock nut, washers` : "bolt, grade not entered, lock nut, washers";

const boltSize = (bolt: Bolt | undefined, bore: number | undefined, units: UnitSystem): string =>
  bolt
    ? threadWords({ threadDiameter: bolt.thread.diameter, pitch: bolt.thread.pitch }, units)
    : bore === undefined
      ? "not entered"
      : diameterWords(bore, units);

/** The shank without thread that has to stand in what is clamped. */
function gripWords(tab: Tab | undefined, width: number | undefined, what: string, units: UnitSystem): string {
  const unit = unitOf("length", units);
  const plain = "no thread in the tabs";
  if (tab && width !== undefined)
    return `grip ${formatLength(tab.count * tab.thickness + width, units)} ${unit} and the spacers; ${plain}`;
  const tabs = tab ? `${formatLength(tab.count * tab.thickness, units)} ${unit} of tab` : "the tabs";
  const middle = width === undefined ? what : `${formatLength(width, units)} ${unit} of ball`;
  return `grip: ${tabs}, ${middle} and the spacers; ${plain}`;
}

/** Shock, springs, strap, stop and half shaft, two of each. */
function boughtParts({ shock, strap, bumpStop, driveshaft, units }: Car): HardwareLine[] {
  const mark = (metres: number): string => `${formatLength(metres, units)} ${unitOf("length", units)}`;
  const one = (name: string, size: string, note = ""): HardwareLine => ({
    count: 2,
    name,
    size,
    where: "one a side",
    note,
  });
  const spring = ({ rate, freeLength }: Spring): string =>
    `${formatValue(rate, "rate", units)}, ${mark(freeLength)} free`;
  return [
    ...(shock ? [one("shock", `${mark(shock.shortest)} closed, ${mark(shock.longest)} open`, "eye to eye")] : []),
    ...(shock?.springs ? [one("main spring", spring(shock.springs.main), "goes by the car's weight: buy last")] : []),
    ...(shock?.springs?.tender
      ? [one("tender spring", spring(shock.springs.tender), "goes by the car's weight: buy last")]
      : []),
    ...(strap
      ? [one("limit strap", `${mark(strap.length)} hole to hole, pulled tight`, "it stretches: see the strap's sheet")]
      : []),
    ...(bumpStop
      ? [
          one(
            "bump stop with its foot's screws",
            `${mark(bumpStop.reach)} free, ${mark(bumpStop.solid)} solid`,
            "screws and grip as the stop comes",
          ),
          one("strike plate", "as wide as the stop's face", "welded flat and square where the stop lands"),
        ]
      : []),
    ...(driveshaft
      ? [one("half shaft", `${mark(driveshaft.diameter)} tube`, "cut after the cycle check: see its sheet")]
      : []),
  ];
}

/** A tab or gusset that the document gives; its outline is on a true-size sheet. */
const plateLine = ({ title, count, size, where }: Plate): HardwareLine => ({
  count,
  name: title,
  size,
  where,
  note: "outline at true size: Tabs and gussets",
});

const notes = (...words: readonly string[]): string => words.filter((each) => each !== "").join("; ");

/** `3/4-16`, `M16 × 1.5`; what is not known is said. */
export function threadWords(
  { threadDiameter, pitch }: Pick<RodEnd, "threadDiameter" | "pitch">,
  units: UnitSystem,
): string {
  if (threadDiameter === undefined || pitch === undefined) return "thread not entered";
  const turns = INCH / pitch;
  const isInch = Math.abs(turns - Math.round(turns)) < 1e-6;
  return isInch
    ? `${formatLength(threadDiameter, "inch-pound")}-${Math.round(turns)}`
    : `M${formatNumber(threadDiameter * 1000, 0)} × ${trimmed(pitch * 1000)}${units === "metric" ? "" : " metric"}`;
}

/** `1 1/2 × .120` in inches, `45 × 2.6` in millimetres. */
export const tubeWords = (diameter: number, wall: number, units: UnitSystem): string =>
  units === "metric"
    ? `${trimmed(diameter * 1000)} × ${trimmed(wall * 1000)}`
    : `${formatLength(diameter, units)} × ${formatNumber(wall / INCH, 3).replace(/^0/, "")}`;

const diameterWords = (metres: number, units: UnitSystem): string => {
  const sixteenths = metres / (INCH / 16);
  return Math.abs(sixteenths - Math.round(sixteenths)) < 1e-6
    ? `${formatLength(metres, "inch-pound")} in`
    : `${trimmed(metres * 1000)} mm${units === "metric" ? "" : " metric"}`;
};

const trimmed = (value: number): string => String(Number(value.toFixed(2)));

/** Equal lines as one, in the order in which each first stood. */
function gathered(lines: readonly HardwareLine[]): HardwareLine[] {
  const found = new Map<string, HardwareLine>();
  for (const line of lines) {
    const key = [line.name, line.size, line.note].join("|");
    const before = found.get(key);
    found.set(
      key,
      before
        ? {
            ...before,
            count: before.count + line.count,
            where: before.where === line.where ? before.where : `${before.where}; ${line.where}`,
          }
        : line,
    );
  }
  return [...found.values()].sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
}
