import {
  type Dimension,
  fromUnit,
  INCH,
  type LinkageKindName,
  parseQuantity,
  STANDARD_GRAVITY,
  type Study,
  toUnit,
  USUAL_RATIOS,
} from "@armwright/engine";
import {
  type CarDocument,
  type FieldValue,
  type Operation,
  parsePath,
  startingDocument,
  type Typed,
  valueAt,
} from "@armwright/engine/document";
import { solvedAt, valueIn } from "../store/position.ts";
import { cornerPlace } from "../store/sides.ts";

type Values = Readonly<Record<string, FieldValue>>;
type Typist = (inchPound: Typed, metric: Typed) => Typed;

/**
 * Parts that a car may do without, as they stand on an invented car of the same kind or as common practice has them: a start
 * for the builder's own numbers. The study, where there is one, lets a spring be about stiff enough for its corner.
 */
export function startOfPart(place: string, document: CarDocument, study: Study | null = null): FieldValue {
  const as = typistFor(document);
  const part = cornerPlace(place);
  const made = STARTS[part]?.(as, document, study);
  if (made) return made;
  const path = parsePath(part) ?? [];
  const start = startingDocument(document.linkage.kind as LinkageKindName, document.units);
  const found = valueAt(start, path);
  if (found === undefined) throw new Error(`bug in the forms: no start is known for ${part}`);
  return found as FieldValue;
}

const typistFor =
  ({ units }: CarDocument): Typist =>
  (inchPound, metric) =>
    units === "metric" ? metric : inchPound;

/** Common practice, as the fields' own notes say; sizes that depend on the shock are taken from it. */
const STARTS: Readonly<Record<string, (as: Typist, document: CarDocument, study: Study | null) => Values>> = {
  tolerances: (as) => ({ tacked: as("1/16", 1.5) }),
  "bumpStop.rubber": (as) => ({ diameter: as(2, 50), hardness: 60 }),
  "bumpStop.gas": (as) => ({ pressure: as(100, 7), rodDiameter: as(1, 25) }),
  "shock.springs": (as, document, study) => ({ main: startingSpring(as, document, study), preload: as(1, 25) }),
  "shock.springs.tender": (as, document, study) => startingSpring(as, document, study, TENDER),
  "shock.gas": (as) => ({ kind: "reservoir", pressure: as(200, 14), rodDiameter: as("7/8", 22) }),
  damper: () => ({ bumpRatio: USUAL_RATIOS.bump, reboundRatio: USUAL_RATIOS.rebound }),
};

/** Half as stiff as the spring beneath it. */
const TENDER = 0.5;
/** N/m, of 300 lb/in: the middle of what is usual, from memory, where the weight on the corner is not known. */
const MIDDLE_RATE = fromUnit(300, "rate", "inch-pound");
/** Of its free length a spring is left when solid, from memory: the same as is assumed where it is not entered. */
const SOLID = 0.42;
const PRELOAD = INCH;

/** One that has room for the shock's stroke, and carries the corner with the wheel about at ride height. */
function startingSpring(as: Typist, document: CarDocument, study: Study | null, share = 1): Values {
  const length = (value: unknown): number | undefined => metres(value, document);
  const longest = length(document.shock?.longest);
  const shortest = length(document.shock?.shortest);
  const stroke = longest !== undefined && shortest !== undefined ? longest - shortest : 10 * INCH;
  const free = (stroke + PRELOAD) / (1 - SOLID);
  const rate = (study && longest !== undefined ? carryingRate(study, longest) : undefined) ?? MIDDLE_RATE;
  return {
    rate: as(
      25 * Math.max(1, Math.round(toUnit(share * rate, "rate", "inch-pound") / 25)),
      5 * Math.max(1, Math.round(toUnit(share * rate, "rate", "metric") / 5)),
    ),
    freeLength: as(Math.ceil(free / INCH), 10 * Math.ceil(free / 0.01)),
  };
}

/** Sprung weight on the corner = rate · (squeeze at ride + preload) · motion ratio; N/m. Gas is left out. */
function carryingRate(study: Study, longest: number): number | undefined {
  const { cornerMass, unsprungMass } = study.car.chassis;
  const solved = solvedAt(study, 0);
  const at = (id: string): number | null => {
    const quantity = study.quantities.find((each) => each.id === id);
    return quantity ? valueIn(study, quantity, solved) : null;
  };
  const length = at("shockLength");
  const ratio = at("motionRatio");
  if (cornerMass === undefined || length === null || ratio === null || !(ratio > 0.05)) return undefined;
  const sprung = (cornerMass - (unsprungMass ?? 0)) * STANDARD_GRAVITY;
  const squeeze = longest - length + PRELOAD;
  return sprung > 0 && squeeze > 0 ? sprung / (squeeze * ratio) : undefined;
}

/** Why a part cannot be added as things are, in words; undefined where it can. */
export function whyNotAdded(place: string, document: CarDocument): string | undefined {
  const part = cornerPlace(place);
  if (!FORCES_OF_STOP.includes(part)) return undefined;
  const path = parsePath(place) ?? [];
  const other = FORCES_OF_STOP.find(
    (each) => each !== part && valueAt(document, [...path.slice(0, -1), each.slice("bumpStop.".length)]) !== undefined,
  );
  return other && `The stop's push is told by its ${SAID[other]} already: take that off first.`;
}

const FORCES_OF_STOP: readonly string[] = ["bumpStop.rubber", "bumpStop.gas", "bumpStop.measured"];
const SAID: Readonly<Record<string, string>> = {
  "bumpStop.rubber": "rubber",
  "bumpStop.gas": "gas",
  "bumpStop.measured": "measured readings",
};

/** Takes a part off, and with it what would then point at nothing. */
export function takeOff(place: string, document: CarDocument): readonly Operation[] {
  const word = STOP_WORDS[place];
  const stops = word === undefined ? [] : (["bump", "droop"] as const).filter((end) => document.stops?.[end] === word);
  return [{ path: place, value: undefined }, ...stops.map((end) => ({ path: `stops.${end}`, value: undefined }))];
}

const STOP_WORDS: Readonly<Record<string, string>> = { strap: "strap", bumpStop: "bump-stop" };

export type NewItem = { readonly words: string; readonly value: FieldValue };

/** What can be added to a list. */
export function newItems(list: string, document: CarDocument): readonly NewItem[] {
  const known = valueAt(document, parsePath(list) ?? []);
  const items: readonly FieldValue[] = Array.isArray(known) ? known : [];
  const readings = READINGS[cornerPlace(list)];
  if (readings) return [{ words: "a reading", value: nextReading(readings, items, document) }];
  const size = (inches: number): number => (document.units === "metric" ? Math.round(inches * 25.4) : inches);
  if (list === "underbody")
    return [{ words: "a low point", value: { name: free("low point", items), x: size(0), y: size(10), z: size(11) } }];
  const at = (x: number, y: number, z: number): FieldValue => ({ x: size(x), y: size(y), z: size(z) });
  const diameter = document.units === "metric" ? 38 : "1 1/2";
  const item = (words: string, value: Values): NewItem => ({
    words,
    value: { ...value, name: free(String(value["name"]), items) },
  });
  return [
    item("a box", { shape: "box", name: "tank", centre: at(10, 8, 34), size: at(12, 12, 10) }),
    item("a tube", { shape: "tube", name: "tube", from: at(-12, 12, 10), to: at(-12, 12, 40), diameter }),
    item("a flat face", { shape: "half-space", name: "wall", point: at(26, 0, 20), normal: "rearward" }),
  ];
}

/** A name that no other thing of the list has. */
function free(name: string, items: readonly FieldValue[]): string {
  const taken = items.map((item) => (item as Values)["name"]);
  for (let count = 1; ; count += 1) {
    const tried = count === 1 ? name : `${name} ${count}`;
    if (!taken.includes(tried)) return tried;
  }
}

/** One step of each value of a reading, in the document's units: what is usual for the first one. */
type Steps = Readonly<
  Record<string, { readonly dimension: Dimension; readonly inchPound: number; readonly metric: number }>
>;

const force = (inchPound: number, metric: number) => ({ dimension: "force", inchPound, metric }) as const;
const speed = { dimension: "speed", inchPound: 10, metric: 0.25 } as const;
const READINGS: Readonly<Record<string, Steps>> = {
  "strap.stretch": { percent: { dimension: "percent", inchPound: 7.5, metric: 7.5 }, force: force(2000, 9000) },
  "bumpStop.measured": { squeeze: { dimension: "length", inchPound: 0.5, metric: 12 }, force: force(500, 2200) },
  "damper.bump": { speed, force: force(100, 450) },
  "damper.rebound": { speed, force: force(200, 900) },
};

/** One step beyond the last reading, so that the list stays in order. */
function nextReading(steps: Steps, items: readonly FieldValue[], document: CarDocument): FieldValue {
  const last = items.at(-1) as Values | undefined;
  return Object.fromEntries(
    Object.entries(steps).map(([name, { dimension, inchPound, metric }]): [string, FieldValue] => {
      const step = document.units === "metric" ? metric : inchPound;
      const before = last?.[name] as Typed | undefined;
      const read = before === undefined ? undefined : parseQuantity(before, dimension, document.units);
      const one = parseQuantity(step, dimension, document.units);
      const next = read?.ok && one.ok ? (step * (read.value + one.value)) / one.value : step;
      return [name, Math.round(next * 1000) / 1000];
    }),
  );
}

function metres(value: unknown, { units }: CarDocument): number | undefined {
  if (typeof value !== "number" && typeof value !== "string") return undefined;
  const parsed = parseQuantity(value, "length", units);
  return parsed.ok ? parsed.value : undefined;
}
