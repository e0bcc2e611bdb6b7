import type { Vec3 } from "@armwright/engine";
import type { MeshGap, MeshSolid } from "./mesh-gap.ts";
import type { Similarity } from "./similarity.ts";

// What page and worker say to one another. Every question has a number; its answer carries the same.

export type Question =
  | { readonly ask: "read"; readonly id: number; readonly name: string; readonly bytes: ArrayBuffer }
  | {
      readonly ask: "gaps";
      readonly id: number;
      readonly placement: Similarity;
      /** For each position of the wheel its parts. */
      readonly positions: readonly (readonly MeshSolid[])[];
      /** Gaps above this are not looked for, m. */
      readonly most: number;
    }
  | {
      readonly ask: "ray";
      readonly id: number;
      readonly placement: Similarity;
      readonly origin: Vec3;
      readonly direction: Vec3;
    };

export interface MeshRead {
  readonly position: Float32Array;
  readonly index: Uint32Array;
  readonly triangles: number;
  readonly dropped: number;
  /** Extent in the file's own axes and unit. */
  readonly low: Vec3;
  readonly high: Vec3;
  /** ms, in the worker. */
  readonly readTime: number;
  readonly buildTime: number;
}

export interface MeshHit {
  readonly file: Vec3;
  readonly car: Vec3;
}

export type Answer =
  | { readonly id: number; readonly ok: true; readonly read: MeshRead }
  | {
      readonly id: number;
      readonly ok: true;
      readonly gaps: readonly (readonly (MeshGap | null)[])[];
      readonly took: number;
    }
  | { readonly id: number; readonly ok: true; readonly hit: MeshHit | null }
  | { readonly id: number; readonly ok: false; readonly why: string };
