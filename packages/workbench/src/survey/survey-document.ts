import {
  type Dimension,
  parseQuantity,
  type SurveyReading,
  type SurveyResult,
  type UnitSystem,
} from "@armwright/engine";
import type { CarDocument, FieldValue, Operation } from "@armwright/engine/document";

/** The survey as the document keeps it. */
export type SurveySection = NonNullable<CarDocument["survey"]>;
export type ReadingEntry = SurveySection["readings"][number];
export type PointEntry = SurveySection["points"][number];
export type Kind = ReadingEntry["kind"];

/** A reading's reference to a point. */
export interface Slot {
  readonly field: "from" | "to" | "point" | "above" | "left" | "right";
  readonly label: string;
  /** What it is where no point is named; then none has to be. */
  readonly without?: string;
}

export interface KindFacts {
  readonly kind: Kind;
  readonly title: string;
  /** How it is taken. */
  readonly how: string;
  readonly slots: readonly Slot[];
  /** What is read: a length, an angle, three lengths, or nothing. */
  readonly reads: "length" | "angle" | "by" | "nothing";
}

export const KINDS: readonly KindFacts[] = [
  {
    kind: "tape",
    title: "Tape between two points",
    how: "Hook on one point, pull it tight, read at the centre of the other.",
    slots: [
      { field: "from", label: "from" },
      { field: "to", label: "to" },
    ],
    reads: "length",
  },
  {
    kind: "height",
    title: "Height off the floor or a level line",
    how: "Stand the tape plumb on the floor, or on a level line, and read at the point's centre.",
    slots: [
      { field: "point", label: "point" },
      { field: "above", label: "above", without: "the floor" },
    ],
    reads: "length",
  },
  {
    kind: "out",
    title: "Plumb-bob mark, out from the centreline",
    how: "Drop a plumb line from the point to the floor, then tape square to the centreline or to a string along the car.",
    slots: [
      { field: "point", label: "point" },
      { field: "from", label: "out from", without: "the centreline" },
    ],
    reads: "length",
  },
  {
    kind: "along",
    title: "Plumb-bob mark, along the car",
    how: "Drop a plumb line to the floor and tape along the car. Forward of the mark is +, behind it \u2212.",
    slots: [
      { field: "point", label: "point" },
      { field: "from", label: "forward of", without: "the mark" },
    ],
    reads: "length",
  },
  {
    kind: "level",
    title: "Level or angle finder on a bar",
    how: "Lay a straight bar across both points. + where the second is the higher.",
    slots: [
      { field: "from", label: "from" },
      { field: "to", label: "to" },
    ],
    reads: "angle",
  },
  {
    kind: "in-line",
    title: "A point on the line through two others",
    how: "Pull a string over the two outer points: the third lies on it.",
    slots: [
      { field: "point", label: "point" },
      { field: "from", label: "on the line from" },
      { field: "to", label: "to" },
    ],
    reads: "nothing",
  },
  {
    kind: "offset",
    title: "A known offset",
    how: "How the second point lies from the first, such as hub face to wheel plane. Leave empty what is not known.",
    slots: [
      { field: "from", label: "from" },
      { field: "to", label: "to" },
    ],
    reads: "by",
  },
  {
    kind: "mirror",
    title: "Two points that mirror each other",
    how: "Left and right are each other's image in the centreline.",
    slots: [
      { field: "left", label: "left" },
      { field: "right", label: "right" },
    ],
    reads: "nothing",
  },
];

export const factsOf = (kind: Kind): KindFacts => KINDS.find((each) => each.kind === kind) ?? KINDS[0]!;

/** Names in a reading's slots; empty where none is named. */
export const nameIn = (reading: ReadingEntry, { field }: Slot): string => {
  const name: unknown = (reading as Readonly<Record<string, unknown>>)[field];
  return typeof name === "string" ? name : "";
};

/** Which of a reading's points are still to be named. */
export const missingSlots = (reading: ReadingEntry): readonly Slot[] =>
  factsOf(reading.kind).slots.filter((slot) => slot.without === undefined && nameIn(reading, slot) === "");

/** A reading of a kind with nothing named. */
export const emptyReading = (kind: Kind): ReadingEntry =>
  ({ kind, ...(kind === "offset" && { by: {} }) }) as unknown as ReadingEntry;

/** The same reading with another field; undefined takes it out. */
export function withField(reading: ReadingEntry, field: string, value: unknown): ReadingEntry {
  const { [field]: _, ...rest } = reading as unknown as Readonly<Record<string, unknown>>;
  return (value === undefined ? rest : { ...rest, [field]: value }) as unknown as ReadingEntry;
}

/** What the engine proposes, as an entry to be filled in. */
export function entryOf(reading: SurveyReading, points: readonly { readonly name: string }[]): ReadingEntry {
  const name = (index: number): string => points[index]?.name ?? "";
  const entry = (fields: Readonly<Record<string, unknown>>): ReadingEntry =>
    ({ kind: reading.kind, ...fields }) as unknown as ReadingEntry;
  switch (reading.kind) {
    case "tape":
    case "level":
      return entry({ from: name(reading.from), to: name(reading.to) });
    case "height":
      return entry({
        point: name(reading.point),
        ...(reading.above !== undefined && { above: name(reading.above) }),
      });
    case "out":
    case "along":
      return entry({ point: name(reading.point), ...(reading.from !== undefined && { from: name(reading.from) }) });
    case "in-line":
      return entry({ point: name(reading.point), from: name(reading.from), to: name(reading.to) });
    case "offset":
      return entry({ from: name(reading.from), to: name(reading.to), by: {} });
    case "mirror":
      return entry({ left: name(reading.left), right: name(reading.right) });
  }
}

/** An entry as the drawing takes it: points by their place; null while one is still to be named. */
export function drawableOf(entry: ReadingEntry, names: readonly string[]): SurveyReading | null {
  if (missingSlots(entry).length > 0) return null;
  const fields = Object.fromEntries(
    factsOf(entry.kind).slots.flatMap((slot) => {
      const index = names.indexOf(nameIn(entry, slot));
      return index < 0 ? [] : [[slot.field, index]];
    }),
  );
  if (factsOf(entry.kind).slots.some(({ field, without }) => without === undefined && fields[field] === undefined))
    return null;
  return { kind: entry.kind, isDeferred: false, reads: 0, add: 0, by: {}, ...fields } as unknown as SurveyReading;
}

export const dimensionOf = (kind: Kind): Dimension => (kind === "level" ? "angle" : "length");

/** What was read, SI; null where nothing was. */
export function readOf(entry: ReadingEntry, own: UnitSystem): number | null {
  const typed: unknown = (entry as Readonly<Record<string, unknown>>)["reads"];
  if (typeof typed !== "number" && typeof typed !== "string") return null;
  const parsed = parseQuantity(typed, dimensionOf(entry.kind), own);
  return parsed.ok ? parsed.value : null;
}

/** Wanted or put aside: it counts for nothing. */
export const isPutOff = (entry: ReadingEntry): boolean =>
  entry.deferred === true ||
  (["length", "angle"].includes(factsOf(entry.kind).reads) &&
    (entry as Readonly<Record<string, unknown>>)["reads"] === undefined);

const SURVEY = "survey";

/** Whether it is known roughly where a point is: a picture of one that nothing was read to would mislead. */
export const isPlaced = ({ undetermined }: SurveyResult, point: number): boolean =>
  undetermined.filter((each) => each.point === point).length < 3;

/** The edits that put a reading in its place; at the end where it has none yet. */
export function putReading(
  section: SurveySection | undefined,
  entry: ReadingEntry,
  index: number | null,
  newPoints: readonly PointEntry[],
): readonly Operation[] {
  const value = entry as unknown as FieldValue;
  if (!section) {
    return [{ path: SURVEY, value: { points: newPoints, readings: [entry] } as unknown as FieldValue }];
  }
  return [
    ...newPoints.map(
      (point, k): Operation => ({
        path: `survey.points[${section.points.length + k}]`,
        value: point as unknown as FieldValue,
      }),
    ),
    { path: `survey.readings[${index ?? section.readings.length}]`, value },
  ];
}

/** The edit that takes a reading off. */
export const takeOffReading = (index: number): readonly Operation[] => [
  { path: `survey.readings[${index}]`, value: undefined },
];

/** The edits that name a new point. */
export const putPoint = (section: SurveySection | undefined, point: PointEntry): readonly Operation[] =>
  section
    ? [{ path: `survey.points[${section.points.length}]`, value: point as unknown as FieldValue }]
    : [{ path: SURVEY, value: { points: [point], readings: [] } as unknown as FieldValue }];
