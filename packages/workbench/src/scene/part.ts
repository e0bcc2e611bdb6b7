import type { Object3D, Plane } from "three";
import type { Frame } from "./frame.ts";
import type { Inks } from "./kit/materials.ts";

/** Something that the scene draws and that follows the position. */
export interface Part {
  readonly object: Object3D;
  show(frame: Frame): void;
  dispose(): void;
}

/** What a part is made from. */
export interface Workshop {
  readonly inks: Inks;
  /** Facets of a whole round. */
  readonly sides: number;
  /** Planes that cut the wheel; moved out of the way where it is whole. */
  readonly cut: readonly Plane[];
}
