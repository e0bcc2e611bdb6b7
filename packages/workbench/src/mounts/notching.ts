import { formatLength, type KeepOutBox, type Notch, type UnitSystem, type Vec3 } from "@armwright/engine";
import type { CarDocument, FieldValue, Typed } from "@armwright/engine/document";
import type { Operation } from "../store/operations.ts";

/** Cut a mark wider all round, so that what is rounded to the tape closes nothing again, m. */
const WIDER: Readonly<Record<UnitSystem, number>> = { "inch-pound": 0.0254 / 16, metric: 0.001 };

/** A part of a box between two corners, in the box's own axes from its middle. */
interface Piece {
  readonly low: Vec3;
  readonly high: Vec3;
}

/**
 * The edit that cuts a notch out of a box among the keep-outs: what is left of it, as boxes of its own, named after it.
 * Null where there is no such box, or nothing of it would be left.
 */
export function notching(document: CarDocument, box: KeepOutBox, notch: Notch): readonly Operation[] | null {
  const keepOuts = (document.keepOuts ?? []) as readonly Readonly<Record<string, FieldValue>>[];
  const index = keepOuts.findIndex((each) => each["name"] === box.name);
  const whole = keepOuts[index];
  if (!whole || notch.keepOut !== box.name) return null;
  const { units } = document;
  const pieces = around(box.half, notch, WIDER[units]);
  if (pieces.length === 0) return null;
  const taken = new Set(keepOuts.map((each) => String(each["name"])));
  taken.delete(box.name);
  const parts = pieces.map((piece) => ({
    ...whole,
    name: freeName(box.name, taken),
    centre: typedPoint(onCar(box, middleOf(piece)), units),
    size: typedPoint(sizeOf(piece), units),
  }));
  const value = [...keepOuts.slice(0, index), ...parts, ...keepOuts.slice(index + 1)] as unknown as FieldValue;
  return [{ path: "keepOuts", value }];
}

/** What is left of a box round a notch: whole slabs first, thinner ones beside the notch. Slivers are left out. */
function around(half: Vec3, { from, to }: Notch, wider: number): readonly Piece[] {
  const pieces: Piece[] = [];
  let low = { x: -half.x, y: -half.y, z: -half.z };
  let high = half;
  for (const axis of ["z", "y", "x"] as const) {
    const start = from[axis] - wider;
    const end = to[axis] + wider;
    if (start - low[axis] > wider) {
      pieces.push({ low, high: { ...high, [axis]: start } });
      low = { ...low, [axis]: start };
    }
    if (high[axis] - end > wider) {
      pieces.push({ low: { ...low, [axis]: end }, high });
      high = { ...high, [axis]: end };
    }
  }
  return pieces;
}

const middleOf = ({ low, high }: Piece): Vec3 => ({
  x: (low.x + high.x) / 2,
  y: (low.y + high.y) / 2,
  z: (low.z + high.z) / 2,
});

const sizeOf = ({ low, high }: Piece): Vec3 => ({ x: high.x - low.x, y: high.y - low.y, z: high.z - low.z });

function onCar({ centre, axisX: a, axisY: b }: KeepOutBox, at: Vec3): Vec3 {
  const c = { x: a.y * b.z - a.z * b.y, y: a.z * b.x - a.x * b.z, z: a.x * b.y - a.y * b.x };
  return {
    x: centre.x + a.x * at.x + b.x * at.y + c.x * at.z,
    y: centre.y + a.y * at.x + b.y * at.y + c.y * at.z,
    z: centre.z + a.z * at.x + b.z * at.y + c.z * at.z,
  };
}

function freeName(name: string, taken: Set<string>): string {
  for (let count = 1; ; count += 1) {
    const made = `${name}, part ${count}`;
    if (taken.has(made)) continue;
    taken.add(made);
    return made;
  }
}

const typedPoint = (point: Vec3, units: UnitSystem) => ({
  x: typed(point.x, units),
  y: typed(point.y, units),
  z: typed(point.z, units),
});

/** To a thirty-second: a middle lies half a mark off its ends. */
function typed(metres: number, units: UnitSystem): Typed {
  const text = formatLength(metres, units, { denominator: 32 });
  return /^-?\d+(?:\.\d+)?$/.test(text) ? Number(text) : text;
}
