import {
  type Corner,
  hangShock,
  INCH,
  lowerKeepOut,
  type MountRequest,
  notchKeepOut,
  type Opening,
  openingWith,
} from "@armwright/engine";
import type { CarDocument, Operation } from "@armwright/engine/document";
import { Refusal } from "../refusal.ts";

/** More of a change than opens a place, so that mounts can be set to a tape: common practice, m. */
const EASE = 0.25 * INCH;

/** The edits that lower or notch a keep-out and hang the shock in the place that this opens. Throws Refusal. */
export function opened(
  document: CarDocument,
  corner: Corner,
  request: MountRequest,
  opening: Opening,
): { readonly operations: readonly Operation[]; readonly lost: string; readonly opening: Opening } {
  const { car } = corner;
  const { change } = opening;
  if (change.kind !== "lower-keep-out" && change.kind !== "notch-keep-out")
    throw new Refusal("--open: this change is not one of a keep-out; ask with another shock or travel instead.");
  const eased = openingWith(corner, request, opening, EASE);
  if (!eased) throw new Refusal("--open: a quarter of an inch more of this change leaves no place: open another one.");
  const cut =
    change.kind === "lower-keep-out"
      ? lowerKeepOut(document, change.keepOut, eased.by)
      : eased.notch && notchKeepOut(document, car, eased.notch);
  if (!cut) throw new Refusal(`--open: only a box can be notched here; bend or move ${change.keepOut} by hand.`);
  const { operations, lost } = hangShock(document, car, eased.proposal);
  return { operations: [...cut, ...operations], lost, opening: eased };
}
