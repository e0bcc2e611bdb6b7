import { INCH, type LandingEvent, parseLength, ROAD_CLASSES, type UnitSystem } from "@armwright/engine";
import type { EventKind, LandingState } from "./landing-store.ts";

export const EVENT_WORDS: Readonly<Record<EventKind, string>> = {
  drop: "a drop",
  bump: "one bump",
  whoops: "whoops",
  road: "a rough road",
};
export const EVENT_KINDS = ["drop", "bump", "whoops", "road"] as const satisfies readonly EventKind[];

/** One value of an event: how it is read, its usual value, and how far it may go. */
export interface EventField {
  readonly name: string;
  readonly label: string;
  readonly read: "length" | "speed" | "whole" | "class";
  readonly usual: Readonly<Record<UnitSystem, string>>;
  readonly most?: number;
  /** Asked for only where one wheel alone meets it. */
  readonly isForOneWheel?: boolean;
}

const both = (usual: string): EventField["usual"] => ({ "inch-pound": usual, metric: usual });
const length = (name: string, label: string, inches: string, mm: string): EventField => ({
  name,
  label,
  read: "length",
  usual: { "inch-pound": inches, metric: mm },
});
const speed = (mph: string, kmh: string): EventField => ({
  name: "speed",
  label: "speed",
  read: "speed",
  usual: { "inch-pound": mph, metric: kmh },
});

export const EVENT_FIELDS: Readonly<Record<EventKind, readonly EventField[]>> = {
  drop: [
    length("drop.height", "tyre above ground", "24", "600"),
    { ...length("drop.lower", "other wheel’s ground lower by", "12", "300"), isForOneWheel: true },
  ],
  bump: [length("bump.height", "height", "8", "200"), length("bump.length", "length", "48", "1200"), speed("20", "30")],
  whoops: [
    length("whoops.height", "height", "12", "300"),
    length("whoops.spacing", "crest to crest", "240", "6000"),
    { name: "whoops.count", label: "how many", read: "whole", usual: both("8"), most: 100 },
    speed("30", "50"),
  ],
  road: [
    { name: "road.class", label: "class, A smooth to H", read: "class", usual: both("F") },
    speed("30", "50"),
    { name: "road.seconds", label: "seconds", read: "whole", usual: both("10"), most: 300 },
    { name: "road.seed", label: "which road", read: "whole", usual: both("1"), most: 1_000_000 },
  ],
};

const MPH = 0.44704;
const KMH = 1 / 3.6;
/** m, m/s */
const MOST_LENGTH = 30;
const MOST_SPEED = 90;

export const unitOfField = ({ read }: EventField, units: UnitSystem): string => {
  if (read === "length") return units === "metric" ? "mm" : "in";
  if (read === "speed") return units === "metric" ? "km/h" : "mph";
  return "";
};

/** The event as typed, or what is wrong with which field, in words. */
export function eventOf(
  { kind, typed, oneWheel }: Pick<LandingState, "kind" | "typed" | "oneWheel">,
  units: UnitSystem,
):
  | { readonly ok: true; readonly event: LandingEvent }
  | { readonly ok: false; readonly field: string; readonly words: string } {
  const values: Record<string, number> = {};
  for (const field of EVENT_FIELDS[kind]) {
    if (field.isForOneWheel && !oneWheel) continue;
    const value = readField(field, typed[field.name] ?? field.usual[units], units);
    if (typeof value === "string") return { ok: false, field: field.name, words: value };
    values[field.name.replace(/^.*\./, "")] = value;
  }
  const { height = 0, lower, length: long = 0, spacing = 0, count = 1, speed: v = 0, seconds = 1, seed = 1 } = values;
  switch (kind) {
    case "drop":
      return { ok: true, event: { kind, height, ...(lower !== undefined && { otherLower: lower }) } };
    case "bump":
      return { ok: true, event: { kind, height, length: long, speed: v, oneWheel } };
    case "whoops":
      return { ok: true, event: { kind, height, spacing, count, speed: v } };
    case "road":
      return {
        ok: true,
        event: { kind, roadClass: ROAD_CLASSES[values["class"] ?? 0]!, speed: v, seconds, seed },
      };
  }
}

function readField({ label, read, most = 0 }: EventField, text: string, units: UnitSystem): number | string {
  const said = JSON.stringify(text.trim());
  switch (read) {
    case "length": {
      const parsed = parseLength(text.trim(), units);
      if (!parsed.ok) return `${label}: ${said} is not a length, write ${units === "metric" ? "600" : "24"}.`;
      if (parsed.metres <= 0 || parsed.metres > MOST_LENGTH)
        return `${label}: ${said} has to be more than nothing and at most ${units === "metric" ? "30 m" : "98 ft"}.`;
      return parsed.metres;
    }
    case "speed": {
      const match = /^(\d+(?:\.\d+)?) ?(mph|km\/h|kmh)?$/.exec(text.trim().toLowerCase());
      const unit = match?.[2] ?? (units === "metric" ? "km/h" : "mph");
      const value = Number(match?.[1]) * (unit === "mph" ? MPH : KMH);
      if (value > 0 && value <= MOST_SPEED) return value;
      return `${label}: ${said} is not a speed up to ${units === "metric" ? "320 km/h, write 50" : "200 mph, write 30"}.`;
    }
    case "whole": {
      const value = Number(text.trim());
      if (/^\d+$/.test(text.trim()) && value >= 1 && value <= most) return value;
      return `${label}: ${said} is not a whole number from 1 to ${most.toLocaleString("en")}.`;
    }
    case "class": {
      const place = ROAD_CLASSES.map(String).indexOf(text.trim().toUpperCase());
      return place >= 0 ? place : `${label}: ${said} is not a class, write A (smooth) to H (very rough).`;
    }
  }
}

/** The event in words, as headings and cases name it. */
export function sayEvent(event: LandingEvent, units: UnitSystem): string {
  const long = (metres: number): string =>
    units === "metric" ? `${Math.round(metres * 1000)} mm` : `${trim(metres / INCH)} in`;
  const fast = (v: number): string => (units === "metric" ? `${trim(v / KMH)} km/h` : `${trim(v / MPH)} mph`);
  switch (event.kind) {
    case "drop":
      return `drop from ${long(event.height)}${event.otherLower === undefined ? "" : `, the ground of the other wheel ${long(event.otherLower)} lower`}`;
    case "bump":
      return `bump ${long(event.height)} high, ${long(event.length)} long at ${fast(event.speed)}${event.oneWheel ? ", one wheel" : ""}`;
    case "whoops":
      return `${event.count} whoops ${long(event.height)} high, ${long(event.spacing)} apart at ${fast(event.speed)}`;
    case "road":
      return `road of class ${event.roadClass} at ${fast(event.speed)}, ${event.seconds} s, road ${event.seed}`;
  }
}

const trim = (value: number): string => String(Number(value.toFixed(1)));
