import { troublesAt } from "@armwright/drawing";
import { type LinkageKindName, positionOf, type Study, solveAt, study } from "@armwright/engine";
import { type CarDocument, readCarValue, startingDocument } from "@armwright/engine/document";
import { createScene, type Ghost, type Scene, type ShowOptions } from "../../../src/scene/index.ts";
import {
  type ChassisMesh,
  fitSimilarity,
  matrixOf,
  meshParts,
  type PointPair,
  readChassisMesh,
} from "../../../src/scene/mesh/index.ts";

// A page with nothing but the scene, for the browser test and for pictures.

interface Dragged {
  readonly path: string;
  readonly phase: string;
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

const query = new URLSearchParams(location.search);
const canvas = document.querySelector<HTMLCanvasElement>("#scene")!;
const dragged: Dragged[] = [];
const selected: (string | null)[] = [];
let mesh: ChassisMesh | null = null;
let shown: { study: Study; options: ShowOptions; travel: number } | null = null;
let framesAsked = 0;
const ask = window.requestAnimationFrame.bind(window);
window.requestAnimationFrame = (then) => {
  framesAsked += 1;
  return ask(then);
};
document.documentElement.dataset["theme"] = query.get("theme") ?? "light";

const scene: Scene = createScene(canvas, {
  quality: query.get("quality") === "high" ? "high" : "low",
  reducedMotion: query.get("motion") === null,
  onDrag: (path, point, phase) => dragged.push({ path, phase, ...point }),
  onSelect: (path) => selected.push(path),
});

function show(made: Study, travel: number, options: ShowOptions = {}): void {
  const found = solveAt(made.corner, travel);
  if (!found) throw new Error(`no position at ${travel} m`);
  const position = positionOf(made.corner, found.state);
  shown = { study: made, options, travel };
  scene.show(made, position, { troubles: troublesAt(made, position, found.row), ...options });
}

const ghostsOf = (made: Study): readonly Ghost[] =>
  (["bump", "droop"] as const).map((way) => {
    const found = solveAt(made.corner, made.travel[way].stop.travel)!;
    return { position: positionOf(made.corner, found.state) };
  });

const hands = {
  scene,
  dragged,
  selected,
  showKind(kind: LinkageKindName, travel = 0, options: ShowOptions = {}): void {
    const reading = readCarValue(startingDocument(kind, "inch-pound"));
    if (!reading.ok) throw new Error("the starting document does not read");
    show(study(reading.car), travel, options);
  },
  showDocument(
    document: CarDocument,
    travel: number | "bump" | "droop" = 0,
    ghosts = false,
    options: ShowOptions = {},
  ): void {
    const reading = readCarValue(document);
    if (!reading.ok) throw new Error("the document does not read");
    const made = study(reading.car);
    const at = typeof travel === "number" ? travel : (made.travel[travel].first ?? made.travel[travel].stop).travel;
    show(made, at, { ...(ghosts && { ghosts: ghostsOf(made) }), ...options });
  },
  /** At the travel where a limit bites. */
  showAtLimit(kind: LinkageKindName, id: string): void {
    const reading = readCarValue(startingDocument(kind, "inch-pound"));
    if (!reading.ok) throw new Error("the starting document does not read");
    const made = study(reading.car);
    const limit = [...made.travel.droop.limits, ...made.travel.bump.limits].find((each) => each.id === id);
    if (!limit) throw new Error(`this car never meets ${id}`);
    show(made, limit.travel);
  },
  shaftDiameter: (): number => shown?.study.car.driveshaft?.diameter ?? Number.NaN,
  /** Frames that anything on the page has asked for. */
  framesAsked: (): number => framesAsked,
  /** Geometries that the scene holds in graphics memory. */
  geometries: (): number =>
    (scene as unknown as { renderer: { info: { memory: { geometries: number } } } }).renderer.info.memory.geometries,
  /** Script time of one `show` with its solve left out, ms: the median and the 95th of a hundred. */
  timeShow(count = 200): { median: number; most: number } {
    if (!shown) throw new Error("nothing is shown");
    const { study: made, options } = shown;
    const { bump, droop } = made.travel;
    const times: number[] = [];
    for (let i = 0; i < count; i += 1) {
      const travel = droop.stop.travel + ((bump.stop.travel - droop.stop.travel) * i) / (count - 1);
      const found = solveAt(made.corner, travel);
      if (!found) continue;
      const position = positionOf(made.corner, found.state);
      const troubles = troublesAt(made, position, found.row);
      const started = performance.now();
      scene.show(made, position, { ...options, troubles, turn: i * 0.1 });
      times.push(performance.now() - started);
    }
    times.sort((a, b) => a - b);
    return { median: times[Math.floor(times.length / 2)]!, most: times[Math.floor(times.length * 0.95)]! };
  },
  /** Reads a mesh file, places it by pairs of points, shows it, and tells gaps (m) at the position shown. */
  async useMesh(name: string, bytes: ArrayBuffer, pairs: readonly PointPair[]) {
    if (!shown) throw new Error("nothing is shown");
    mesh?.dispose();
    mesh = await readChassisMesh(name, bytes);
    const fit = fitSimilarity(pairs);
    if (!fit.ok) throw new Error(fit.why);
    const { position, index, triangles, readTime, buildTime } = mesh.read;
    scene.showMesh({ position, index, placement: matrixOf(fit.placement) });
    const found = solveAt(shown.study.corner, shown.travel)!;
    const parts = meshParts(shown.study.corner, positionOf(shown.study.corner, found.state));
    const { gaps, took } = await mesh.gaps(fit.placement, [parts.map(({ solid }) => solid)], 0.5);
    const hit = await mesh.hit(fit.placement, { x: 0, y: 0.05, z: 9 }, { x: 0, y: 0, z: -1 });
    return {
      triangles,
      readTime,
      buildTime,
      took,
      gaps: parts.map(({ id }, i) => ({ id, gap: gaps[0]![i]?.gap ?? null })),
      hit,
      residuals: fit.residuals,
    };
  },
  dropMesh(): void {
    scene.showMesh(null);
    mesh?.dispose();
    mesh = null;
  },
  /** The same while a point is dragged, so that each is of another study. */
  timeDrag(document: CarDocument, count = 60): { median: number; most: number } {
    const reading = readCarValue(document);
    if (!reading.ok) throw new Error("the document does not read");
    const times: number[] = [];
    for (let i = 0; i < count; i += 1) {
      const made = study({ ...reading.car });
      const found = solveAt(made.corner, 0.01)!;
      const position = positionOf(made.corner, found.state);
      const troubles = troublesAt(made, position, found.row);
      const started = performance.now();
      scene.show(made, position, { troubles, held: "linkage.upperLink.inner" });
      times.push(performance.now() - started);
      scene.draw();
    }
    times.sort((a, b) => a - b);
    return { median: times[Math.floor(count / 2)]!, most: times[Math.floor(count * 0.95)]! };
  },
  /** Script time of `draw`, ms: what the processor does, the graphics left out as far as the browser lets it. */
  timeDraw(count = 20): number {
    const started = performance.now();
    for (let i = 0; i < count; i += 1) scene.draw();
    return (performance.now() - started) / count;
  },
};

export type Hands = typeof hands;
Object.assign(window, { hands });
