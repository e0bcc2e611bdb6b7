import { fitLengths } from "../adjust/fit-lengths.ts";
import type { Car } from "../car/car.ts";
import { makeCorner } from "../cycle/corner.ts";
import { formatValue } from "../units/format.ts";
import { parseLength } from "../units/tape.ts";
import { quote } from "./fault.ts";
import type { Path } from "./path.ts";
import type { CarDocument, LinkageDocument, Typed } from "./schema.ts";
import { type PlacedFault, placed } from "./structure.ts";

export type Assembly =
  | { readonly ok: true; readonly car: Car; readonly warnings: readonly PlacedFault[] }
  | { readonly ok: false; readonly faults: readonly PlacedFault[] };

/**
 * Puts the corners together in the design position: with the links' own lengths where the document gives them, and so
 * that the wheel can move from there. All that does not go together at once.
 */
export function assemble(document: CarDocument, car: Car): Assembly {
  const left = assembleSide(document, document.linkage, car, []);
  if (!car.right) return left;
  const right = assembleSide(document, document.right?.linkage ?? document.linkage, car.right, ["right"]);
  if (!left.ok || !right.ok) {
    return { ok: false, faults: [...(left.ok ? [] : left.faults), ...(right.ok ? [] : right.faults)] };
  }
  return { ok: true, car: { ...left.car, right: right.car }, warnings: [...left.warnings, ...right.warnings] };
}

function assembleSide(document: CarDocument, linkage: LinkageDocument, car: Car, base: Path): Assembly {
  const given = givenLengths(linkage, [...base, "linkage"]);
  const { units } = document;
  const say = (metres: number): string => formatValue(metres, "length", units);
  const lengths: Record<string, number> = {};
  const warnings: PlacedFault[] = [];
  const members = makeCorner(car).members;
  for (const { member, at, typed } of given) {
    const parsed = parseLength(typed, units);
    const found = members.find(({ id }) => id === member);
    if (!parsed.ok || !found) continue;
    const { from, to } = found;
    const apart = Math.hypot(to.point.x - from.point.x, to.point.y - from.point.y, to.point.z - from.point.z);
    lengths[member] = parsed.metres;
    if (Math.abs(apart - parsed.metres) > SAME_LENGTH) {
      warnings.push(placed(at, "fitted-length", { found: quote(typed), expected: say(apart) }));
    }
  }
  if (given.length === 0) return movable(car, base, []);
  const fit = fitLengths(car, lengths);
  if (fit.ok) return movable(fit.car, base, warnings);
  const faults = fit.misses.map(({ member, nearest, miss }) => {
    const { at, typed } = given.find((each) => each.member === member)!;
    return placed(at, "cannot-assemble", { found: quote(typed), expected: say(nearest), other: say(Math.abs(miss)) });
  });
  return { ok: false, faults };
}

/** Lengths that agree to this are the same, m: half of a thirty-second. */
const SAME_LENGTH = 0.0254 / 64;
/** Less travel than this, m, is none. */
const LEAST_TRAVEL = 1e-4;

function movable(car: Car, base: Path, warnings: readonly PlacedFault[]): Assembly {
  const { bump, droop } = makeCorner(car).mechanism.range;
  const stuck = [...(bump.travel > LEAST_TRAVEL ? [] : ["up"]), ...(droop.travel < -LEAST_TRAVEL ? [] : ["down"])];
  if (stuck.length === 0) return { ok: true, car, warnings };
  return { ok: false, faults: [placed([...base, "linkage"], "cannot-move", { found: stuck.join(" or ") })] };
}

interface GivenLength {
  readonly member: string;
  readonly at: Path;
  readonly typed: Typed;
}

function givenLengths(linkage: LinkageDocument, at: Path): readonly GivenLength[] {
  const of = (member: string, link: { readonly length?: Typed }, place: Path): GivenLength[] =>
    link.length === undefined ? [] : [{ member, at: [...place, "length"], typed: link.length }];
  switch (linkage.kind) {
    case "h-arm":
      return of("upperLink", linkage.upperLink, [...at, "upperLink"]);
    case "double-a-arm":
      return of("toeLink", linkage.toeLink, [...at, "toeLink"]);
    case "five-link":
      return linkage.links.flatMap((link, index) => of(`links.${link.name}`, link, [...at, "links", index]));
    case "trailing-arm":
      return [];
  }
}
