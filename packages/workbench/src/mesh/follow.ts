import type { Study } from "@armwright/engine";
import type { ChassisMesh } from "../scene/mesh/chassis-mesh.ts";
import { fitSimilarity, type Similarity } from "../scene/mesh/similarity.ts";
import { bench } from "../store/bench.ts";
import { connection } from "../store/connection.ts";
import { openMesh, putMeshAway } from "./choose-mesh.ts";
import { withMesh } from "./mesh-limits.ts";
import { meshBench } from "./mesh-store.ts";
import { type MeshSamples, sampleGaps } from "./samples.ts";
import { standIn } from "./stand-in.ts";

/** Gaps above the wanted one by more than this are not looked for, m. */
const LOOK = 0.4;
/** The hand has to rest this long before gaps are measured, ms. */
const REST = 120;

let isFollowing = false;
let timer: ReturnType<typeof setTimeout> | undefined;

/** From now on the scan that the document names is read, stands where its points put it, and is measured against. */
export function followMesh(): void {
  if (isFollowing) return;
  isFollowing = true;
  bench.subscribe(follow);
  meshBench.subscribe(follow);
  connection.subscribe((state, before) => {
    if (state.name !== before.name) putMeshAway();
  });
  follow();
}

function follow(): void {
  const { document, live, moving } = bench.getState();
  const { file, mesh, isReading, placement, measured } = meshBench.getState();
  const named = document?.chassisMesh?.file;
  if (named !== undefined && named !== file && !isReading) {
    void openMesh(named);
    return;
  }
  const { study } = live;
  if (!mesh || !study || file === null) return;
  const placed = placementOf(study, file);
  const next = placed ?? standIn(file, mesh.read.low, mesh.read.high, study.corner.wheelCentre.x);
  if (!isSamePlace(next, placement)) {
    meshBench.setState({ placement: next });
    return;
  }
  if (!placed && measured) meshBench.setState({ measured: null });
  clearTimeout(timer);
  if (!placed || moving || measured?.study === study) return;
  timer = setTimeout(() => void measure(study, mesh, next), REST);
}

/** Where the car's points put the scan; null where there are none for this file, or they do not place it. */
export function placementOf(study: Study, file: string): Similarity | null {
  const { chassisMesh } = study.car;
  if (chassisMesh?.file !== file) return null;
  const fit = fitSimilarity(chassisMesh.points.map(({ mesh, car }) => ({ file: mesh, car })));
  return fit.ok && fit.placement.scale > 0 ? fit.placement : null;
}

async function measure(study: Study, mesh: ChassisMesh, placement: Similarity): Promise<void> {
  const isStale = (): boolean => bench.getState().live.study !== study || meshBench.getState().mesh !== mesh;
  if (isStale()) return;
  const most = (study.car.chassisMesh?.clearance ?? 0) + LOOK;
  try {
    const samples = await sampleGaps(study, async (positions) => (await mesh.gaps(placement, positions, most)).gaps);
    if (samples && !isStale()) takeIn(study, samples);
  } catch (error) {
    if (!isStale()) meshBench.setState({ trouble: error instanceof Error ? error.message : String(error) });
  }
}

/** What was measured becomes part of the study that the whole page shows: findings, stops, tape and charts. */
function takeIn(study: Study, samples: MeshSamples): void {
  const shown = withMesh(study, samples);
  bench.setState(({ live }) => ({ live: { ...live, study: shown } }));
  meshBench.setState({ measured: { study: shown, samples } });
}

const isSamePlace = (a: Similarity, b: Similarity | null): boolean =>
  b !== null &&
  a.scale === b.scale &&
  a.rotation.every((value, i) => value === b.rotation[i]) &&
  a.translation.x === b.translation.x &&
  a.translation.y === b.translation.y &&
  a.translation.z === b.translation.z;
