import type { GapNow } from "@armwright/drawing";
import type { Study, Vec3 } from "@armwright/engine";
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { ChassisMesh } from "../scene/mesh/chassis-mesh.ts";
import type { Similarity } from "../scene/mesh/similarity.ts";
import { bench } from "../store/bench.ts";
import { gapsAt, type MeshSamples } from "./samples.ts";

/** A spot touched on the scan whose place on the car is still being typed. */
export interface DraftPoint {
  /** The file's own axes and unit. */
  readonly mesh: Vec3;
  /** As typed so far. */
  readonly car: { readonly x: string; readonly y: string; readonly z: string };
}

export interface MeshBench {
  /** The mesh that has been read, and the name it is kept under. */
  readonly file: string | null;
  readonly mesh: ChassisMesh | null;
  readonly isReading: boolean;
  /** What is wrong, in plain words; empty where nothing is. */
  readonly trouble: string;
  readonly isPicking: boolean;
  readonly drafts: readonly DraftPoint[];
  /** Where the scan stands: by its points, or for the time being, so that it can be touched. */
  readonly placement: Similarity | null;
  readonly measured: { readonly study: Study; readonly samples: MeshSamples } | null;
}

export const NO_MESH: MeshBench = {
  file: null,
  mesh: null,
  isReading: false,
  trouble: "",
  isPicking: false,
  drafts: [],
  placement: null,
  measured: null,
};

export const meshBench = createStore<MeshBench>(() => NO_MESH);

export const useMesh = <T>(part: (state: MeshBench) => T): T => useStore(meshBench, part);

/** Gaps to the scan at this travel, of the car as it stands; none while they are not known. */
export function meshGapsNow(measured: MeshBench["measured"], travel: number): readonly GapNow[] {
  return measured && measured.study === bench.getState().live.study ? gapsAt(measured.samples, travel) : [];
}
