import type { Vec3 } from "@armwright/engine";
import { bench } from "../store/bench.ts";
import { stepOf } from "../words/shown.ts";
import { mountsBench } from "./mounts-store.ts";
import { movedZones, type ZoneGrip, type Zones } from "./zone.ts";

const { getState: now, setState: set } = mountsBench;

let drag: { readonly grip: ZoneGrip; readonly zones: Zones } | null = null;

/** A grip of a zone is in the hand. */
export function beginZoneDrag(grip: ZoneGrip): void {
  const { zones } = now();
  if (!zones) return;
  drag = { grip, zones };
  set({ held: grip.id, isDragging: true });
}

/** By this way from where it was taken, in the design position, m. */
export function dragZone(way: Vec3): void {
  if (drag) put(drag.zones, drag.grip, way);
}

export function endZoneDrag(): void {
  drag = null;
  set({ isDragging: false });
}

export function giveUpZoneDrag(): void {
  if (drag) set({ zones: drag.zones });
  endZoneDrag();
}

/** A movement that is over at once: an arrow key. */
export function nudgeZone(grip: ZoneGrip, way: Vec3): void {
  const { zones } = now();
  if (zones) put(zones, grip, way);
}

function put(from: Zones, grip: ZoneGrip, way: Vec3): void {
  const { live, units } = bench.getState();
  if (live.study) set({ zones: movedZones(live.study.corner, from, grip, way, stepOf(units)) });
}
