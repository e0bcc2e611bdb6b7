import type { ForceArrow } from "@armwright/drawing";
import type { BodyId, Position, Study, UnitSystem, Vec3 } from "@armwright/engine";
import type { FramePictureInSpace } from "./parts/arm-frame.ts";
import type { MountsPicture } from "./parts/mount-zones.ts";
import type { RegionPicture } from "./parts/survey-regions.ts";

export type { MountsPicture, RegionPicture };

/** `low`: one device pixel a px, fewer facets; and no smoothing of edges where the scene is created so. */
export type Quality = "high" | "low";

export type SceneView = "behind" | "above" | "left" | "three-quarter";

/** Which way a point in hand may go: along one vehicle axis, in a plane of two, or in that plane which is seen flattest. */
export type DragWay = "x" | "y" | "z" | "xy" | "xz" | "yz" | "view";
export type Axis = "x" | "y" | "z";

/** A point of the car that can be taken hold of. */
export interface Grip {
  /** Its place in the document. */
  readonly path: string;
  readonly label: string;
  /** Where it is now, vehicle axes, m. */
  readonly at: Vec3;
}

/** A point that is none of the document and yet can be taken hold of, in the design position, m. */
export interface SceneGrip {
  readonly path: string;
  readonly label: string;
  readonly point: Vec3;
  readonly on: BodyId;
}

export type DragPhase = "start" | "move" | "end" | "cancel";

/** Something at its limit or past it, as `troublesAt` of the drawing tells it. */
export interface SceneTrouble {
  readonly id: string;
  /** Its order among what stops the wheel this way; 0 where it has none. */
  readonly order: number;
  readonly label: string;
  readonly finding: string;
  /** Part to tint: `driveshaft.outer`, `driveshaft.slip`, `shock`, `linkage.<pivot>`, or empty. */
  readonly place: string;
  /** Vehicle axes, m. */
  readonly at: Vec3;
  readonly kind: "part" | "fouling" | "ground";
}

/** A spot that a chosen finding is about. */
export interface SceneSpot {
  readonly at: Vec3;
  readonly label: string;
}

export interface Ghost {
  readonly position: Position;
  /** As in `bump +5 3/4`; left out, the travel alone is written. */
  readonly label?: string;
}

export interface ShowOptions {
  /** How far the gearbox output has turned, rad; shaft and wheel follow. 0 unless said. */
  readonly turn?: number;
  /** Place in the document that is held; drawn violet, with its three axes to pull at. */
  readonly held?: string;
  readonly troubles?: readonly SceneTrouble[];
  readonly spot?: SceneSpot | null;
  readonly ghosts?: readonly Ghost[];
  readonly bothSides?: boolean;
  /** The wheel cut on the axle plane, so that what is inside is seen. True unless said. */
  readonly cutWheel?: boolean;
  /** Also points of keep-outs, underbody and hub can be taken hold of. */
  readonly allGrips?: boolean;
  /** Beside the points of the car. */
  readonly moreGrips?: readonly SceneGrip[];
  /** Arrows of forces, each with its number. */
  readonly forces?: readonly ForceArrow[];
  /** Height of the ground where it is not under the loaded tyre: a wheel in the air. */
  readonly groundZ?: number;
  /** An arm as a loaded frame, bent more than it is. */
  readonly armFrame?: FramePictureInSpace | null;
  /** Units of the floor and of readings; otherwise the car's own. */
  readonly units?: UnitSystem;
}

export interface SceneOptions {
  readonly quality: Quality;
  readonly reducedMotion: boolean;
  /**
   * A point is being dragged. `point`: where it would lie in the document, that is in the design position, vehicle axes, m,
   * not yet snapped. `cancel` gives where it was.
   */
  readonly onDrag?: (path: string, point: Vec3, phase: DragPhase) => void;
  /** A point was chosen by touch, mouse or key; null: none. */
  readonly onSelect?: (path: string | null) => void;
  /** An arrow key moves what is held: one snap step along a vehicle axis, `sign` 1 or −1. */
  readonly onNudge?: (path: string, axis: Axis, sign: 1 | -1) => void;
  /** A point of the chassis mesh was touched while `pickOnMesh` is on: a ray to be asked of the mesh, vehicle axes. */
  readonly onMeshRay?: (origin: Vec3, direction: Vec3) => void;
}

/** Triangles of a chassis mesh as they are drawn, in the file's own axes and unit. */
export interface MeshPicture {
  readonly position: Float32Array;
  readonly index: Uint32Array;
  /** From the file's axes to vehicle axes, column by column, 16 numbers; null: not placed yet. */
  readonly placement: readonly number[] | null;
  /** Points picked on it so far, vehicle axes, m, each with its name. */
  readonly picked?: readonly { readonly at: Vec3; readonly label: string }[];
}

export interface Scene {
  /** Draws a solved position. Cheap enough to be called for every step of a drag; the picture follows with the next frame. */
  show(study: Study, position: Position, options?: ShowOptions): void;
  /** `fit` keeps the direction and brings everything into the frame. */
  view(name: SceneView | "fit"): void;
  /** Turns the view, rad: to the right and upward. */
  orbit(right: number, up: number): void;
  /** Moves the view by px. */
  pan(right: number, down: number): void;
  /** Above 1: nearer. */
  zoom(factor: number): void;
  /** The point that can be taken hold of at a place of the canvas, CSS px from its upper left corner. */
  pick(x: number, y: number): Grip | null;
  /** All points that can be taken hold of, for a list or for keys. */
  grips(): readonly Grip[];
  /** Where a point of the car is on the canvas, CSS px from its upper left corner. */
  spotOf(point: Vec3): { readonly x: number; readonly y: number };
  dragAlong(way: DragWay): void;
  showMesh(mesh: MeshPicture | null): void;
  /** Zones, region and tried shock of the search for mounts; null: none. */
  showMounts(mounts: MountsPicture | null): void;
  /** Where surveyed points are, as regions; null: none. */
  showSurvey(regions: readonly RegionPicture[] | null): void;
  /** While on, a touch asks for a point of the mesh in place of turning the view. */
  pickOnMesh(isOn: boolean): void;
  /** Reads the page's tokens again. */
  setTheme(): void;
  setQuality(quality: Quality): void;
  setReducedMotion(isReduced: boolean): void;
  /** Takes the canvas's size anew; it also watches by itself. */
  resize(): void;
  /** Draws at once, without waiting for the next frame. */
  draw(): void;
  dispose(): void;
}
