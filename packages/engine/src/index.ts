// The engine's contents: a car in, a study out. Reading a car out of a document is in "@armwright/engine/document".

export { adjusted } from "./adjust/adjusted.ts";
export { turnEffects } from "./adjust/turn-effects.ts";
export { turnsFor } from "./adjust/turns-for.ts";
export { axleAt } from "./axle/axle.ts";
export { axleTable } from "./axle/axle-table.ts";
export type * from "./car/car.ts";
export { spinAxisOf, wheelCentreOf } from "./car/wheel-centre.ts";
export { gapsAt, type PairGap } from "./clearance/gaps-at.ts";
export { compareStudies } from "./compare/compare-studies.ts";
export { type Corner, makeCorner, solveAt, writeRow } from "./cycle/corner.ts";
export { type Cycle, moveThrough, rowAt, stations } from "./cycle/cycle.ts";
export { closureResidual, type Position, placeMember, placeOn, positionOf } from "./cycle/position.ts";
export { type Quantity, quantitiesOf } from "./cycle/quantities.ts";
export { type SpeedRipple, speedRipple } from "./driveline/speed-ripple.ts";
export type { Finding, FindingCode, FindingValue, Gravity } from "./findings/finding.ts";
export { type SaidFinding, sayFinding } from "./findings/say-finding.ts";
export type * from "./geometry/pose.ts";
export type { Vec3 } from "./geometry/vec3.ts";
export type { Direction } from "./limits/find-limits.ts";
export type * from "./limits/travel-report.ts";
export type * from "./linkage/kind.ts";
export { kindOf, LINKAGE_KINDS } from "./linkage/kinds.ts";
export { designState, type MotionState } from "./linkage/motion-state.ts";
export { DEFAULT_STATIONS, type Study, type StudyOptions, study } from "./study/study.ts";
export * from "./units/index.ts";
