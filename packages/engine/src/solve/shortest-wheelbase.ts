import type { Car } from "../car/car.ts";
import { markOf, onMark } from "../units/marks.ts";
import { typedLength } from "../units/typed.ts";
import { changesBetween, cornerPlaces, onlyIn } from "./car-places.ts";
import { type Found, finish, operationsOf } from "./finish.ts";
import type { SolveNote } from "./note.ts";
import { searchTravels } from "./over-travel.ts";
import { type PointPlace, pointAt, SHAFT_INNER, withPointAt } from "./point-places.ts";
import type { SolveAnswer, SolveChange, SolveChoice, SolveContext, SolveQuestion, SolveValues } from "./question.ts";
import { firstCrossing, type ShiftPair, shiftPairs } from "./shift-limits.ts";
import { round } from "./zone.ts";

export const SHORTEST_WHEELBASE: SolveQuestion = {
  id: "shortest-wheelbase",
  title: "Wheelbase as short as the tyre's clearance to the body allows",
  meaning:
    "Moves the whole corner forward (wheel, linkage, shock, strap, bump stop and their mounts) until the tyre comes as near a keep-out as is wanted.",
  kinds: ["h-arm", "double-a-arm", "trailing-arm", "five-link"],
  needs: ({ study }) => (study.car.keepOuts.length > 0 ? null : "keep-outs"),
  inputs: (context) => [
    {
      id: "forward",
      // As far as is looked, ours.
      label: "how far it may go forward",
      dimension: "length",
      default: round(context, 12, 300),
      least: 0,
      most: 1,
      signed: false,
    },
    {
      id: "more",
      label: "clearance wanted beyond what each keep-out asks",
      dimension: "length",
      default: 0,
      least: 0,
      most: 0.3,
      signed: false,
    },
    {
      id: "where",
      label: "where the tyre has to be clear",
      dimension: "word",
      default: "travel",
      choices: [
        { id: "travel", label: "over the whole travel" },
        { id: "bump", label: "at full bump" },
      ],
    },
    ...(context.study.car.driveshaft
      ? [
          {
            id: "gearbox",
            label: "the gearbox",
            dimension: "word",
            default: "stays",
            choices: [
              { id: "stays", label: "stays where it is" },
              { id: "moves", label: "moves with the corner" },
            ],
          } as const,
        ]
      : []),
  ],
  solve: (context, values) => solveWheelbase(context, values),
};

/** Pairs that are told, nearest first. */
const TOLD = 6;

function solveWheelbase(context: SolveContext, values: SolveValues): SolveAnswer {
  const { car, travel } = context.study;
  const { bump, droop } = travel;
  const travels = values["where"] === "bump" ? [bump.stop.travel] : searchTravels(droop.stop.travel, bump.stop.travel);
  const stays = values["gearbox"] !== "moves";
  const reach = Number(values["forward"]);
  const pairsOf = (each: Car): readonly ShiftPair[] => [
    ...shiftPairs(each, travels, stays),
    ...(each.right ? shiftPairs(each.right, travels, stays, "right side, ") : []),
  ];
  const pairs = pairsOf(car);
  const more = Number(values["more"]);
  const spare = (shift: number): number => nearest(pairs, shift).spare - more;
  const isFree = spare(0) >= 0;
  const met = firstCrossing(spare, isFree ? reach : -reach);
  const exact = met ?? (isFree ? reach : 0);
  const notes: SolveNote[] = [];
  if (isFree && met === null) notes.push({ code: "nothing-in-the-way", within: reach });
  if (!isFree) notes.push({ code: "touches-now", label: nearest(pairs, 0).label });
  const again = isFree && met !== null ? clearAgain(spare, met, reach) : null;
  if (again !== null && met !== null) notes.push({ code: "clear-again", at: again, label: nearest(pairs, met).label });
  if (car.driveshaft && stays) notes.push({ code: "gearbox-stays" });
  // Back to a mark, so that what is clear stays so.
  const mark = markOf(car.units);
  const shift = Math.floor(exact / mark + 1e-6) * mark;
  const wheelbase = car.chassis.wheelbase;
  const changes = shift === 0 ? [] : shiftChanges(context, shift, !stays, wheelbase - exact);
  const common: Omit<Found, "operations"> = {
    question: SHORTEST_WHEELBASE.id,
    aim: {
      label: "wheelbase",
      dimension: "length",
      sense: "least",
      wanted: null,
      before: wheelbase,
      best: wheelbase - exact,
    },
    readings: [],
    changes,
    curves: [],
    choices: limitsForward(pairs, reach),
    notes,
    measure: (each) => each.chassis.wheelbase,
    nothing: isFree ? "already" : "none",
    readingsOf: (after) => {
      const a = nearest(pairs, 0);
      const b = nearest(pairsOf(after), 0);
      return [
        {
          label: "tyre's clearance to spare",
          dimension: "length",
          signed: true,
          before: a.spare,
          after: b.spare,
          nameBefore: a.label,
          nameAfter: b.label,
        },
      ];
    },
  };
  return finish(context, {
    ...common,
    operations: operationsOf(changes, ({ after }) => typedLength(after, car.units)),
  });
}

/** Beyond the first thing that is met, where there is room again; null where there is none within reach. */
function clearAgain(spare: (shift: number) => number, met: number, reach: number): number | null {
  const past = met + JUST_PAST;
  if (past >= reach) return null;
  const way = firstCrossing((shift) => spare(past + shift), reach - past);
  return way === null ? null : past + way;
}

/** The place where it is met is found to less than this, m. */
const JUST_PAST = 1e-6;

/** The tyre's tightest pair with the corner shifted. */
function nearest(pairs: readonly ShiftPair[], shift: number): { readonly label: string; readonly spare: number } {
  let best = { label: "", spare: Number.POSITIVE_INFINITY };
  for (const pair of pairs) {
    if (!pair.isTyre) continue;
    const spare = pair.spare(shift);
    if (spare < best.spare) best = { label: pair.label, spare };
  }
  return best;
}

/** Which keep-outs are met on the way forward, and where; what is met now already has 0. */
function limitsForward(pairs: readonly ShiftPair[], reach: number): readonly SolveChoice[] {
  return pairs
    .flatMap((pair): SolveChoice[] => {
      const offset = pair.spare(0) < 0 ? 0 : firstCrossing(pair.spare, reach);
      return offset === null ? [] : [{ label: pair.label, offset, value: null }];
    })
    .sort((a, b) => a.offset - b.offset)
    .slice(0, TOLD);
}

function shiftChanges(
  { subject, study: { car } }: SolveContext,
  shift: number,
  withGearbox: boolean,
  exactWheelbase: number,
): readonly SolveChange[] {
  const shifted = (each: Car): { readonly places: readonly PointPlace[]; readonly car: Car } => {
    const places = [...cornerPlaces(each), ...(withGearbox && each.driveshaft ? [SHAFT_INNER] : [])];
    const moved = places.reduce((made, place) => {
      const point = pointAt(made, place);
      return withPointAt(made, place, { ...point, x: point.x + shift });
    }, each);
    return { places, car: moved };
  };
  const left = shifted(car);
  const right = car.right && shifted(car.right);
  return [
    {
      path: "targets.wheelbase",
      label: "wheelbase",
      dimension: "length",
      before: car.chassis.wheelbase,
      exact: exactWheelbase,
      after: onMark(car.chassis.wheelbase - shift, car.units),
    },
    ...changesBetween(car, left.car, left.places, "left"),
    ...(car.right && right
      ? changesBetween(car.right, right.car, onlyIn(right.places, subject.ownRight), "right")
      : []),
  ];
}
