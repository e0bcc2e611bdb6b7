import {
  type Car,
  type LinkageKindName,
  type Position,
  positionOf,
  type Study,
  solveAt,
  study,
  type UnitSystem,
} from "@armwright/engine";
import { type CarDocument, readCarValue, simplestDocument, startingDocument } from "@armwright/engine/document";
import type { Box, Drawing, Primitive, TextPrimitive } from "../src/index.ts";

export const KINDS: readonly LinkageKindName[] = ["h-arm", "double-a-arm", "trailing-arm", "five-link"];
export const SYSTEMS: readonly UnitSystem[] = ["inch-pound", "metric"];
export const CASES = KINDS.flatMap((kind) => SYSTEMS.map((system) => ({ kind, system })));

export function carFrom(document: unknown): Car {
  const reading = readCarValue(document);
  if (!reading.ok) throw new Error(`the test's car is broken: ${JSON.stringify(reading.faults)}`);
  return reading.car;
}

/** The starting car of a kind, its document changed where asked. */
export const startingStudy = (
  kind: LinkageKindName,
  system: UnitSystem,
  change: (document: CarDocument) => unknown = (document) => document,
): Study => study(carFrom(change(startingDocument(kind, system))));

export const simplestStudy = (kind: LinkageKindName, system: UnitSystem): Study =>
  study(carFrom(simplestDocument(kind, system)));

export function positionAt({ corner }: Study, travel: number): Position {
  const solved = solveAt(corner, travel);
  if (!solved) throw new Error(`the test's linkage does not reach ${travel} m`);
  return positionOf(corner, solved.state);
}

/** Stops, ride height, half way, and a little past both stops. */
export const travelsOf = ({ travel }: Study): readonly number[] => [
  0,
  travel.bump.stop.travel,
  travel.droop.stop.travel,
  travel.bump.stop.travel / 2,
  travel.bump.stop.travel + 0.02,
  travel.droop.stop.travel - 0.02,
];

/** All primitives of a drawing, groups opened. */
export function flat(parts: readonly Primitive[]): Exclude<Primitive, { shape: "group" }>[] {
  return parts.flatMap((part) => (part.shape === "group" ? flat(part.parts) : [part]));
}

export const textsOf = (drawing: Drawing): readonly TextPrimitive[] =>
  flat(drawing.parts).filter((part): part is TextPrimitive => part.shape === "text");

/** Places within a value that are no finite number, by their path. */
export function badNumbers(value: unknown, path = ""): string[] {
  if (value === undefined) return [`${path} undefined`];
  if (typeof value === "number") return Number.isFinite(value) ? [] : [`${path} ${value}`];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => badNumbers(inner, `${path}.${key}`));
}

export const overlapOf = (a: Box, b: Box): number =>
  Math.max(0, Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x)) *
  Math.max(0, Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y));
