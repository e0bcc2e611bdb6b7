import {
  type Car,
  COMMON_WRENCH,
  type Corner,
  defaultRequest,
  findMounts,
  formatLength,
  hangShock,
  INCH,
  type LowerZone,
  type MountRequest,
  type MountRequirements,
  makeCorner,
  ownShock,
  parseLength,
  readShockShelf,
  type ShockOption,
  type UnitSystem,
  type UpperZone,
  type Vec3,
  whatWouldOpen,
  withOwnedParts,
} from "@armwright/engine";
import { nearestWord } from "@armwright/engine/document";
import { applyFile, writeApplied } from "../apply.ts";
import { readCar } from "../car-file.ts";
import { EXIT, type Io } from "../io.ts";
import type { Words } from "../parse-words.ts";
import { Refusal } from "../refusal.ts";
import { mountsJson, mountsLines } from "../report/mounts.ts";
import { ownedJson, ownedLines } from "../report/mounts-owned.ts";
import { pageFor } from "../text/page.ts";
import { plain } from "../text/plain.ts";
import { opened } from "./mounts-apply.ts";

export function perform({ operands, values, flags }: Words, io: Io): number {
  const reading = readCar(operands[0]!, io);
  if (!reading) return EXIT.refused;
  const { car, document } = reading;
  const corner = makeCorner(car);
  const request = requestFrom(values, corner, chosenShocks(values, car, io));
  const apply = applyFile({ operands, values }, io);
  if (flags.has("with-what-i-have")) {
    if (apply !== undefined) throw new Refusal("--with-what-i-have answers only: leave --apply out.");
    const straps = values.get("straps");
    const parts =
      straps === undefined
        ? {}
        : { straps: straps.split(",").map((each) => lengthOf("--straps", each.trim(), car.units)) };
    const answer = asking(() => withOwnedParts(car, request, parts));
    io.out(flags.has("json") ? ownedJson(answer) : `${ownedLines(car, answer, pageFor(io, car.units)).join("\n")}\n`);
    return answer.shocks.some(({ reaches }) => reaches.length > 0) ? EXIT.sound : EXIT.must;
  }
  const found = asking(() => findMounts(corner, request));
  const openings = found.best.length > 0 ? [] : whatWouldOpen(corner, request);
  if (flags.has("json")) io.out(mountsJson(found, openings));
  else io.out(`${mountsLines(car, found, openings, pageFor(io, car.units)).join("\n")}\n`);
  const best = found.best[0];
  const open = values.get("open");
  if (open !== undefined) {
    if (apply === undefined) throw new Refusal("--open writes a car: add --apply FILE.");
    if (best) throw new Refusal("--open: places fit as it is, nothing has to be opened.");
    const opening = openings[Number(open) - 1];
    if (!opening)
      throw new Refusal(`--open: ${JSON.stringify(open)} is not one of the ${openings.length} changes listed.`);
    const change = opened(document, corner, request, opening);
    writeApplied(document, change.operations, apply, io);
    const by = formatLength(change.opening.by, car.units);
    io.err(`Wrote ${plain(apply)} with that change, by ${by}, and the place that it opens.${lostWords(change)}\n`);
    return EXIT.sound;
  }
  if (!best) return EXIT.must;
  if (apply !== undefined) {
    const hung = hangShock(document, car, best);
    writeApplied(document, hung.operations, apply, io);
    io.err(`Wrote ${plain(apply)} with the first place.${lostWords(hung)}\n`);
  }
  return EXIT.sound;
}

/** Springs and gas were chosen for the shock that was there before. */
const lostWords = ({ lost }: { readonly lost: string }): string =>
  lost === "" ? "" : ` Another shock: its ${lost} are to be chosen anew.`;

/** What the engine refuses is told as a refusal. */
function asking<T>(ask: () => T): T {
  try {
    return ask();
  } catch (error) {
    if (error instanceof RangeError) throw new Refusal(`mounts: ${error.message}.`);
    throw error;
  }
}

function chosenShocks(values: ReadonlyMap<string, string>, car: Car, io: Io): readonly ShockOption[] {
  const file = values.get("shelf");
  const name = values.get("shock");
  if (file === undefined) {
    if (name !== undefined) throw new Refusal("--shock names one of a shelf: add --shelf FILE.");
    const own = ownShock(car);
    if (!own) throw new Refusal("The car has no shock: add --shelf FILE with those to choose from.");
    return [own];
  }
  const shelfReading = readShockShelf(io.read(file), file, car.units);
  if (!shelfReading.ok) throw new Refusal(shelfReading.words);
  const shelf = shelfReading.shelf.shocks;
  if (name === undefined) return shelf;
  const chosen = shelf.filter((shock) => shock.name === name);
  if (chosen.length > 0) return chosen;
  const names = shelf.map((shock) => shock.name);
  const near = nearestWord(name, names);
  throw new Refusal(
    `--shock: ${JSON.stringify(name)} is not on the shelf: ${near ? `did you mean ${near}?` : `it holds ${names.join(", ")}.`}`,
  );
}

function requestFrom(
  values: ReadonlyMap<string, string>,
  corner: Corner,
  shocks: readonly ShockOption[],
): MountRequest {
  const { units } = corner.car;
  const step = values.get("step");
  const asked = defaultRequest(corner, shocks, step === undefined ? undefined : lengthOf("--step", step, units));
  if (!(asked.step >= 0.001)) throw new Refusal(`--step: ${step} is too fine: 1/16 or more.`);
  const box = values.get("upper");
  const tube = values.get("upper-tube");
  if (box !== undefined && tube !== undefined) throw new Refusal("--upper and --upper-tube are two zones: keep one.");
  const lower = values.get("lower");
  const frame = values
    .get("frame")
    ?.split(",")
    .map((name) => frameTube(name.trim(), corner.car));
  return {
    ...asked,
    ...(frame && { frame }),
    travel: travelFrom(values, asked.travel, units),
    requirements: windowsFrom(values, wrenchFrom(values, asked.requirements, units)),
    ...(box !== undefined && { upper: { kind: "box", ...boxOf("--upper", box, units) } satisfies UpperZone }),
    ...(tube !== undefined && { upper: upperTube(tube, corner.car) }),
    ...(lower !== undefined && { lower: [lowerZone(lower, corner)] }),
  };
}

/** The travel between the stops, m; what is not said stays as the car has it. */
function travelFrom(
  values: ReadonlyMap<string, string>,
  { droop, bump }: MountRequest["travel"],
  units: UnitSystem,
): MountRequest["travel"] {
  const wanted = (name: "bump" | "droop", now: number): number => {
    const text = values.get(name);
    return text === undefined ? now : lengthOf(`--${name}`, text, units);
  };
  return { droop: -wanted("droop", -droop), bump: wanted("bump", bump) };
}

/** `--stroke 80-92 %` and `--ratio 0.55-0.8`. */
function windowsFrom(values: ReadonlyMap<string, string>, requirements: MountRequirements): MountRequirements {
  const { strokeUsed, motionRatio } = requirements;
  return {
    ...requirements,
    strokeUsed: windowOf("stroke", values.get("stroke"), 100, 1) ?? strokeUsed,
    motionRatio: windowOf("ratio", values.get("ratio"), 1, 2) ?? motionRatio,
  };
}

/** Two numbers with a dash or `to` between them, in hundredths or as they are. */
function windowOf(name: string, text: string | undefined, parts: number, largest: number) {
  if (text === undefined) return null;
  const match = /^(\d+(?:\.\d+)?)\s*(?:-|to)\s*(\d+(?:\.\d+)?)\s*%?$/.exec(text.trim());
  const [least, most] = [Number(match?.[1]) / parts, Number(match?.[2]) / parts];
  if (match && least < most && most <= largest) return { least, most };
  const example = parts === 100 ? "80-92 %" : "0.55-0.8";
  throw new Refusal(`--${name}: ${JSON.stringify(text)} is not a window such as ${example}.`);
}

/** `--wrench none`, or the free length that a socket and ratchet need. */
function wrenchFrom(
  values: ReadonlyMap<string, string>,
  { wrench, ...others }: MountRequirements,
  units: UnitSystem,
): MountRequirements {
  const asked = values.get("wrench");
  if (asked === "none") return others;
  const room = wrench ?? COMMON_WRENCH;
  return { ...others, wrench: asked === undefined ? room : { ...room, length: lengthOf("--wrench", asked, units) } };
}

function frameTube(name: string, car: Car): string {
  if (car.keepOuts.some((each) => each.shape === "tube" && each.name === name)) return name;
  const tubes = car.keepOuts.filter(({ shape }) => shape === "tube").map((each) => each.name);
  throw new Refusal(`--frame: no tube called ${JSON.stringify(name)}; the tubes are ${tubes.join(", ") || "none"}.`);
}

function upperTube(name: string, car: Car): UpperZone {
  const tube = car.keepOuts.find((each) => each.name === name);
  if (tube?.shape !== "tube") {
    const tubes = car.keepOuts.filter(({ shape }) => shape === "tube").map((each) => each.name);
    throw new Refusal(
      `--upper-tube: no tube called ${JSON.stringify(name)}; the tubes are ${tubes.join(", ") || "none"}.`,
    );
  }
  // A tab outboard of the tube, the eye clear of it by half an inch: common practice.
  return { kind: "tube", keepOut: name, standoff: { x: 0, y: tube.diameter / 2 + 0.5 * INCH, z: 0 } };
}

function lowerZone(text: string, corner: Corner): LowerZone {
  const { units } = corner.car;
  const box = /^(box .+) on (\S+)$/.exec(text);
  if (box) {
    const on = ["spindle", ...corner.arms.map(({ body }) => body)].find((body) => body === box[2]);
    if (!on) throw new Refusal(`--lower: ${box[2]} is no part of this linkage that carries a shock.`);
    return { kind: "box", on: on as "spindle", ...boxOf("--lower", box[1]!, units) };
  }
  const tubes = corner.members.filter(({ body }) => body !== "link");
  const member = tubes.find(({ id }) => id === text);
  if (!member)
    throw new Refusal(
      `--lower: ${JSON.stringify(text)} is neither "box x1,y1,z1 x2,y2,z2 on BODY" nor an arm's tube (${tubes.map(({ id }) => id).join(", ") || "this linkage has none"}).`,
    );
  return { kind: "tube", member: member.id, standoff: member.diameter / 2 + 0.5 * INCH, from: 0.15, to: 0.95 };
}

const TAPE = "(-?[^,]+)";
const POINT = `${TAPE},${TAPE},${TAPE}`;

/** Two opposite corners; a tape mark such as 12 3/16 holds a blank, so the second is what leaves three readings each. */
function boxOf(option: string, text: string, units: UnitSystem): { readonly from: Vec3; readonly to: Vec3 } {
  const body = text.replace(/^box\s+/, "");
  const blanks = [...body.matchAll(/\s+/g)].map(({ index }) => index);
  for (const at of blanks) {
    const halves = [body.slice(0, at), body.slice(at).trim()].map((half) => new RegExp(`^${POINT}$`).exec(half));
    if (!halves.every((half) => half !== null)) continue;
    const [a, b] = halves.map((half) => half!.slice(1, 4).map((each) => parseLength(each.trim(), units)));
    if (![...a!, ...b!].every(({ ok }) => ok)) continue;
    const point = (three: readonly ReturnType<typeof parseLength>[]): Vec3 => {
      const [x, y, z] = three.map((each) => (each.ok ? each.metres : 0));
      return { x: x!, y: y!, z: z! };
    };
    return { from: point(a!), to: point(b!) };
  }
  throw new Refusal(
    `${option}: ${JSON.stringify(text)} is not a box: write "box 0,14,26 8,20,36", two opposite corners.`,
  );
}

function lengthOf(option: string, text: string, units: UnitSystem): number {
  const parsed = parseLength(text, units);
  if (parsed.ok && parsed.metres > 0) return parsed.metres;
  throw new Refusal(`${option}: ${JSON.stringify(text)} is not a length above zero such as 1/2.`);
}
