// The car in space. Load it when it is asked for: `const { createScene } = await import("./scene/index.ts")`.

export { createScene } from "./create-scene.ts";
export type {
  Axis,
  DragPhase,
  DragWay,
  Ghost,
  Grip,
  MeshPicture,
  MountsPicture,
  Quality,
  Scene,
  SceneGrip,
  SceneOptions,
  SceneSpot,
  SceneTrouble,
  SceneView,
  ShowOptions,
} from "./types.ts";
