import type { Assumption, BodyId, Dimension, Mount, UnitSystem } from "../../car/car.ts";
import { FORWARD, LEFT, mirrored, scale, UP, unit, type Vec3 } from "../../geometry/vec3.ts";
import { parseQuantity } from "../../units/quantity.ts";
import type { Assumed } from "../assumed.ts";
import type { DirectionWord } from "../fields.ts";
import { formatPath, type Path } from "../path.ts";
import type { PointDocument, Typed } from "../schema.ts";

export type DirectionDocument = DirectionWord | PlainDirection;
type PlainDirection = { readonly x: number; readonly y: number; readonly z: number };

/** Turns typed values of one side into SI, as a left corner, and notes what it had to assume. */
export interface Resolver {
  readonly side: "left" | "right";
  readonly assumed: readonly Assumption[];
  readonly value: (typed: Typed, dimension: Dimension) => number;
  readonly length: (typed: Typed) => number;
  readonly point: (typed: PointDocument) => Vec3;
  readonly direction: (typed: DirectionDocument) => Vec3;
  readonly mount: (typed: PointDocument & { readonly on?: BodyId }, at: Path) => Mount;
  /** The typed value, or the assumed one, which is then noted under the path. SI. */
  readonly either: <Rest>(typed: Typed | undefined, at: Path, assumed: Assumed<Rest>, rest: Rest) => number;
  readonly note: (at: Path, dimension: Dimension, value: number | string, because: string) => void;
}

const DIRECTIONS: Readonly<Record<DirectionWord, Vec3>> = {
  forward: FORWARD,
  rearward: scale(FORWARD, -1),
  left: LEFT,
  right: scale(LEFT, -1),
  up: UP,
  down: scale(UP, -1),
};

export function makeResolver(system: UnitSystem, side: "left" | "right", base: Path = []): Resolver {
  const assumed: Assumption[] = [];
  const toLeft = (v: Vec3): Vec3 => (side === "right" ? mirrored(v) : v);
  const value = (typed: Typed, dimension: Dimension): number => si(typed, dimension, system);
  const length = (typed: Typed): number => value(typed, "length");
  const point = (typed: PointDocument): Vec3 => toLeft({ x: length(typed.x), y: length(typed.y), z: length(typed.z) });
  const note = (at: Path, dimension: Dimension, what: number | string, because: string): void => {
    assumed.push({ path: formatPath([...base, ...at]), dimension, value: what, because });
  };
  return {
    side,
    assumed,
    value,
    length,
    point,
    note,
    direction: (typed) => toLeft(unit(typeof typed === "string" ? DIRECTIONS[typed] : typed)),
    mount: (typed, at) => {
      if (typed.on === undefined) note([...at, "on"], "word", "chassis", "the end that is bolted to the chassis");
      return { point: point(typed), on: typed.on ?? "chassis" };
    },
    either: (typed, at, assumption, rest) => {
      if (typed !== undefined) return value(typed, assumption.dimension);
      const made = Number(assumption.from(rest));
      note(at, assumption.dimension, made, assumption.because);
      return made;
    },
  };
}

/** The schema let only readable values through, so a refusal here is a fault of the program. */
function si(typed: Typed, dimension: Dimension, system: UnitSystem): number {
  const parsed = parseQuantity(typed, dimension, system);
  if (!parsed.ok) throw new Error(`bug in the document reader: ${JSON.stringify(typed)} passed as ${dimension}`);
  return parsed.value;
}
