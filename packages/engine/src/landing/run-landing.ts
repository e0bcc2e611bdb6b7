import type { Corner } from "../cycle/corner.ts";
import type { CornerModel } from "./corner-model.ts";
import { type Landing, readLanding } from "./landing.ts";
import type { LandingEvent } from "./landing-event.ts";
import { hangingStart, restStart } from "./landing-start.ts";
import { AT } from "./model-places.ts";
import { randomRoad } from "./random-road.ts";
import { bumpRoad, type Road, whoopsRoad } from "./road.ts";
import { type CornerStart, runCorner, STEP_SIZE, type StepRules, USUAL_STEPS } from "./run-corner.ts";

/** What an event means for one corner: the ground, how it begins, and for how long it is watched, s. */
export interface Scene {
  readonly road: Road | null;
  readonly start: CornerStart;
  readonly until: number;
}

/** Watched so long after touchdown, or after the last bump, s. */
const AFTER = 2.5;

export function sceneOf(model: CornerModel, event: LandingEvent): Scene {
  switch (event.kind) {
    case "drop": {
      const fall = Math.sqrt((2 * event.height) / model.constants[AT.gravity]!);
      return { road: null, start: hangingStart(model, event.height), until: fall + AFTER };
    }
    case "bump":
      return over(model, bumpRoad(event.height, event.length, event.speed));
    case "whoops":
      return over(model, whoopsRoad(event.height, event.spacing, event.count, event.speed));
    case "road": {
      const { roadClass, speed, seconds, seed } = event;
      const road = randomRoad(roadClass, speed, speed * seconds, seed);
      return { road, start: restStart(model), until: seconds };
    }
  }
}

function over(model: CornerModel, road: Road): Scene {
  const passes = ((road.heights.length - 1) * road.step) / road.speed;
  return { road, start: restStart(model), until: passes + AFTER };
}

/** Both wheels alike: one corner with half of the axle's sprung mass. The same event gives the same bits. */
export function runLanding(
  corner: Corner,
  model: CornerModel,
  event: LandingEvent,
  rules: StepRules = USUAL_STEPS,
): Landing {
  const scene = sceneOf(model, event);
  const steps = scene.road ? withinRoad(rules, scene.road) : rules;
  let room = Math.ceil(scene.until / steps.longest) * 3 + 500;
  for (;;) {
    const path = new Float64Array(room * STEP_SIZE);
    const end = runCorner(model.constants, scene.road, scene.start, scene.until, steps, path);
    if (end.isWhole || room > MOST_STEPS) return readLanding(corner, model, scene.road, path, end.steps);
    room *= 3;
  }
}

/** A landing that takes more steps than this is cut there. */
const MOST_STEPS = 2_000_000;

/** No step is longer than the ground takes from one of its heights to the next: a step must not jump over a stone. */
const withinRoad = ({ error, longest }: StepRules, { step, speed }: Road): StepRules => ({
  error,
  longest: Math.min(longest, Math.max(step / speed, LEAST_ON_ROAD)),
});
const LEAST_ON_ROAD = 1e-3;
