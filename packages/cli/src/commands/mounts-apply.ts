import {
  type Car,
  type Corner,
  formatLength,
  type MountRequest,
  notchedBothSides,
  type Opening,
  openingWith,
  type Proposal,
  parseLength,
  toUnit,
  type UnitSystem,
  type Vec3,
} from "@armwright/engine";
import { type CarDocument, setField } from "@armwright/engine/document";
import { Refusal } from "../refusal.ts";

/** The document with the shock put in, to the sixteenth (half a millimetre) that a tape can be set to. */
export function withShock(document: CarDocument, { upper, lower, shock }: Proposal, units: UnitSystem): CarDocument {
  const point = ({ x, y, z }: Vec3) => ({ x: tape(x, units), y: tape(y, units), z: tape(z, units) });
  return setField(document, "shock", {
    upper: point(upper),
    lower: { ...point(lower.point), on: lower.on },
    shortest: tape(shock.shortest, units),
    longest: tape(shock.longest, units),
    diameter: tape(Math.max(shock.bodyDiameter, shock.springDiameter), units),
  });
}

/** More of a change than opens a place, so that mounts can be set to a tape: common practice, m. */
const EASE = 0.25 * 0.0254;
/** The notch is widened by this on every side, m: as much as tape readings are rounded. */
const CUT_WIDER = 0.0254 / 16;

/** The document with a keep-out lowered or notched and the shock in the place that this opens. Throws Refusal. */
export function withOpening(
  document: CarDocument,
  corner: Corner,
  request: MountRequest,
  opening: Opening,
): { readonly document: CarDocument; readonly opening: Opening } {
  const { car } = corner;
  const { change } = opening;
  if (change.kind !== "lower-keep-out" && change.kind !== "notch-keep-out")
    throw new Refusal("--open: this change is not one of a keep-out; ask with another shock or travel instead.");
  const eased = openingWith(corner, request, opening, EASE);
  if (!eased) throw new Refusal("--open: a quarter of an inch more of this change leaves no place: open another one.");
  const keepOuts = document.keepOuts ?? [];
  const index = keepOuts.findIndex(({ name }) => name === change.keepOut);
  const old = keepOuts[index]!;
  const pieces =
    change.kind === "lower-keep-out" ? [lowered(old, eased.by, car.units)] : notched(old, car, eased, change.keepOut);
  const list = [...keepOuts.slice(0, index), ...pieces, ...keepOuts.slice(index + 1)];
  return { document: withShock(setField(document, "keepOuts", list), eased.proposal, car.units), opening: eased };
}

type KeepOutDocument = NonNullable<CarDocument["keepOuts"]>[number];

function lowered(keepOut: KeepOutDocument, by: number, units: UnitSystem): KeepOutDocument {
  const down = <P extends { readonly z: string | number }>(point: P, z: number): P => ({ ...point, z: tape(z, units) });
  // Read back through the same tape marks that were typed.
  const height = ({ z }: { readonly z: string | number }): number => metres(z, units) - by;
  switch (keepOut.shape) {
    case "box":
      return { ...keepOut, centre: down(keepOut.centre, height(keepOut.centre)) };
    case "tube":
      return {
        ...keepOut,
        from: down(keepOut.from, height(keepOut.from)),
        to: down(keepOut.to, height(keepOut.to)),
      };
    case "half-space":
      return { ...keepOut, point: down(keepOut.point, height(keepOut.point)) };
  }
}

function notched(keepOut: KeepOutDocument, car: Car, { notch }: Opening, name: string): readonly KeepOutDocument[] {
  const box = car.keepOuts.find((each) => each.name === name);
  if (keepOut.shape !== "box" || box?.shape !== "box" || !notch)
    throw new Refusal(`--open: only a box can be notched here; bend or move ${name} by hand.`);
  const exact = (metresOf: number): number => Number(toUnit(metresOf, "length", car.units).toFixed(4));
  return notchedBothSides(box, notch, CUT_WIDER).map((piece) => ({
    ...keepOut,
    name: piece.name,
    centre: { x: exact(piece.centre.x), y: exact(piece.centre.y), z: exact(piece.centre.z) },
    size: { x: exact(2 * piece.half.x), y: exact(2 * piece.half.y), z: exact(2 * piece.half.z) },
  }));
}

function tape(length: number, units: UnitSystem): string | number {
  const text = formatLength(length, units);
  return /^-?[\d.]+$/.test(text) ? Number(text) : text;
}

/** What a tape mark of a document that has been read says, m. */
function metres(typed: string | number, units: UnitSystem): number {
  const parsed = parseLength(typed, units);
  if (!parsed.ok) throw new Error("bug in armwright: a length that was read does not read again");
  return parsed.metres;
}
