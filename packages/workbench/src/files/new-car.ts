import { type LinkageKindName, makeCorner, parseLength, typedLength, type UnitSystem } from "@armwright/engine";
import { type CarDocument, readCarValue, startingDocument } from "@armwright/engine/document";

/** What a builder knows before anything is drawn; lengths as typed, in the chosen unit system. */
export interface NewCarAnswers {
  readonly name: string;
  readonly kind: LinkageKindName;
  readonly units: UnitSystem;
  readonly tyreDiameter: string;
  readonly tyreWidth: string;
  readonly trackWidth: string;
  readonly clearance: string;
  readonly bump: string;
  readonly droop: string;
}

export const QUESTIONS = [
  ["tyreDiameter", "Tyre, height over all", "33", "840"],
  ["tyreWidth", "Tyre, greatest width", "12 1/2", "320"],
  ["trackWidth", "Track width wanted, middle of tyre to middle of tyre", "72", "1830"],
  ["clearance", "Height under the body at ride", "10 1/2", "265"],
  ["bump", "Travel up wanted", "7", "180"],
  ["droop", "Travel down wanted", "6", "150"],
] as const satisfies readonly (readonly [keyof NewCarAnswers, string, string, string])[];

/** Stands behind the mark that forward is measured from, until the builder writes a mark of their own. */
export const GUESS = "(starting guess: every point is still to be measured)";

/** Points of the invented layout this far out, m, belong to the chassis, or to the wheel. */
const AT_CHASSIS = 12 * 0.0254;
const AT_WHEEL = 28 * 0.0254;

/** The tyre of the invented car, m. */
const START = { loaded: 15.75 * 0.0254, freeDiameter: 33 * 0.0254 };

/**
 * An invented layout of the kind, fitted to the answers: stretched across to the track, raised with the tyre.
 * A starting guess and marked as one; the parts' own sizes (shock, joints, rod ends) stay as sold.
 */
export function scaledStart(answers: NewCarAnswers): CarDocument | { readonly fault: string } {
  const read = (text: string, what: string): number => {
    const parsed = parseLength(text, answers.units);
    if (!parsed.ok || parsed.metres <= 0)
      throw new RangeError(`${what}: ${text === "" ? "is empty" : `"${text}" is not a length`}`);
    return parsed.metres;
  };
  try {
    const size = Object.fromEntries(QUESTIONS.map(([key, words]) => [key, read(answers[key], words)])) as Record<
      (typeof QUESTIONS)[number][0],
      number
    >;
    return scaled(startingDocument(answers.kind, answers.units), answers, size);
  } catch (error) {
    if (error instanceof RangeError) return { fault: error.message };
    throw error;
  }
}

/** The invented car as this one would have begun with the tyre and the track that it has now; null of a car that began otherwise. */
export function inventedFor({ datum, linkage, units, wheel, targets }: CarDocument): CarDocument | null {
  if (typeof datum !== "string" || !datum.endsWith(GUESS)) return null;
  const start = startingDocument(linkage.kind as LinkageKindName, units);
  const radius = metresOf(wheel.freeRadius, units);
  const track = metresOf(targets?.trackWidth, units);
  return placed(start, {
    tyreDiameter: radius > 0 ? 2 * radius : START.freeDiameter,
    trackWidth: track > 0 ? track : trackOf(start),
  });
}

type Sizes = Record<(typeof QUESTIONS)[number][0], number>;

const loadedOf = (tyreDiameter: number): number => (START.loaded * tyreDiameter) / START.freeDiameter;

/** The invented car with its points where track and tyre want them, everything else as it was. */
function placed(start: CarDocument, { trackWidth, tyreDiameter }: Pick<Sizes, "trackWidth" | "tyreDiameter">) {
  const { units } = start;
  const typed = (metres: number): number | string => typedLength(metres, units);
  const wider = (trackWidth - trackOf(start)) / 2;
  const rise = loadedOf(tyreDiameter) - START.loaded;
  const moved = (value: unknown, name: string): unknown => {
    if (Array.isArray(value)) return value.map((each) => moved(each, name));
    if (typeof value !== "object" || value === null) return value;
    const fields = value as Readonly<Record<string, unknown>>;
    const isPoint = ["x", "y", "z"].every((axis) => fields[axis] !== undefined) && name !== "size" && name !== "normal";
    return Object.fromEntries(
      Object.entries(fields).map(([key, each]) => {
        if (isPoint && key === "y") return [key, typed(across(metresOf(each, units), wider))];
        if (isPoint && key === "z") return [key, typed(metresOf(each, units) + rise)];
        return [key, moved(each, key)];
      }),
    );
  };
  return moved(start, "") as CarDocument;
}

function scaled(start: CarDocument, answers: NewCarAnswers, size: Sizes): CarDocument {
  const typed = (metres: number): number | string => typedLength(metres, answers.units);
  const made = placed(start, size);
  return {
    ...made,
    name: answers.name.trim() === "" ? start.name : answers.name.trim(),
    datum: `${start.datum} ${GUESS}`,
    wheel: {
      ...made.wheel,
      freeRadius: typed(size.tyreDiameter / 2),
      loadedRadius: typed(loadedOf(size.tyreDiameter)),
      sectionWidth: typed(size.tyreWidth),
    },
    underbody: (made.underbody ?? []).map((low) => ({ ...low, z: typed(size.clearance) })),
    targets: {
      ...made.targets,
      trackWidth: typed(size.trackWidth),
      bump: typed(size.bump),
      droop: typed(size.droop),
    },
  };
}

/** Between the contact points of the invented car, m: camber brings them a little apart. */
function trackOf(start: CarDocument): number {
  const reading = readCarValue(start);
  if (!reading.ok) throw new Error("bug in armwright: the starting car cannot be read");
  return 2 * makeCorner(reading.car).attitude.designContact.y;
}

/** What is at the wheel goes out with it, what is at the chassis stays, and what lies between is stretched. */
const across = (y: number, wider: number): number =>
  y + wider * Math.min(1, Math.max(0, (y - AT_CHASSIS) / (AT_WHEEL - AT_CHASSIS)));

const metresOf = (value: unknown, units: UnitSystem): number => {
  if (typeof value !== "number" && typeof value !== "string") return 0;
  const parsed = parseLength(value, units);
  return parsed.ok ? parsed.metres : 0;
};
