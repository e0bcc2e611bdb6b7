import {
  type Car,
  caseGround,
  cornerModel,
  type Landing,
  type LandingAssumption,
  type LandingEvent,
  type LandingNeed,
  type LoadCase,
  landingCases,
  type OilHeat,
  oilHeat,
  roadAt,
  runAxle,
  runLanding,
  STANDARD_GRAVITY,
  type Study,
  sceneOf,
  study,
  USUAL_GYRATION,
} from "@armwright/engine";
import { type CarDocument, readCarValue } from "@armwright/engine/document";
import type { Job } from "../jobs/job.ts";

export interface LandingInput {
  readonly document: CarDocument;
  readonly side: "left" | "right";
  readonly event: LandingEvent;
  /** Begins the names of the cases that its peaks become. */
  readonly title: string;
}

/** A landing, and what the page needs beside it. SI. */
export interface LandingAnswer {
  readonly landing: Landing;
  /** Height of the ground under the wheel at each time of the history, m. */
  readonly ground: Float64Array;
  /** Of a landing on one wheel: the other one, and how far the body rolls, rad. */
  readonly other: {
    readonly landing: Landing;
    readonly roll: { readonly most: number; readonly least: number };
  } | null;
  readonly stops: { readonly droop: number; readonly bump: number };
  /** What the wheel carries at rest, N. */
  readonly carried: number;
  readonly assumed: readonly LandingAssumption[];
  /** Tyre pressed in so far lies on its rim, m. */
  readonly toRim: number;
  readonly heat: OilHeat;
  readonly cases: readonly LoadCase[];
}

/** What is being done, for whoever waits. */
export type LandingStage = "reading the car" | "moving the wheel" | "reading its history";

/** One landing of a car. Throws in words where the car lacks something for it. */
export const landingJob: Job<LandingInput, LandingAnswer, LandingStage> = async (
  { document, side, event, title },
  { tell, pause },
) => {
  tell("reading the car");
  const reading = readCarValue(document);
  if (!reading.ok) throw new Error("the car has faults: mend them first");
  const shown = side === "right" ? (reading.car.right ?? reading.car) : reading.car;
  const made = study(shown);
  const model = modelOf(made);
  await pause();
  tell("moving the wheel");
  await pause();
  const isOneSided =
    (event.kind === "drop" && event.otherLower !== undefined) || (event.kind === "bump" && event.oneWheel === true);
  const run = isOneSided
    ? onOneWheel(made, otherOf(reading.car, side, made), event)
    : { landing: runLanding(made.corner, model, event), other: null };
  await pause();
  tell("reading its history");
  const { road } = sceneOf(model, event);
  const height = new Float64Array(2);
  const ground = run.landing.history.time.map((time) => {
    if (!road) return 0;
    roadAt(road, time, height);
    return height[0]!;
  });
  const found = caseGround(made);
  const { wheel } = shown;
  return {
    ...run,
    ground,
    stops: model.stops,
    carried: (model.sprungMass + model.unsprungMass) * STANDARD_GRAVITY,
    assumed: model.assumed,
    toRim: wheel.freeRadius - wheel.rimDiameter / 2,
    heat: oilHeat(run.landing.damper.meanPower),
    cases: found ? landingCases(found, model, run.landing, title) : [],
  };
};

function modelOf(made: Study) {
  const found = cornerModel(made);
  if (!found.ok) throw new Error(NEEDS[found.need]);
  return found.model;
}

function otherOf(car: Car, side: "left" | "right", made: Study): Study {
  if (!car.right) return made;
  return study(side === "right" ? car : car.right);
}

function onOneWheel(made: Study, other: Study, event: LandingEvent): Pick<LandingAnswer, "landing" | "other"> {
  if (event.kind !== "drop" && event.kind !== "bump") throw new Error("bug in the page: this event has both wheels");
  const halfTrack = made.corner.wheelCentre.y;
  const { left, right, roll } = runAxle(
    { left: made.corner, right: other.corner },
    { left: modelOf(made), right: modelOf(other), halfTrack, gyration: USUAL_GYRATION * halfTrack },
    event,
  );
  return { landing: left, other: { landing: right, roll } };
}

const NEEDS: Readonly<Record<LandingNeed, string>> = {
  shock: "The car has no shock, so nothing would catch the wheel: place one in the step Shock.",
  springs: "The shock has no springs: enter them in the step Springs, or choose them from a shelf there.",
  "corner-weight": "Enter what one rear wheel carries on the scale, in the step Stance.",
  "unsprung-weight": "Enter the unsprung weight in the step Stance: wheel, hub, brake, half of arm, shaft and shock.",
  "not-carried":
    "The springs do not carry the car between its stops, so there is nothing to land on: look at the step Springs first.",
};
