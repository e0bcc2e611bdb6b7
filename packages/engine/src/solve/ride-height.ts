import type { Car } from "../car/car.ts";
import { makeCorner, solveAt } from "../cycle/corner.ts";
import { ROW } from "../cycle/row.ts";
import type { Operation } from "../document/operation.ts";
import { study as studyOf } from "../study/study.ts";
import { markOf, onMark } from "../units/marks.ts";
import { typedAngle, typedLength } from "../units/typed.ts";
import { bodyPlaces, changesBetween, cornerPlaces, onlyIn } from "./car-places.ts";
import { finish } from "./finish.ts";
import type { SolveNote } from "./note.ts";
import type { SolveAnswer, SolveChange, SolveContext, SolveQuestion, SolveValues } from "./question.ts";
import { redrawnAt } from "./redrawn.ts";
import { round } from "./zone.ts";

export const RIDE_HEIGHT: SolveQuestion = {
  id: "ride-height",
  title: "Ride height for a clearance under the body at full bump",
  meaning:
    "Finds how far the wheel may come up before the body is nearer the ground than wanted, puts the bump stop there, and draws the car at the ride height that leaves the wanted bump travel.",
  kinds: ["h-arm", "double-a-arm", "trailing-arm", "five-link"],
  needs: ({ study }) => {
    if (study.car.underbody.length === 0) return "underbody";
    return study.travel.bump.stop.by === "bump-stop" || study.travel.bump.stop.by === "travel"
      ? null
      : "stop-that-moves";
  },
  inputs: (context) => [
    {
      id: "clearance",
      label: "clearance wanted under the body at full bump",
      dimension: "length",
      // Common practice, no source, where the car names none: a flat tyre then still keeps the skid plate off the ground.
      default: context.study.car.targets.clearanceAtFullBump ?? round(context, 3, 75),
      least: 0,
      most: 1,
      signed: false,
    },
    {
      id: "bump",
      label: "bump travel wanted",
      dimension: "length",
      default: context.study.travel.bump.stop.travel,
      least: 0,
      most: 1,
      signed: false,
    },
    {
      id: "keep",
      label: "what is kept",
      dimension: "word",
      default: "bump-travel",
      choices: [
        { id: "bump-travel", label: "the bump travel: the body goes up or down" },
        { id: "ride-height", label: "the ride height: the bump travel changes" },
      ],
    },
  ],
  solve: (context, values) => solveRideHeight(context, values),
};

function solveRideHeight(context: SolveContext, values: SolveValues): SolveAnswer {
  const { study, subject } = context;
  const { car } = study;
  const wanted = Number(values["clearance"]);
  const mark = markOf(car.units);
  const fullBump = highestWith(car, wanted);
  const aim = {
    label: "clearance under the body at full bump",
    dimension: "length",
    sense: "at-least",
    wanted,
    before: clearanceAtFullBump(car),
  } as const;
  const common = { question: RIDE_HEIGHT.id, readings: [], curves: [], choices: [], measure: clearanceAtFullBump };
  const cannot = (notes: readonly SolveNote[], best: number | null): SolveAnswer =>
    finish(context, { ...common, aim: { ...aim, best }, changes: [], operations: [], notes, nothing: "none" });
  if (fullBump === null) return cannot([{ code: "out-of-range" }], null);
  const keepsHeight = values["keep"] === "ride-height";
  const exactRide = keepsHeight ? 0 : fullBump - Number(values["bump"]);
  // Body up to the next mark, never down past what is wanted.
  const ride = Math.floor(exactRide / mark + 1e-6) * mark;
  const end = keepsHeight ? Math.floor(fullBump / mark + 1e-6) * mark : ride + Number(values["bump"]);
  const made = ride === 0 ? null : redrawnAt(car, ride);
  if (!(end > ride) || (ride !== 0 && !made)) return cannot([{ code: "out-of-range" }], null);
  const notes: SolveNote[] = made ? [{ code: "springs-follow" }] : [];
  const hard = study.travel.bump.first;
  if (hard && hard.travel < end) notes.push({ code: "stopped-sooner", label: hard.label, travel: hard.travel });
  const changes: SolveChange[] = [];
  const right = made && car.right ? redrawnAt(car.right, ride) : null;
  if (made) {
    changes.push(...numbersBetween(car, made));
    changes.push(...changesBetween(car, made, [...cornerPlaces(car), ...bodyPlaces(car)], "left"));
  }
  if (car.right && right)
    changes.push(...changesBetween(car.right, right, onlyIn(cornerPlaces(car.right), subject.ownRight), "right"));
  const stop = stopChanges(context, end, end - ride);
  if (stop === null) return cannot([{ code: "out-of-range" }], null);
  changes.push(...stop);
  const solid = stop.find(({ path }) => path === "bumpStop.solid");
  if (solid && car.bumpStop && solid.after > 2 * car.bumpStop.solid)
    notes.push({ code: "stop-too-tall", solid: solid.after });
  if (solid && solid.after <= 0) return cannot([{ code: "stop-too-tall", solid: 0 }], null);
  return finish(context, {
    ...common,
    aim: { ...aim, best: wanted },
    changes,
    operations: changes.map((change): Operation => ({ path: change.path, value: typed(change, car) })),
    notes,
    readingsOf: (after) => [
      {
        label: "body's height over the ground, from now",
        dimension: "length",
        signed: true,
        before: 0,
        after: (clearanceAt(after, 0) ?? 0) - (clearanceAt(car, 0) ?? 0),
      },
      {
        label: "clearance under the body at ride height",
        dimension: "length",
        signed: false,
        before: clearanceAt(car, 0),
        after: clearanceAt(after, 0),
      },
    ],
  });
}

const typed = ({ dimension, after }: SolveChange, { units }: Car): number | string =>
  dimension === "angle" ? typedAngle(after, units) : typedLength(after, units);

const clearanceAt = (car: Car, travel: number): number | null =>
  solveAt(makeCorner(car), travel)?.row[ROW.groundClearance] ?? null;

/** Where the car's own stop ends the travel. */
const clearanceAtFullBump = (car: Car): number | null =>
  clearanceAt(car, studyOf(car, { beyondStops: 0, stations: 2 }).travel.bump.stop.travel);

const LOOKS = 200;

/** The highest travel (m) at which the body is still `wanted` above the ground; null where it never is. */
function highestWith(car: Car, wanted: number): number | null {
  const corner = makeCorner(car);
  const { droop, bump } = corner.mechanism.range;
  const low = Math.max(-1, droop.travel) * (1 - 1e-6);
  const high = Math.min(1, bump.travel) * (1 - 1e-6);
  const spare = (travel: number): number =>
    (solveAt(corner, travel)?.row[ROW.groundClearance] ?? Number.NEGATIVE_INFINITY) - wanted;
  let past = high;
  for (let i = 0; i <= LOOKS; i += 1) {
    let free = high + ((low - high) * i) / LOOKS;
    if (spare(free) < 0) {
      past = free;
      continue;
    }
    while (Math.abs(past - free) > 1e-8) {
      const middle = (free + past) / 2;
      if (spare(middle) >= 0) free = middle;
      else past = middle;
    }
    return free;
  }
  return null;
}

/** What is not a point but belongs to the design position. */
function numbersBetween(before: Car, after: Car): readonly SolveChange[] {
  const assumed = new Set(before.assumed.map(({ path }) => path));
  const { units } = before;
  const length = (path: string, label: string, a: number | undefined, b: number | undefined): SolveChange[] =>
    a === undefined || b === undefined || assumed.has(path) || Math.abs(onMark(b, units) - a) < 1e-9
      ? []
      : [{ path, label, dimension: "length", before: a, exact: b, after: onMark(b, units) }];
  const angle = (path: string, label: string, a: number, b: number): SolveChange[] => {
    const after = (typedAngle(b, units) * Math.PI) / 180;
    return Math.abs(after - a) < 1e-9 ? [] : [{ path, label, dimension: "angle", before: a, exact: b, after }];
  };
  const [a, b] = [before, after];
  return [
    ...angle("wheel.camber", "camber", a.wheel.camber, b.wheel.camber),
    ...angle("wheel.toe", "toe", a.wheel.toe, b.wheel.toe),
    ...length("targets.wheelbase", "wheelbase", a.chassis.wheelbase, b.chassis.wheelbase),
    ...length(
      "weights.centreOfGravityHeight",
      "centre of gravity's height",
      a.chassis.centreOfGravityHeight,
      b.chassis.centreOfGravityHeight,
    ),
    ...length(
      "driveshaft.slip.engagement",
      "slip engaged at ride height",
      a.driveshaft?.slip?.engagement,
      b.driveshaft?.slip?.engagement,
    ),
    ...length(
      "driveshaft.slip.pushInLeft",
      "slip left to push in",
      a.driveshaft?.slip?.pushInLeft,
      b.driveshaft?.slip?.pushInLeft,
    ),
  ];
}

/** The stop put where full bump has to be: at travel `end` of the car as drawn now, `bump` from its new ride height, m. */
function stopChanges({ study }: SolveContext, end: number, bump: number): readonly SolveChange[] | null {
  const { car, corner, travel } = study;
  const { units, bumpStop } = car;
  const change = (path: string, label: string, before: number | null, exact: number): SolveChange[] => {
    const after = onMark(exact, units, Math.ceil);
    return before !== null && Math.abs(after - before) < 1e-9
      ? []
      : [{ path, label, dimension: "length", before, exact, after }];
  };
  if (travel.bump.stop.by === "travel" || !bumpStop) {
    const after = onMark(bump, units, Math.floor);
    const before = travel.bump.stop.travel;
    return Math.abs(after - before) < 1e-9
      ? []
      : [{ path: "stops.bump", label: "full bump", dimension: "length", before, exact: bump, after }];
  }
  const left = solveAt(corner, end)?.row[ROW.bumpStopLeft];
  if (left === undefined) return null;
  return [
    ...change("bumpStop.reach", "bump stop's reach", bumpStop.reach, bumpStop.reach + left),
    ...change("bumpStop.solid", "bump stop when solid", bumpStop.solid, bumpStop.solid + left),
  ];
}
