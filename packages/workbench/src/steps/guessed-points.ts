import { type CarDocument, formatPath, type Path, parsePath, valueAt } from "@armwright/engine/document";
import { inventedFor } from "../files/new-car.ts";
import { stepOfPlace } from "./step-of-place.ts";
import type { StepId } from "./steps.ts";

type Point = Readonly<Record<"x" | "y" | "z", unknown>>;

/**
 * How many points of a step stand as they were invented when the car was begun: forward, and out or up, which of the two the
 * tyre and the track have not moved since. None of a car that says where it is measured from.
 */
export function guessedPoints(step: StepId, document: CarDocument): number {
  return (guessesOf(document).get(step) ?? []).filter(({ path, at }) => {
    const now = valueAt(document, parsePath(path) ?? []) as Point | undefined;
    return isPoint(now) && now.x === at.x && (now.y === at.y || now.z === at.z);
  }).length;
}

interface Guess {
  readonly path: string;
  readonly at: Point;
}

const NONE: ReadonlyMap<StepId, readonly Guess[]> = new Map();
let last: { readonly key: string; readonly guesses: ReadonlyMap<StepId, readonly Guess[]> } | undefined;

/** Asked for by every step at every movement of the hand: made anew only where tyre or track are others. */
function guessesOf(document: CarDocument): ReadonlyMap<StepId, readonly Guess[]> {
  const { datum, linkage, units, wheel, targets } = document;
  const key = JSON.stringify([datum, linkage.kind, units, wheel.freeRadius, targets?.trackWidth]);
  if (last?.key === key) return last.guesses;
  const invented = inventedFor(document);
  const guesses = invented ? byStep(pointsBelow([], invented)) : NONE;
  last = { key, guesses };
  return guesses;
}

function byStep(points: readonly Guess[]): ReadonlyMap<StepId, readonly Guess[]> {
  const found = new Map<StepId, Guess[]>();
  for (const point of points) {
    const step = stepOfPlace(point.path);
    found.set(step, [...(found.get(step) ?? []), point]);
  }
  return found;
}

function pointsBelow(path: Path, value: unknown): readonly Guess[] {
  if (isPoint(value)) return [{ path: formatPath(path), at: value }];
  if (Array.isArray(value)) return value.flatMap((each, index) => pointsBelow([...path, index], each));
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([name, each]) => pointsBelow([...path, name], each));
}

const isPoint = (value: unknown): value is Point =>
  typeof value === "object" && value !== null && "x" in value && "y" in value && "z" in value;
