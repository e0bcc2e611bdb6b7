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
export { type Judged, judgeMounts } from "./mounts/candidate.ts";
export { defaultRequest } from "./mounts/default-request.ts";
export type { Feasible } from "./mounts/feasible.ts";
export { findMounts, findMountsPart, type MountsFound, type MountsPart, mergeParts } from "./mounts/find-mounts.ts";
export { type LowerPoint, upperAt } from "./mounts/grid.ts";
export type { Notch } from "./mounts/notch.ts";
export type { Proposal } from "./mounts/proposal.ts";
export type { LowerZone, MountRequest, MountRequirements, ShockOption, UpperZone } from "./mounts/request.ts";
export { COMMON_REQUIREMENTS, COMMON_RESERVE, REQUIREMENTS, type RequirementCode } from "./mounts/request.ts";
export { SCORES } from "./mounts/scan.ts";
export { type Change, type Opening, whatWouldOpen, withChange } from "./mounts/what-would-open.ts";
export { coilRate, coilStress, coilsForRate, SPRING_STEEL, wahlFactor, wireForRate } from "./springs/coil-rate.ts";
export {
  type CriticalDamping,
  criticalDamping,
  type DampingRatios,
  type ShaftForce,
  shaftForces,
  USUAL_RATIOS,
} from "./springs/damping.ts";
export { type Rest, rideFrequency, type TravelStops } from "./springs/ride-height.ts";
export {
  chooseSprings,
  LEFT_TO_SOLID,
  SEAT_ROOM,
  type ShelfSpring,
  type SpringChoice,
  type SpringChoices,
  type SpringWish,
  USUAL_CROSSOVER_PAST,
  USUAL_PRELOAD,
  WEIGHT_ERROR,
} from "./springs/spring-choice.ts";
export { gapFromCrossover } from "./springs/spring-stack.ts";
export {
  type SpringNeed,
  type SpringPosition,
  type SpringStudy,
  springNeed,
  studySprings,
} from "./springs/spring-study.ts";
export { bandOf, type FrequencyBand, USE_BANDS } from "./springs/use-band.ts";
export type { WheelSpringState } from "./springs/wheel-spring.ts";
export { DEFAULT_STATIONS, type Study, type StudyOptions, study } from "./study/study.ts";
export * from "./units/index.ts";
