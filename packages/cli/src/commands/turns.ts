import { parseLength, study, turnsFor, type UnitSystem } from "@armwright/engine";
import { readCar } from "../car-file.ts";
import { EXIT, type Io } from "../io.ts";
import type { Words } from "../parse-words.ts";
import { Refusal } from "../refusal.ts";
import { adjusterLines } from "../report/adjusters.ts";
import { alignmentLine, turnsLines, type Wanted } from "../report/turns.ts";
import { pageFor, section } from "../text/page.ts";
import { hang } from "../text/wrap.ts";

export function perform({ operands, values, flags }: Words, io: Io): number {
  const reading = readCar(operands[0]!, io);
  if (!reading) return EXIT.refused;
  const { car } = reading;
  const page = pageFor(io, car.units);
  const wanted = wantedFrom(values, flags, car.wheel.camber, 2 * car.wheel.freeRadius, car.units);
  const { adjusters } = study(car);
  const lines = [
    ...hang("", car.name, page.width).map(page.bold),
    alignmentLine("Now", car.wheel, car, page),
    ...section(page, "What one turn does at ride height", adjusterLines({ adjusters, car }, page)),
  ];
  if (adjusters.length === 0) lines.push("Nothing on this linkage screws in or out.");
  if (wanted)
    lines.push(...section(page, "Turns to the wanted setting", turnsLines(turnsFor(car, wanted), wanted, car, page)));
  io.out(`${lines.join("\n")}\n`);
  return EXIT.sound;
}

const DEGREE = Math.PI / 180;
/** No wheel is set beyond this. */
const MOST = 20;

function wantedFrom(
  values: ReadonlyMap<string, string>,
  flags: ReadonlySet<string>,
  camberNow: number,
  tyreDiameter: number,
  units: UnitSystem,
): Wanted | null {
  const camber = values.get("camber");
  const toe = values.get("toe");
  const rim = values.get("toe-at-rim");
  const hold = flags.has("hold-camber");
  if (toe !== undefined && rim !== undefined)
    throw new Refusal("--toe and --toe-at-rim are two ways to say toe: keep one.");
  if (camber !== undefined && hold)
    throw new Refusal("--hold-camber keeps camber where it is, --camber changes it: keep one.");
  if (hold && toe === undefined && rim === undefined)
    throw new Refusal("--hold-camber goes with --toe or --toe-at-rim.");
  const wanted: Wanted = {
    ...(camber !== undefined && { camber: angleFrom("--camber", camber) }),
    ...(hold && { camber: camberNow }),
    ...(toe !== undefined && { toe: angleFrom("--toe", toe) }),
    ...(rim !== undefined && { toe: rimToe(rim, tyreDiameter, units) }),
  };
  return wanted.camber === undefined && wanted.toe === undefined ? null : wanted;
}

function angleFrom(option: string, text: string): number {
  const degrees = Number(text.replace(/ ?(deg|°)$/, ""));
  if (text.trim() === "" || !Number.isFinite(degrees)) {
    throw new Refusal(`${option}: ${JSON.stringify(text)} is not an angle: write a number of degrees such as -1.5`);
  }
  if (Math.abs(degrees) > MOST)
    throw new Refusal(`${option}: ${text} degrees is beyond ${MOST}: no wheel is set so far.`);
  return degrees * DEGREE;
}

/** Toe measured between the front and the rear of the tyre, as angle of this wheel. */
function rimToe(text: string, tyreDiameter: number, units: UnitSystem): number {
  const parsed = parseLength(text, units);
  if (!parsed.ok) {
    throw new Refusal(
      `--toe-at-rim: ${JSON.stringify(text)} is not a length: write ${parsed.suggestion ?? "1/16 or -2mm"}`,
    );
  }
  const sine = parsed.metres / tyreDiameter;
  if (Math.abs(sine) > Math.sin(MOST * DEGREE))
    throw new Refusal(`--toe-at-rim: ${text} is beyond ${MOST} degrees: no wheel is set so far.`);
  return Math.asin(sine);
}
