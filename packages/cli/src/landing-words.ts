import { INCH, type LandingEvent, parseLength, ROAD_CLASSES, type UnitSystem } from "@armwright/engine";
import type { Words } from "./parse-words.ts";
import { Refusal } from "./refusal.ts";

const EVENTS = ["drop", "bump", "whoops", "road"] as const;

/** The event that a command line asks for; a drop where it asks for none. */
export function landingEvent({ values, flags }: Words, units: UnitSystem): LandingEvent {
  const asked = EVENTS.filter((name) => values.has(name));
  if (asked.length > 1) throw new Refusal(`--${asked.join(", --")} are several events: keep one.`);
  const oneWheel = flags.has("one-wheel");
  const length = (name: string, otherwise: number): number => lengthFrom(name, values.get(name), otherwise, units);
  const speed = (otherwise: number): number => speedFrom(values.get("speed"), otherwise, units);
  switch (asked[0] ?? "drop") {
    case "drop": {
      const height = length("drop", 24 * INCH);
      return { kind: "drop", height, ...(oneWheel && { otherLower: length("lower", 12 * INCH) }) };
    }
    case "bump": {
      const height = length("bump", 0);
      return { kind: "bump", height, length: length("length", 48 * INCH), speed: speed(20 * MPH), oneWheel };
    }
    case "whoops": {
      if (oneWheel) throw new Refusal("--one-wheel goes with --drop and --bump.");
      const height = length("whoops", 0);
      const count = wholeFrom("count", values.get("count"), 8, 100);
      return { kind: "whoops", height, spacing: length("spacing", 240 * INCH), count, speed: speed(30 * MPH) };
    }
    case "road": {
      if (oneWheel) throw new Refusal("--one-wheel goes with --drop and --bump.");
      const word = values.get("road")!.toUpperCase();
      const roadClass = ROAD_CLASSES.find((each) => each === word);
      if (!roadClass) {
        throw new Refusal(
          `--road: ${JSON.stringify(values.get("road"))} is not a class: write A (smooth) to H (very rough).`,
        );
      }
      const seconds = wholeFrom("seconds", values.get("seconds"), 20, 300);
      const seed = wholeFrom("seed", values.get("seed"), 1, 1_000_000);
      return { kind: "road", roadClass, speed: speed(30 * MPH), seconds, seed };
    }
  }
}

const MPH = 0.44704;
const KMH = 1 / 3.6;
const MOST_LENGTH = 30;
/** m/s */
const MOST_SPEED = 90;

function lengthFrom(name: string, text: string | undefined, otherwise: number, units: UnitSystem): number {
  if (text === undefined) return otherwise;
  const parsed = parseLength(text.trim(), units);
  const right = units === "metric" ? '"600" or "24in"' : '"24" or "600mm"';
  if (!parsed.ok)
    throw new Refusal(`--${name}: ${JSON.stringify(text)} is not a length: write ${parsed.suggestion ?? right}.`);
  if (parsed.metres <= 0 || parsed.metres > MOST_LENGTH) {
    throw new Refusal(`--${name}: ${JSON.stringify(text)} has to be more than nothing and less than 30 m.`);
  }
  return parsed.metres;
}

/** A bare number is miles an hour, in a metric document kilometres an hour. */
function speedFrom(text: string | undefined, otherwise: number, units: UnitSystem): number {
  if (text === undefined) return otherwise;
  const match = /^(\d+(?:\.\d+)?) ?(mph|km\/h|kmh|m\/s)?$/.exec(text.trim().toLowerCase());
  const unit = match?.[2] ?? (units === "metric" ? "km/h" : "mph");
  const value = Number(match?.[1]) * (unit === "mph" ? MPH : unit === "m/s" ? 1 : KMH);
  if (value > 0 && value <= MOST_SPEED) return value;
  throw new Refusal(`--speed: ${JSON.stringify(text)} is not a speed up to 200 mph: write "35mph" or "55km/h".`);
}

function wholeFrom(name: string, text: string | undefined, otherwise: number, most: number): number {
  if (text === undefined) return otherwise;
  const value = Number(text);
  if (/^\d+$/.test(text) && value >= 1 && value <= most) return value;
  throw new Refusal(`--${name}: ${JSON.stringify(text)} is not a whole number from 1 to ${most}.`);
}

/** The event in words, as headings and cases name it. */
export function sayEvent(event: LandingEvent, units: UnitSystem): string {
  const length = (metres: number) =>
    units === "metric" ? `${Math.round(metres * 1000)} mm` : `${trim(metres / INCH)} in`;
  const speed = (v: number) => (units === "metric" ? `${trim(v / KMH)} km/h` : `${trim(v / MPH)} mph`);
  switch (event.kind) {
    case "drop":
      return `drop from ${length(event.height)}${event.otherLower === undefined ? "" : `, the right wheel's ground ${length(event.otherLower)} lower`}`;
    case "bump":
      return `bump ${length(event.height)} high, ${length(event.length)} long at ${speed(event.speed)}${event.oneWheel ? ", left wheel only" : ""}`;
    case "whoops":
      return `${event.count} whoops ${length(event.height)} high, ${length(event.spacing)} apart at ${speed(event.speed)}`;
    case "road":
      return `road of class ${event.roadClass} at ${speed(event.speed)}, ${event.seconds} s, seed ${event.seed}`;
  }
}

const trim = (value: number): string => String(Number(value.toFixed(1)));
