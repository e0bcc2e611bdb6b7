import { distance, midpoint } from "@armwright/engine";
import { bar, gapOf, headingOf, offset, rounded } from "../path.ts";
import type { Ink, Primitive, Spot } from "../primitive.ts";
import { inTrouble, isPartHeld, mountAt, mountPoint, type Scene } from "../scene.ts";
import { area, group } from "../sketch.ts";

const INCH = 0.0254;
/** Share of the shock's shortest length that its body takes; the rest is shaft and eyes. A usual one, not the car's. */
const BODY = 0.6;
/** Of the room for springs, what the upper (tender) one takes, and how many coils each shows. */
const TENDER = 0.34;
const TENDER_COILS = 5;
const MAIN_COILS = 7;

/** Shock between its two eyes at its true length, with what of springs, seats and slider the car has over it. */
export function coiloverParts(scene: Scene): { readonly depth: number; readonly parts: Primitive } | null {
  const shock = scene.car.shock;
  if (!shock) return null;
  const { scale, pen, view } = scene;
  const top = mountPoint(scene, shock.upper);
  const bottom = mountPoint(scene, shock.lower);
  const a = mountAt(scene, shock.upper);
  const b = mountAt(scene, shock.lower);
  const h = headingOf(a, b);
  const length = gapOf(a, b);
  const trueLength = distance(top, bottom);
  // Seen slanted away, all that lies along the shock shrinks alike.
  const per = trueLength > 0 ? length / trueLength : 0;
  const ink: Ink = inTrouble(scene, "shock") ? "stop" : isPartHeld(scene, "shock") ? "hold" : "ink";
  const wide = Math.max((shock.diameter / 2) * scale, 3 * pen);
  const piece = (from: number, to: number, half: number): Primitive =>
    area("shock", bar(offset(a, h, from, 0), offset(a, h, to, 0), half), { ink, meaning: "shock" });
  const eye = 0.9 * INCH * per;
  const body = BODY * shock.shortest * per;
  const seatTop = eye + 1.0 * INCH * per;
  const seatBottom = length - eye - 0.7 * INCH * per;
  const slider = seatTop + TENDER * (seatBottom - seatTop);
  const plate = 0.35 * INCH * per;
  const parts: Primitive[] = [
    piece(eye * 0.6, length, wide * 0.2),
    piece(eye * 0.6, Math.min(body, length - eye), wide * 0.58),
    ...springs(),
    piece(-eye * 0.55, eye * 0.55, wide * 0.3),
    piece(length - eye * 0.55, length + eye * 0.55, wide * 0.3),
  ];
  return {
    depth: view.depth(midpoint(top, bottom)),
    parts: group("shock", parts, { meaning: "shock", label: shock.springs ? "coilover" : "shock" }),
  };

  /** Seats with one spring between them, or two and the slider; nothing where the car has none. */
  function springs(): readonly Primitive[] {
    if (!shock?.springs) return [];
    const seats = [
      piece(seatTop - plate, seatTop + plate * 0.4, wide * 0.98),
      piece(seatBottom - plate * 0.4, seatBottom + plate, wide * 0.98),
    ];
    if (!shock.springs.tender)
      return [...coils(seatTop + plate, seatBottom - plate, TENDER_COILS + MAIN_COILS, 1), ...seats];
    return [
      ...coils(seatTop + plate, slider - plate, TENDER_COILS, 0.86),
      ...coils(slider + plate, seatBottom - plate, MAIN_COILS, 1),
      piece(slider - plate * 0.6, slider + plate * 0.6, wide * 1.02),
      ...seats,
    ];
  }

  /** Slanted bars, front halves only. */
  function coils(from: number, to: number, most: number, share: number): Primitive[] {
    const count = Math.max(1, Math.min(most, Math.floor((to - from) / (3.6 * pen))));
    const pitch = Math.max(to - from, 0) / count;
    const wire = Math.min(Math.max(pitch * 0.34, 0.4 * pen), 3.4 * pen, 0.32 * INCH * scale);
    const half = wide * share - wire;
    const at = (along: number, side: number): Spot => offset(a, h, along, side);
    return Array.from({ length: count }, (_, i) => {
      const middle = from + (i + 0.5) * pitch;
      const slant = Math.min(pitch * 0.3, half * 0.4);
      return area("shock", rounded(at(middle + slant, -half), at(middle - slant, half), wire), {
        ink,
        weight: "visible",
        meaning: "shock",
      });
    });
  }
}
