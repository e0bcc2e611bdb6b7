// The engine's contents: a car in, a study out. Reading a car out of a document is in "@armwright/engine/document".

export { adjusted } from "./adjust/adjusted.ts";
export { turnEffects } from "./adjust/turn-effects.ts";
export { turnsFor } from "./adjust/turns-for.ts";
export {
  type CardReading,
  cardReadings,
  cardValue,
  cardValues,
  isOfRide,
  logReadings,
  PLACE_KIND,
  startsFor,
} from "./as-built/card-reading.ts";
export {
  type AsBuiltStudy,
  type Cause as AsBuiltCause,
  type ComparedReading,
  type Explanation,
  explainAsBuilt,
  likelyCauses,
  withCause,
} from "./as-built/explain.ts";
export { explainedOperations } from "./as-built/explained-operations.ts";
export { type FiveMinuteCheck, fiveMinuteCheck } from "./as-built/five-minute-check.ts";
export { CARD_KINDS, type CardKind, type LoggedReading } from "./as-built/logged-reading.ts";
export { type Proposed, proposedLog } from "./as-built/proposed-log.ts";
export { type Remedy, remedyFor, type StopRemedy } from "./as-built/remedy.ts";
export { axleAt } from "./axle/axle.ts";
export { axleTable } from "./axle/axle-table.ts";
export { type BoughtPart, type BuyLine, buyList } from "./buy/buy-list.ts";
export { placeInWords } from "./buy/place-in-words.ts";
export type * from "./car/car.ts";
export { spinAxisOf, wheelCentreOf } from "./car/wheel-centre.ts";
export { type CertainReading, type CycleCertainty, cycleCertainty, type Share } from "./certainty/cycle-certainty.ts";
export {
  type Inputs,
  type UncertainInput,
  USUAL_JOINT,
  USUAL_SETTING,
  USUAL_TACKED,
  USUAL_TURNED,
  uncertainInputs,
} from "./certainty/inputs.ts";
export { type LimitCertainty, limitCertainty } from "./certainty/limit-certainty.ts";
export { type Simulated, type SimulatedResult, simulateCars } from "./certainty/monte-carlo.ts";
export {
  type Matter,
  type MatterResult,
  type MatterSource,
  type StudyCertainty,
  studyCertainty,
} from "./certainty/study-certainty.ts";
export { type TyreGap, tyreGaps } from "./certainty/tyre-gap.ts";
export { cylinderToTriangle, nearest, segmentToTriangle, type Triangle } from "./clearance/core-triangle.ts";
export { gapsAt, type PairGap } from "./clearance/gaps-at.ts";
export { compareStudies } from "./compare/compare-studies.ts";
export { type Corner, makeCorner, solveAt, writeRow } from "./cycle/corner.ts";
export { type Cycle, moveThrough, rowAt, stations } from "./cycle/cycle.ts";
export { closureResidual, type Position, placeMember, placeOn, positionOf } from "./cycle/position.ts";
export { type Quantity, quantitiesOf } from "./cycle/quantities.ts";
export { type SpeedRipple, speedRipple } from "./driveline/speed-ripple.ts";
export type { Finding, FindingCode, FindingValue, Gravity } from "./findings/finding.ts";
export { sayBack, sayOff } from "./findings/say-as-built.ts";
export { sayInput, sayInputKind, sayMatter } from "./findings/say-certainty.ts";
export { type SaidFinding, sayFinding } from "./findings/say-finding.ts";
export { sayCaseLoad, sayCaseNote, sayNoBalance, sayStrut } from "./findings/say-loads.ts";
export { sayCheck, sayCheckCase, sayHelp } from "./findings/say-strength.ts";
export {
  sayCause,
  sayEither,
  sayMirrored,
  sayReading,
  sayReadingValue,
  sayRemedy,
  saySettling,
  saySuspicion,
  sayUndetermined,
} from "./findings/say-survey.ts";
export type * from "./geometry/pose.ts";
export {
  addScaled,
  cross,
  distance,
  dot,
  length as lengthOf,
  midpoint,
  scale,
  subtract,
  UP,
  unit as unitVector,
  type Vec3,
} from "./geometry/vec3.ts";
export { type AxleModel, axleRates, USUAL_GYRATION } from "./landing/axle-rates.ts";
export { type CornerModel, cornerModel, type LandingAssumption, type LandingNeed } from "./landing/corner-model.ts";
export { suspensionForces, writeForces, writeRates } from "./landing/corner-rates.ts";
export type { Landing, LandingHistory, LandingPeaks, Peak } from "./landing/landing.ts";
export { suspensionEnergy } from "./landing/landing-energy.ts";
export type { Bump, Drop, LandingEvent, RandomRoadRide, Whoops } from "./landing/landing-event.ts";
export { type OilHeat, oilHeat, SHOCK_COOLING, SHOCK_HEAT_CAPACITY } from "./landing/oil-heat.ts";
export { roadAt } from "./landing/road.ts";
export { type AxleLanding, runAxle } from "./landing/run-axle.ts";
export { runLanding, sceneOf } from "./landing/run-landing.ts";
export type { Direction } from "./limits/find-limits.ts";
export type * from "./limits/travel-report.ts";
export { reportTravel } from "./limits/travel-report.ts";
export type * from "./linkage/kind.ts";
export { kindOf, LINKAGE_KINDS } from "./linkage/kinds.ts";
export { designState, type MotionState } from "./linkage/motion-state.ts";
export {
  allCaseForces,
  type CaseForces,
  type CaseGround,
  type CaseNote,
  caseForces,
  caseGround,
  loadsOf,
  placeTravel,
  wheelTorque,
} from "./loads/case-forces.ts";
export type * from "./loads/corner-forces.ts";
export { balance, type HeldCorner } from "./loads/equilibrium.ts";
export { equilibriumResidual } from "./loads/equilibrium-residual.ts";
export { landingCases } from "./loads/landing-cases.ts";
export { type CasePlace, COMMON_CASES, COMMON_LOADS, type LoadCase, type LoadsEntry } from "./loads/load-case.ts";
export type { ShaftTorque } from "./loads/shaft-torque.ts";
export type { SpindleAction } from "./loads/spindle-action.ts";
export { STRUTS, type StrutName } from "./loads/struts.ts";
export { type WorkAtWheel, workAtWheel } from "./loads/virtual-work.ts";
export type { Turning, WheelLoad } from "./loads/wheel-load.ts";
export { type Judged, judgeMounts } from "./mounts/candidate.ts";
export { defaultRequest } from "./mounts/default-request.ts";
export type { Feasible } from "./mounts/feasible.ts";
export { findMounts, findMountsPart, type MountsFound, type MountsPart, mergeParts } from "./mounts/find-mounts.ts";
export { type LowerPoint, upperAt } from "./mounts/grid.ts";
export { lowerKeepOut, nearKeepOut, notchKeepOut } from "./mounts/keep-out-operations.ts";
export type { LoadPath } from "./mounts/load-path.ts";
export { type MountLoad, mountLoadOf } from "./mounts/mount-load.ts";
export type { Notch } from "./mounts/notch.ts";
export type { NotchOutline } from "./mounts/notch-outline.ts";
export { notchedBox } from "./mounts/notched-box.ts";
export { OWN_SHOCK, ownShock } from "./mounts/own-shock.ts";
export {
  type OwnedAnswer,
  type OwnedParts,
  type Reach,
  type ShockReach,
  trackRange,
  travelWindow,
  USUAL_MARGIN,
  withOwnedParts,
} from "./mounts/owned-parts.ts";
export type { Proposal } from "./mounts/proposal.ts";
export { type MapView, type Region, type RegionMap, type RegionSide, regionMap, regionOf } from "./mounts/region.ts";
export type {
  LowerZone,
  MountRequest,
  MountRequirements,
  ShockOption,
  UpperZone,
  WrenchRoom,
} from "./mounts/request.ts";
export {
  COMMON_REQUIREMENTS,
  COMMON_RESERVE,
  COMMON_WRENCH,
  REQUIREMENTS,
  type RequirementCode,
} from "./mounts/request.ts";
export { countCandidates, quickRequest, type SearchRun, startSearch } from "./mounts/run-search.ts";
export { SCORES } from "./mounts/scan.ts";
export { type HungShock, hangShock } from "./mounts/shock-operations.ts";
export { readShockShelf, type ShockShelf, type ShockShelfReading } from "./mounts/shock-shelf.ts";
export type { Reading, TapeTo } from "./mounts/tape-to.ts";
export { type Change, type Opening, openingWith, whatWouldOpen, withChange } from "./mounts/what-would-open.ts";
export { answerSolve, SOLVE_QUESTIONS, solveContext, solveNeed } from "./solve/ask.ts";
export { cornerPlaces } from "./solve/car-places.ts";
export { type SolveNote, saySolveNote } from "./solve/note.ts";
export { pointAt } from "./solve/point-places.ts";
export type {
  ChoiceInput,
  NumberInput,
  SolveAim,
  SolveAnswer,
  SolveChange,
  SolveChoice,
  SolveContext,
  SolveCurve,
  SolveInput,
  SolveNeed,
  SolveQuestion,
  SolveReading,
  SolveSubject,
  SolveValues,
} from "./solve/question.ts";
export {
  coilRate,
  coilStress,
  coilsForRate,
  SPRING_STEEL,
  solidLengthOf,
  wahlFactor,
  wireForRate,
} from "./springs/coil-rate.ts";
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
  damperPower,
  EMULSION_RISE,
  ROAD_CLASSES,
  type RoadClass,
  type RoadHeat,
  roadHeat,
  USUAL_TYRE_RATE,
} from "./springs/road-heat.ts";
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
} from "./springs/spring-choice.ts";
export {
  type DampingPoint,
  dampingOverTravel,
  type SpringPoint,
  springOverLength,
  type WheelSpringPoint,
  wheelSpringOverTravel,
} from "./springs/spring-curves.ts";
export { springOperations, withTrialSpring } from "./springs/spring-operations.ts";
export { readSpringShelf, type SpringShelf, type SpringShelfReading } from "./springs/spring-shelf.ts";
export { gapFromCrossover } from "./springs/spring-stack.ts";
export {
  type SpringNeed,
  type SpringPosition,
  type SpringStudy,
  springNeed,
  studySprings,
} from "./springs/spring-study.ts";
export { bandOf, type FrequencyBand, USE_BANDS } from "./springs/use-band.ts";
export { WEIGHT_ERROR, type WeightEffect } from "./springs/weight-error.ts";
export type { WheelSpringState } from "./springs/wheel-spring.ts";
export { type StopsWish, USUAL_STOPS } from "./stops/assumptions.ts";
export {
  type BumpStopLaw,
  type BumpStopState,
  bumpStopAt,
  bumpStopForce,
  lawSpread,
  SOLID_RATE,
  squeezeFor,
} from "./stops/bump-stop-law.ts";
export type { CurveState, ForcePoint } from "./stops/force-points.ts";
export { lawOf } from "./stops/law-of.ts";
export { type LineMotion, lineMotionAt } from "./stops/line-motion.ts";
export type { BumpStopProposal } from "./stops/propose-bump-stop.ts";
export { proposeStops, type StopsProposal } from "./stops/propose-stops.ts";
export type { NoProposal, StrapProposal } from "./stops/propose-strap.ts";
export { type StrapStretch, strapAt, strapForce, stretchOf } from "./stops/strap-stretch.ts";
export type { BumpStopStudy, DropOnStop } from "./stops/study-bump-stop.ts";
export { type StopsStudy, studyStops } from "./stops/study-stops.ts";
export type { Snatch, StrapStudy } from "./stops/study-strap.ts";
export type { ArmCaseResult, MemberUse } from "./strength/analyse-arm.ts";
export type { ArmFrame, ArmMember, ArmNode } from "./strength/arm-frame.ts";
export { armFrames, linkTubes } from "./strength/arm-frames.ts";
export { type ArmProposal, LEAST_FACTOR } from "./strength/arm-proposals.ts";
export { type ArmChange, changeOperations } from "./strength/changed-arm.ts";
export type { ArmCheck } from "./strength/check-arms.ts";
export { armWords } from "./strength/make-arm-frame.ts";
export { MATERIALS, type Material } from "./strength/material.ts";
export type { CheckCode, PartCheck } from "./strength/part-check.ts";
export { formatTube, formatWall } from "./strength/size-words.ts";
export { type StrengthStudy, studyStrength, type TubeAlternative } from "./strength/strength-study.ts";
export type { WheelGive } from "./strength/wheel-give.ts";
export { DEFAULT_STATIONS, type MotionStudy, type StudyOptions, studyMotion } from "./study/motion-study.ts";
export { type Study, study } from "./study/study.ts";
export type { CarSurvey, SurveyUse } from "./survey/car-survey.ts";
export { guessCauses } from "./survey/cause.ts";
export { chiSquareLimit, chiSquareTail, normalLimit, studentLimit, tauLimit } from "./survey/distribution.ts";
export { componentsOf } from "./survey/equations.ts";
export { type Equation, type Fit, fitLeastSquares, type Model } from "./survey/fit-least-squares.ts";
export { nextReadings, type Wish } from "./survey/next-reading.ts";
export type {
  Cause,
  Mirrored,
  NextReading,
  SolvedNumber,
  SolvedPoint,
  SolvedReading,
  SurveyResult,
  Suspicion,
  Undetermined,
} from "./survey/result.ts";
export { FALSE_ALARM_RATE } from "./survey/snoop.ts";
export { type SolvedSurvey, type SurveyOptions, solveSurvey } from "./survey/solve-survey.ts";
export {
  type PointIndex,
  pointsOf,
  type ReadingKind,
  type Survey,
  type SurveyPoint,
  type SurveyReading,
  sdOf,
} from "./survey/survey.ts";
export * from "./units/index.ts";
export { onMark } from "./units/marks.ts";
export { typedAngle, typedLength, typedPoint } from "./units/typed.ts";
