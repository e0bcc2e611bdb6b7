import { formatLength, type UnitSystem } from "@armwright/engine";
import { type Frame, groundHeight } from "./frame.ts";
import { type DesignGrip, gripNow } from "./grips.ts";
import { along } from "./kit/space.ts";
import type { Label } from "./labels.ts";
import { frameLabels } from "./parts/arm-frame.ts";
import { arrowInSpace } from "./parts/forces.ts";
import { floorReach, SQUARES } from "./parts/ground.ts";
import { keepOutMiddle } from "./parts/keep-outs.ts";
import type { MeshPicture } from "./types.ts";

const MINUS = "\u2212";

/** All words of a frame: troubles first, so that they get the best places. */
export function labelsOf(frame: Frame, held: DesignGrip | undefined, mesh: MeshPicture | null): readonly Label[] {
  const { car, options, position } = frame;
  const units = options.units ?? car.units;
  const labels: Label[] = [];
  for (const trouble of options.troubles ?? []) {
    labels.push({
      at: trouble.at,
      text: trouble.label,
      detail: trouble.finding,
      kind: "stop",
      order: trouble.order,
      ring: true,
    });
  }
  for (const { label, ...arrow } of options.forces ?? []) {
    labels.push({ at: arrowInSpace(frame, arrow).out, text: label, kind: "note" });
  }
  labels.push(...frameLabels(options.armFrame));
  if (held) labels.push({ at: gripNow(position, held), text: held.label, kind: "hold" });
  if (options.spot) labels.push({ at: options.spot.at, text: options.spot.label, kind: "note", ring: true });
  for (const { position: ghost, label } of options.ghosts ?? []) {
    labels.push({
      at: along(ghost.wheelCentre, { x: 0, y: 0, z: Math.sign(ghost.travel) || 1 }, car.wheel.freeRadius),
      text: label ?? ghostLabel(ghost.travel, units),
      kind: "note",
    });
  }
  for (const picked of mesh?.picked ?? []) labels.push({ at: picked.at, text: picked.label, kind: "note", ring: true });
  for (const keepOut of car.keepOuts) {
    labels.push({ at: keepOutMiddle(keepOut), text: keepOut.name, detail: "keep out", kind: "quiet" });
  }
  for (const { name, point } of car.underbody)
    labels.push({ at: { ...point, z: point.z + 0.03 }, text: name, kind: "quiet" });
  labels.push(...floorNumbers(frame, units));
  return labels;
}

const ghostLabel = (travel: number, units: UnitSystem): string =>
  `${travel > 0 ? "bump" : "droop"} ${formatLength(travel, units, { sign: true }).replace("-", MINUS)}`;

/** Distance from the centreline along the floor's rear edge, and the unit beside the last. */
function floorNumbers(frame: Frame, units: UnitSystem): Label[] {
  const { corner, options } = frame;
  const { size, every } = SQUARES[units];
  const { x0, y0, y1 } = floorReach(corner.wheelCentre, units, options.bothSides ?? false);
  const z = groundHeight(frame);
  const step = size * every;
  const labels: Label[] = [];
  for (let i = Math.round(y0 / step); i * step <= y1 + 1e-9; i += 1) {
    const number = formatLength(Math.abs(i * step), units);
    const isLast = (i + 1) * step > y1 + 1e-9;
    labels.push({
      at: { x: x0 - 0.09, y: i * step, z },
      text: isLast ? `${number} ${units === "metric" ? "mm" : "in"}` : number,
      kind: "quiet",
      row: { x: 0, y: 1, z: 0 },
    });
  }
  return labels;
}
