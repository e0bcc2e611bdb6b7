import { parseQuantity, type Vec3 } from "@armwright/engine";
import { type FieldValue, parsePath, valueAt } from "@armwright/engine/document";
import { typedValue } from "../form/typed.ts";
import { readChassisMesh } from "../scene/mesh/chassis-mesh.ts";
import { fitSimilarity, type PointPair } from "../scene/mesh/similarity.ts";
import { bench, edit } from "../store/bench.ts";
import { keepMesh, readMesh } from "../store/connection.ts";
import { type DraftPoint, type MeshBench, meshBench, NO_MESH } from "./mesh-store.ts";

const { getState: now, setState: set } = meshBench;

/** Counts what is being read, so that what was asked for last wins. */
let asked = 0;

/** Keeps a chosen file beside the cars, and reads it. The scan that was placed before is taken off the car, which can be undone. */
export async function chooseMesh(file: File): Promise<void> {
  const mine = begin();
  const bytes = new Uint8Array(await file.arrayBuffer());
  const read = await attempt(mine, () => readChassisMesh(file.name, bytes.slice().buffer));
  if (!read) return;
  const kept = await attempt(mine, () => keptAs(file.name, bytes));
  if (!kept) {
    read.dispose();
    return;
  }
  const placed = bench.getState().document?.chassisMesh;
  if (placed && placed.file !== kept) edit([{ path: "chassisMesh", value: undefined }], "the scan before taken off");
  now().mesh?.dispose();
  set({ ...NO_MESH, file: kept, mesh: read });
}

/** Reads a scan that is kept already. */
export async function openMesh(name: string): Promise<void> {
  now().mesh?.dispose();
  const mine = begin({ ...NO_MESH, file: name });
  const mesh = await attempt(mine, async () => {
    const bytes = await readMesh(name);
    if (!bytes) throw new Error(`${name} is not kept beside the car: choose the file again.`);
    return readChassisMesh(name, bytes.slice().buffer);
  });
  if (mesh) set({ ...NO_MESH, file: name, mesh });
}

/** Lets go of the scan; what the document says of it stays. */
export function putMeshAway(): void {
  asked += 1;
  now().mesh?.dispose();
  set(NO_MESH);
}

function begin(from: Partial<MeshBench> = {}): number {
  asked += 1;
  set({ ...from, isReading: true, trouble: "" });
  return asked;
}

/** Undefined where it failed, which is then said, or where something else was asked for meanwhile. */
async function attempt<T>(mine: number, work: () => Promise<T>): Promise<T | undefined> {
  try {
    const made = await work();
    return mine === asked ? made : undefined;
  } catch (error) {
    if (mine === asked) set({ isReading: false, trouble: error instanceof Error ? error.message : String(error) });
    return undefined;
  }
}

/** The name under which the file is kept; the same file is not kept twice, another of its name gets a number. */
async function keptAs(name: string, bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const dot = name.lastIndexOf(".");
  const ending = name.slice(dot).toLowerCase();
  const stem =
    name
      .slice(0, dot)
      .replace(/[^A-Za-z0-9_-]+/g, "-")
      .replace(/^[-_]+|-+$/g, "")
      .slice(0, 70) || "scan";
  for (let count = 1; ; count += 1) {
    const file = `${stem}${count === 1 ? "" : `-${count}`}${ending}`;
    const there = await readMesh(file);
    if (there && isSame(there, bytes)) return file;
    if (there) continue;
    const made = await keepMesh(file, bytes);
    if (!made.ok) throw new Error(`${file} could not be kept: ${made.because}`);
    return made.name;
  }
}

const isSame = (a: Uint8Array, b: Uint8Array): boolean =>
  a.length === b.length && a.every((byte, index) => byte === b[index]);

export const setPicking = (isPicking: boolean): void => set({ isPicking });

/** The scene was touched: the spot of the scan there becomes a point to be typed. */
export async function pickAlong(origin: Vec3, direction: Vec3): Promise<void> {
  const { mesh, placement } = now();
  if (!mesh || !placement) return;
  const hit = await mesh.hit(placement, origin, direction);
  if (now().mesh !== mesh) return;
  if (!hit) {
    set({ trouble: "That touch missed the scan: touch a spot on it." });
    return;
  }
  const draft: DraftPoint = { mesh: hit.file, car: { x: "", y: "", z: "" } };
  set(({ drafts }) => ({ drafts: [...drafts, draft], isPicking: false, trouble: "" }));
}

export const typeDraft = (index: number, axis: "x" | "y" | "z", text: string): void =>
  set(({ drafts }) => ({
    drafts: drafts.map((draft, i) => (i === index ? { ...draft, car: { ...draft.car, [axis]: text } } : draft)),
  }));

export const dropDraft = (index: number): void =>
  set(({ drafts }) => ({ drafts: drafts.filter((_, i) => i !== index) }));

/** Why the drafts cannot place the scan yet; null where they can. */
export function whyNotPlaced(drafts: readonly DraftPoint[], stored: number): string | null {
  const missing = 3 - stored - drafts.length;
  if (missing > 0) return missing === 1 ? "One more spot is needed." : `${missing} more spots are needed.`;
  return drafts.every((draft) => draftPoint(draft)) ? null : "Type forward, out and up of every spot, as taped.";
}

/** Stores the drafts as points of the scan, in one edit that can be undone. */
export function placeByDrafts(): void {
  const { document } = bench.getState();
  const { drafts, file } = now();
  if (!document || file === null) return;
  const stored = document.chassisMesh?.file === file ? document.chassisMesh.points : [];
  if (drafts.length === 0 || whyNotPlaced(drafts, stored.length) !== null) return;
  const points = [...stored, ...drafts.flatMap((draft) => draftPoint(draft) ?? [])];
  const fit = fitSimilarity(points.flatMap((point) => pairOf(point, document.units) ?? []));
  if (!fit.ok || !(fit.placement.scale > 0)) {
    set({ trouble: "These spots lie in one line or in one place: take one of them elsewhere." });
    return;
  }
  const value = points as unknown as FieldValue;
  set({ drafts: [], trouble: "" });
  edit(
    [
      stored.length > 0
        ? { path: "chassisMesh.points", value }
        : { path: "chassisMesh", value: { file, points: value } },
    ],
    stored.length > 0 ? "a spot added to the scan" : "the scan placed",
  );
}

interface StoredPoint {
  readonly mesh: { readonly x: number; readonly y: number; readonly z: number };
  readonly car: { readonly x: number | string; readonly y: number | string; readonly z: number | string };
}

function draftPoint({ mesh, car }: DraftPoint): StoredPoint | null {
  const { document, units } = bench.getState();
  if (!document) return null;
  const read = (text: string) => {
    const typed = typedValue(text, "length", units, document.units);
    return typed !== undefined && parseQuantity(typed, "length", document.units).ok ? typed : undefined;
  };
  const [x, y, z] = [read(car.x), read(car.y), read(car.z)];
  return x === undefined || y === undefined || z === undefined ? null : { mesh, car: { x, y, z } };
}

function pairOf({ mesh, car }: StoredPoint, units: "inch-pound" | "metric"): PointPair | null {
  const [x, y, z] = [car.x, car.y, car.z].map((typed) => {
    const parsed = parseQuantity(typed, "length", units);
    return parsed.ok ? parsed.value : Number.NaN;
  });
  return { file: mesh, car: { x: x ?? Number.NaN, y: y ?? Number.NaN, z: z ?? Number.NaN } };
}

/** Takes one stored point off, or the whole scan. */
export function takePointOff(index: number): void {
  const { document } = bench.getState();
  if (valueAt(document, parsePath(`chassisMesh.points[${index}]`) ?? []) === undefined) return;
  edit([{ path: `chassisMesh.points[${index}]`, value: undefined }], `spot ${index + 1} taken off the scan`);
}

export function takeMeshOff(): void {
  putMeshAway();
  if (bench.getState().document?.chassisMesh) edit([{ path: "chassisMesh", value: undefined }], "the scan taken off");
}
