import { gapsFromStudy, ghostsOf, troublesAt } from "@armwright/drawing";
import { parseQuantity, type Study, type Vec3 } from "@armwright/engine";
import { type CarDocument, type Operation, parsePath, valueAt } from "@armwright/engine/document";
import { type ReactNode, useEffect, useRef, useState } from "react";
import { useStore } from "zustand";
import { useBench } from "../app/use-bench.ts";
import { STILL } from "../app/use-media.ts";
import { placeName } from "../form/schema-fields.ts";
import { lengthAsTyped } from "../form/typed.ts";
import { pickAlong } from "../mesh/choose-mesh.ts";
import { meshGapsNow, useMesh } from "../mesh/mesh-store.ts";
import { holdZonePath, isZonePath, useMountsInSpace, zoneDragged, zoneNudged } from "../mounts/in-space.ts";
import type { SceneView as Direction, DragPhase, Scene } from "../scene/index.ts";
import { matrixOf, toCar } from "../scene/mesh/similarity.ts";
import { beginMove, bench, edit, endMove, giveUpMove, hold, move } from "../store/bench.ts";
import type { Solved } from "../store/position.ts";
import { cornerPlace, placeOnSide } from "../store/sides.ts";
import { ellipsoidsOf } from "../survey/ellipsoids.ts";
import { useSurveyShown } from "../survey/survey-shown.ts";
import { stepOf } from "../words/shown.ts";
import { laidOver } from "./laid-over.ts";
import { oncePerFrame } from "./once-per-frame.ts";
import type { Size } from "./use-size.ts";

interface Props {
  readonly study: Study;
  readonly solved: Solved;
  readonly size: Size;
}

const DIRECTIONS: readonly (readonly [Direction | "fit", string])[] = [
  ["three-quarter", "from a corner"],
  ["behind", "behind"],
  ["above", "above"],
  ["left", "left"],
  ["fit", "whole"],
];

const NO_POINTS: NonNullable<CarDocument["chassisMesh"]>["points"] = [];

/** The car in space; fetched when it is first asked for. */
export function SceneView({ study, solved, size }: Props): ReactNode {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [scene, setScene] = useState<Scene | null>(null);
  const [trouble, setTrouble] = useState("");
  const held = useBench((state) => state.held?.place);
  const isMirrored = useBench(({ side }) => side === "right");
  const spot = useBench((state) => state.spot);
  const units = useBench((state) => state.units);
  const theme = useBench((state) => state.theme);
  const { mesh, placement, drafts, isPicking, measured } = useMesh((state) => state);
  const stored = useBench(({ document }) => document?.chassisMesh?.points) ?? NO_POINTS;
  const mounts = useMountsInSpace(study);
  const inSpace = useStore(laidOver, (state) => state.inSpace);
  const inHand = mounts.held ?? (held === undefined ? undefined : cornerPlace(held));
  useEffect(() => {
    let made: Scene | undefined;
    let isGone = false;
    const start = async (): Promise<void> => {
      const { createScene } = await import("../scene/index.ts");
      if (isGone || !canvas.current) return;
      try {
        made = createScene(canvas.current, {
          quality: new URLSearchParams(location.search).get("quality") === "low" ? "low" : "high",
          reducedMotion: matchMedia(STILL).matches,
          onDrag: dragged,
          onSelect: select,
          onNudge: nudged,
          onMeshRay: (origin, direction) => void pickAlong(origin, direction),
        });
        setScene(made);
      } catch {
        setTrouble("This browser draws no solid pictures (WebGL 2 is missing); the drawing shows the same car.");
      }
    };
    void start();
    return () => {
      isGone = true;
      made?.dispose();
    };
  }, []);
  useEffect(() => {
    const added = inSpace?.(study, solved);
    scene?.show(study, solved.position, {
      units,
      troubles: troublesAt(study, solved.position, solved.row, [
        ...gapsFromStudy(study, solved.position),
        ...meshGapsNow(measured, solved.travel),
      ]),
      ...(inHand !== undefined && { held: inHand }),
      ghosts: ghostsOf(study, solved.position),
      spot: spot && { at: spot, label: "" },
      ...added,
      moreGrips: [...mounts.grips, ...(added?.moreGrips ?? [])],
    });
  }, [scene, study, solved, inHand, spot, units, measured, mounts.grips, inSpace]);
  useEffect(() => scene?.showMounts(mounts.picture), [scene, mounts.picture]);
  const survey = useSurveyShown((state) => state.result);
  const surveyPoint = useSurveyShown((state) => state.point);
  useEffect(() => {
    scene?.showSurvey(
      survey && ellipsoidsOf(survey).map(({ name, at, radii }) => ({ at, radii, isHeld: name === surveyPoint })),
    );
  }, [scene, survey, surveyPoint]);
  useEffect(() => {
    scene?.showMesh(
      mesh &&
        placement && {
          position: mesh.read.position,
          index: mesh.read.index,
          placement: matrixOf(placement),
          picked: [
            ...stored.map(({ mesh: spot }, i) => ({ at: toCar(placement, spot), label: String(i + 1) })),
            ...drafts.map((draft, i) => ({ at: toCar(placement, draft.mesh), label: String(stored.length + i + 1) })),
          ],
        },
    );
  }, [scene, mesh, placement, drafts, stored]);
  useEffect(() => scene?.pickOnMesh(isPicking), [scene, isPicking]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the page's tokens change with the theme.
  useEffect(() => scene?.setTheme(), [scene, theme]);
  return (
    <div className="scene" style={{ width: size.width, height: size.height }}>
      <canvas
        ref={canvas}
        tabIndex={0}
        aria-label={`The ${isMirrored ? "right corner, mirrored," : "car"} in space: drag to turn it, drag a point to move it`}
        style={{ width: size.width, height: size.height }}
      />
      {isMirrored && <p className="scene-side small">right corner, mirrored</p>}
      {trouble !== "" && <p className="scene-trouble">{trouble}</p>}
      <p className="scene-views">
        {DIRECTIONS.map(([direction, words]) => (
          <button key={direction} type="button" className="pressable small" onClick={() => scene?.view(direction)}>
            {isMirrored && direction === "left" ? "right" : words}
          </button>
        ))}
      </p>
    </div>
  );
}

/** What is chosen is a point of the car, a grip of a zone, or nothing. */
function select(path: string | null): void {
  holdZonePath(path);
  hold(path === null || isZonePath(path) ? null : { place: placeNow(path), as: "point" });
}

let starting: Vec3 | null = null;

function dragged(path: string, point: Vec3, phase: DragPhase): void {
  if (isZonePath(path)) {
    zoneDragged(path, point, phase);
    return;
  }
  const { document } = bench.getState();
  if (!document) return;
  if (phase === "start") {
    starting = pointAt(document, path);
    hold({ place: placeNow(path), as: "point" });
    beginMove(`${placeName(placeNow(path), document)} moved`);
  } else if (phase === "move") oncePerFrame(() => move(toward(path, point)));
  else {
    oncePerFrame.now();
    if (phase === "end") endMove();
    else giveUpMove();
  }
}

function nudged(path: string, axis: "x" | "y" | "z", sign: 1 | -1): void {
  if (isZonePath(path)) {
    zoneNudged(path, axis, sign);
    return;
  }
  const { document, units } = bench.getState();
  const from = document && pointAt(document, path);
  if (!from) return;
  starting = from;
  const operations = toward(path, { ...from, [axis]: from[axis] + sign * stepOf(units) });
  if (operations.length > 0) edit(operations, `${placeName(placeNow(path), document)} moved`);
}

/** The edits that bring a point to where it was dragged, on the snap step; coordinates that stay keep what was typed. */
function toward(path: string, point: Vec3): readonly Operation[] {
  const { document, units } = bench.getState();
  if (!starting || !document) return [];
  const from = starting;
  const step = stepOf(units);
  return (["x", "y", "z"] as const).flatMap((axis) => {
    if (Math.abs(point[axis] - from[axis]) < step / 4) return [];
    const snapped = Math.round(point[axis] / step) * step;
    const place = placeNow(path);
    // A point of the right side: the corner is drawn as a left one.
    const typed = axis === "y" && place !== path ? -snapped : snapped;
    return [{ path: `${place}.${axis}`, value: lengthAsTyped(typed, units, document.units) }];
  });
}

/** Where a point of the corner that is shown stands in the document. */
function placeNow(path: string): string {
  const { side, document } = bench.getState();
  return placeOnSide(path, side, document);
}

function pointAt(document: CarDocument, path: string): Vec3 | null {
  const place = placeNow(path);
  const read = (axis: string): number => {
    const typed: unknown = valueAt(document, [...(parsePath(place) ?? []), axis]);
    if (typeof typed !== "number" && typeof typed !== "string") return Number.NaN;
    const parsed = parseQuantity(typed, "length", document.units);
    return parsed.ok ? parsed.value : Number.NaN;
  };
  const point = { x: read("x"), y: (place === path ? 1 : -1) * read("y"), z: read("z") };
  return [point.x, point.y, point.z].every(Number.isFinite) ? point : null;
}
