import {
  type Car,
  type Corner,
  defaultRequest,
  findMounts,
  formatLength,
  type LowerZone,
  type MountRequest,
  makeCorner,
  type Proposal,
  parseLength,
  type ShockOption,
  type UnitSystem,
  type UpperZone,
  type Vec3,
  whatWouldOpen,
} from "@armwright/engine";
import { type CarDocument, nearestWord, setField, writeCarDocument } from "@armwright/engine/document";
import { readCar } from "../car-file.ts";
import { EXIT, type Io } from "../io.ts";
import type { Words } from "../parse-words.ts";
import { Refusal } from "../refusal.ts";
import { mountsJson, mountsLines } from "../report/mounts.ts";
import { readShelf } from "../shelf.ts";
import { pageFor } from "../text/page.ts";
import { plain } from "../text/plain.ts";

export function perform({ operands, values, flags }: Words, io: Io): number {
  const reading = readCar(operands[0]!, io);
  if (!reading) return EXIT.refused;
  const { car, document } = reading;
  const corner = makeCorner(car);
  const request = requestFrom(values, corner, chosenShocks(values, car, io));
  const apply = values.get("apply");
  if (apply !== undefined && (apply === operands[0] || io.isSame(apply, operands[0]!)))
    throw new Refusal(`${apply} is the car document itself: name another file for --apply.`);
  const found = asking(() => findMounts(corner, request));
  const openings = found.best.length > 0 ? [] : whatWouldOpen(corner, request);
  if (flags.has("json")) io.out(mountsJson(found, openings));
  else io.out(`${mountsLines(car, found, openings, pageFor(io, car.units)).join("\n")}\n`);
  const best = found.best[0];
  if (!best) return EXIT.must;
  if (apply !== undefined) {
    io.write(apply, writeCarDocument(applied(document, best, car.units)));
    io.err(`Wrote ${plain(apply)} with the first place.\n`);
  }
  return EXIT.sound;
}

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
    if (!car.shock) throw new Refusal("The car has no shock: add --shelf FILE with those to choose from.");
    const { shortest, longest, diameter } = car.shock;
    return [{ name: "the car's own", shortest, longest, bodyDiameter: diameter, springDiameter: 0 }];
  }
  const shelf = readShelf(io.read(file), file, car.units);
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
  return {
    ...asked,
    ...(box !== undefined && { upper: { kind: "box", ...boxOf("--upper", box, units) } satisfies UpperZone }),
    ...(tube !== undefined && { upper: upperTube(tube, corner.car) }),
    ...(lower !== undefined && { lower: [lowerZone(lower, corner)] }),
  };
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
  return { kind: "tube", keepOut: name, standoff: { x: 0, y: tube.diameter / 2 + 0.5 * 0.0254, z: 0 } };
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
  return { kind: "tube", member: member.id, standoff: member.diameter / 2 + 0.5 * 0.0254, from: 0.15, to: 0.95 };
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

/** The document with the shock put in, to the sixteenth (half a millimetre) that a tape can be set to. */
function applied(document: CarDocument, { upper, lower, shock }: Proposal, units: UnitSystem): CarDocument {
  const tape = (metres: number): string | number => {
    const text = formatLength(metres, units);
    return /^-?[\d.]+$/.test(text) ? Number(text) : text;
  };
  const point = ({ x, y, z }: Vec3) => ({ x: tape(x), y: tape(y), z: tape(z) });
  return setField(document, "shock", {
    upper: point(upper),
    lower: { ...point(lower.point), on: lower.on },
    shortest: tape(shock.shortest),
    longest: tape(shock.longest),
    diameter: tape(Math.max(shock.bodyDiameter, shock.springDiameter)),
  });
}
