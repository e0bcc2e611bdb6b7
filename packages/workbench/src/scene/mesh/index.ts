// A scan or drawing of the chassis: read, placed by three points, asked for gaps. Load it when it is asked for.

export { type ChassisMesh, type MeshGaps, readChassisMesh } from "./chassis-mesh.ts";
export type { MeshGap, MeshSolid } from "./mesh-gap.ts";
export { type MeshPart, meshParts } from "./parts-of.ts";
export type { MeshHit, MeshRead } from "./protocol.ts";
export { type Fit, fitSimilarity, matrixOf, type PointPair, type Similarity, toCar, toFile } from "./similarity.ts";
