import type { Study, Vec3 } from "@armwright/engine";
import { useMemo } from "react";
import { useBench } from "../app/use-bench.ts";
import type { DragPhase } from "../scene/index.ts";
import type { MountsPicture, SceneGrip } from "../scene/types.ts";
import { bench } from "../store/bench.ts";
import { stepOf } from "../words/shown.ts";
import { thinned } from "./cloud.ts";
import { beginZoneDrag, dragZone, endZoneDrag, giveUpZoneDrag, nudgeZone } from "./drag-zone.ts";
import { holdZone, mountsBench, triedOf, useMounts } from "./mounts-store.ts";
import { type ZoneGrip, zoneBoxEdges, zoneGrips, zoneShapes } from "./zone.ts";

/** Before the names of grips of zones, where they stand among places in the document. */
const PREFIX = "mounts:";
/** One dot a cube of this edge, m: a denser cloud would hide what is in it. */
const CUBE = 1.25 * 0.0254;

/** What the finder shows in space, and what can be taken hold of there; nothing while it is closed. */
export function useMountsInSpace(study: Study): {
  readonly picture: MountsPicture | null;
  readonly grips: readonly SceneGrip[];
  readonly held: string | undefined;
} {
  const isShown = useMounts((state) => state.isOpen);
  const isStep = useBench(({ step }) => step === "shock");
  const zones = useMounts((state) => state.zones);
  const clouds = useMounts(({ found }) => found?.clouds);
  const tried = useMounts(triedOf);
  const held = useMounts((state) => state.held);
  const dots = useMemo(() => (clouds ? [thinned(clouds.upper, CUBE), thinned(clouds.lower, CUBE / 2)] : []), [clouds]);
  const isThere = isShown && isStep;
  const grips = useMemo(
    () =>
      isThere && zones
        ? zoneGrips(study.corner, zones).map(({ id, label, at, on }) => ({
            path: `${PREFIX}${id}`,
            label,
            point: at,
            on,
          }))
        : NO_GRIPS,
    [isThere, zones, study.corner],
  );
  const picture = useMemo((): MountsPicture | null => {
    if (!isThere || !zones) return null;
    return {
      zones: zoneShapes(study.corner, zones).map((shape) => ({
        edges: zoneBoxEdges(shape),
        on: shape.on,
        isHeld: held === shape.id || (held?.startsWith(`${shape.id}.`) ?? false),
      })),
      clouds: dots,
      ghost: tried
        ? {
            upper: tried.upper,
            lower: tried.lower.point,
            on: tried.lower.on,
            radius: Math.max(tried.shock.bodyDiameter, tried.shock.springDiameter) / 2,
          }
        : null,
    };
  }, [isThere, zones, dots, tried, held, study.corner]);
  return { picture, grips, held: held === null || !isThere ? undefined : `${PREFIX}${held}` };
}

const NO_GRIPS: readonly SceneGrip[] = [];

/** True where a grip of the scene is one of a zone: it is then held, or dragged, here. */
export const isZonePath = (path: string): boolean => path.startsWith(PREFIX);

export const holdZonePath = (path: string | null): void =>
  holdZone(path !== null && isZonePath(path) ? path.slice(PREFIX.length) : null);

let taken: ZoneGrip | null = null;

/** As the scene tells of a drag: `point` in the design position, m. */
export function zoneDragged(path: string, point: Vec3, phase: DragPhase): void {
  if (phase === "start") {
    taken = gripOf(path);
    if (taken) beginZoneDrag(taken);
  } else if (phase === "move") {
    if (taken) dragZone(apart(point, taken.at));
  } else {
    taken = null;
    if (phase === "end") endZoneDrag();
    else giveUpZoneDrag();
  }
}

export function zoneNudged(path: string, axis: "x" | "y" | "z", sign: 1 | -1): void {
  const grip = gripOf(path);
  if (grip) nudgeZone(grip, { x: 0, y: 0, z: 0, [axis]: sign * stepOf(bench.getState().units) });
}

function gripOf(path: string): ZoneGrip | null {
  const { study } = bench.getState().live;
  const { zones } = mountsBench.getState();
  if (!study || !zones) return null;
  return zoneGrips(study.corner, zones).find(({ id }) => `${PREFIX}${id}` === path) ?? null;
}

const apart = (a: Vec3, b: Vec3): Vec3 => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });
