import { type Car, DEGREE, parseLength, turnEffects, turnsFor, type UnitSystem } from "@armwright/engine";
import { readCar } from "../car-file.ts";
import { EXIT, type Io } from "../io.ts";
import type { Words } from "../parse-words.ts";
import { Refusal } from "../refusal.ts";
import { adjusterLines } from "../report/adjusters.ts";
import { alignmentLines, turnsLines, type Wanted } from "../report/turns.ts";
import { pageFor, section } from "../text/page.ts";
import { hang } from "../text/wrap.ts";

export function perform({ operands, values, flags }: Words, io: Io): number {
  const reading = readCar(operands[0]!, io);
  if (!reading) return EXIT.refused;
  const { car } = reading;
  const page = pageFor(io, car.units);
  const wanted = wantedFrom(values, flags, car);
  const adjusters = turnEffects(car);
  const lines = [
    ...hang("", car.name, page.width).map(page.bold),
    ...alignmentLines("Now", car.wheel, car, page),
    ...hang("", SIGNS, page.width),
    ...section(page, "What a turn does at ride height", adjusterLines({ adjusters, car }, page)),
  ];
  if (adjusters.length === 0) lines.push("Nothing on this linkage screws in or out.");
  if (wanted)
    lines.push(...section(page, "Turns to the wanted setting", turnsLines(turnsFor(car, wanted), wanted, car, page)));
  io.out(`${lines.join("\n")}\n`);
  return EXIT.sound;
}

const SIGNS = "Camber is + with the top out. Toe is this wheel's, + is in, told across rim and tyre.";

/** No wheel is set beyond this. */
const MOST = 20;

/** Ways to say how much toe is wanted; one at most is given. */
const TOE_WAYS = ["toe", "toe-at-rim", "toe-at-tyre"] as const;

function wantedFrom(values: ReadonlyMap<string, string>, flags: ReadonlySet<string>, car: Car): Wanted | null {
  const camber = values.get("camber");
  const hold = flags.has("hold-camber");
  const ways = TOE_WAYS.filter((way) => values.has(way));
  if (ways.length > 1)
    throw new Refusal(`${ways.map((way) => `--${way}`).join(" and ")} are two ways to say toe: keep one.`);
  if (camber !== undefined && hold)
    throw new Refusal("--hold-camber keeps camber where it is, --camber changes it: keep one.");
  if (hold && ways.length === 0) throw new Refusal("--hold-camber goes with --toe, --toe-at-rim or --toe-at-tyre.");
  const [way] = ways;
  const said = [
    ...(camber === undefined ? [] : [`camber ${plainDegrees(camber)} deg`]),
    ...(hold ? ["camber as it is"] : []),
    ...(way === undefined ? [] : [sayToe(way, values.get(way)!)]),
  ];
  const wanted: Wanted = {
    words: said.join(" and "),
    ...(camber !== undefined && { camber: angleFrom("--camber", camber) }),
    ...(hold && { camber: car.wheel.camber }),
    ...(way !== undefined && { toe: toeFrom(way, values.get(way)!, car) }),
  };
  return wanted.camber === undefined && wanted.toe === undefined ? null : wanted;
}

const plainDegrees = (text: string): string => text.replace(/ ?(deg|°)$/, "");

function sayToe(way: (typeof TOE_WAYS)[number], text: string): string {
  if (way === "toe") return `toe ${plainDegrees(text)} deg`;
  return `toe ${text} at the ${way === "toe-at-rim" ? "rim" : "tyre"}`;
}

function toeFrom(way: (typeof TOE_WAYS)[number], text: string, { wheel, units }: Car): number {
  if (way === "toe") return angleFrom("--toe", text);
  const across = way === "toe-at-rim" ? wheel.rimDiameter : 2 * wheel.freeRadius;
  return toeAcross(`--${way}`, text, across, units);
}

function angleFrom(option: string, text: string): number {
  const degrees = Number(plainDegrees(text));
  if (text.trim() === "" || !Number.isFinite(degrees)) {
    throw new Refusal(`${option}: ${JSON.stringify(text)} is not an angle: write a number of degrees such as -1.5`);
  }
  if (Math.abs(degrees) > MOST)
    throw new Refusal(`${option}: ${text} degrees is beyond ${MOST}: no wheel is set so far.`);
  return degrees * DEGREE;
}

/** Toe measured between the front and the rear of a circle round the wheel, as angle of this wheel. */
function toeAcross(option: string, text: string, diameter: number, units: UnitSystem): number {
  const parsed = parseLength(text, units);
  if (!parsed.ok) {
    throw new Refusal(
      `${option}: ${JSON.stringify(text)} is not a length: write ${parsed.suggestion ?? "1/16 or -2mm"}`,
    );
  }
  const sine = parsed.metres / diameter;
  if (Math.abs(sine) > Math.sin(MOST * DEGREE))
    throw new Refusal(`${option}: ${text} is beyond ${MOST} degrees: no wheel is set so far.`);
  return Math.asin(sine);
}
