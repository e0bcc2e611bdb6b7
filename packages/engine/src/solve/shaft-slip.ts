import type { Car, Slip } from "../car/car.ts";
import { ROW } from "../cycle/row.ts";
import { distance } from "../geometry/vec3.ts";
import { onMark } from "../units/marks.ts";
import { typedLength } from "../units/typed.ts";
import { finish, operationsOf } from "./finish.ts";
import { rightNotes } from "./move-points.ts";
import type { SolveNote } from "./note.ts";
import { bareCar, rowsOver, searchTravels } from "./over-travel.ts";
import type { NumberInput, SolveAnswer, SolveChange, SolveContext, SolveQuestion, SolveValues } from "./question.ts";
import { round, travelInputs } from "./zone.ts";

/**
 * A slip has one length from bottomed to pulled apart; cutting the shaft longer or shorter only shares it between what is
 * engaged and what can still be pushed in. Over the travel the first loses the greatest plunge, the second the most negative.
 */
export const SHAFT_SLIP: SolveQuestion = {
  id: "shaft-slip",
  title: "Length of the half shaft, so that its slip suffices at both ends",
  meaning:
    "Sets how far the slip stands in at ride height, so that it neither comes apart nor bottoms over the travel.",
  kinds: ["h-arm", "double-a-arm", "trailing-arm", "five-link"],
  needs: ({ study }) => (study.car.driveshaft ? null : "driveshaft"),
  inputs: (context) => {
    const slip = context.study.car.driveshaft?.slip;
    const length = (id: string, label: string, value: number): NumberInput => ({
      id,
      label,
      dimension: "length",
      default: value,
      least: 0,
      most: 1,
      signed: false,
    });
    return [
      // Engaged: common practice, about as much as the spline is thick; from memory.
      length("engaged", "spline that has to stay engaged", slip?.leastEngagement ?? round(context, 1.5, 38)),
      length("left", "what has to be left before it bottoms (common practice)", round(context, 0.125, 3)),
      length("spline", "spline from bottomed to pulled apart, 0 where not known", splineOf(slip) ?? 0),
      ...travelInputs(context),
    ];
  },
  solve: (context, values) => solveSlip(context, values),
};

const splineOf = (slip: Slip | undefined): number | null =>
  slip?.pushInLeft === undefined ? null : slip.engagement + slip.pushInLeft;

interface Plunge {
  readonly least: number;
  readonly most: number;
}

function plungeOver(car: Car, values: SolveValues): Plunge | null {
  const rows = rowsOver(bareCar(car), searchTravels(Number(values["from"]), Number(values["to"])));
  if (!rows) return null;
  const plunge = rows.map((row) => row[ROW.plunge]!);
  return { least: Math.min(0, ...plunge), most: Math.max(0, ...plunge) };
}

function solveSlip(context: SolveContext, values: SolveValues): SolveAnswer {
  const { car } = context.study;
  const slip = car.driveshaft?.slip;
  const engaged = Number(values["engaged"]);
  const left = Number(values["left"]);
  const plunge = plungeOver(car, values);
  const spareOf = (each: Car): number | null => {
    const own = each.driveshaft?.slip;
    const moved = plungeOver(each, values);
    if (!own || !moved) return null;
    return Math.min(
      own.engagement - moved.most - engaged,
      (own.pushInLeft ?? Number.POSITIVE_INFINITY) + moved.least - left,
    );
  };
  const aim = {
    label: "spline to spare at the worse end",
    dimension: "length",
    sense: "at-least",
    wanted: 0,
    before: spareOf(car),
  } as const;
  const common = { question: SHAFT_SLIP.id, readings: [], curves: [], choices: [], measure: spareOf };
  const notes: SolveNote[] = [...rightNotes(context)];
  if (!plunge) {
    notes.unshift({ code: "does-not-go-together" });
    return finish(context, { ...common, aim: { ...aim, best: null }, changes: [], operations: [], notes });
  }
  const needed = engaged + left + plunge.most - plunge.least;
  const has = Number(values["spline"]);
  const isKnown = has > 0;
  const spare = isKnown ? (has - needed) / 2 : 0;
  const exact = { engagement: engaged + plunge.most + spare, pushInLeft: left - plunge.least + spare };
  // What is known in whole is shared to the last mark; what is not is rounded up at both ends.
  const engagement = Math.max(0, onMark(exact.engagement, car.units, isKnown ? Math.round : Math.ceil));
  const pushInLeft = isKnown
    ? onMark(has - engagement, car.units, Math.floor)
    : onMark(exact.pushInLeft, car.units, Math.ceil);
  if (!isKnown) notes.push({ code: "spline-free", needs: needed });
  else if (spare < -1e-9) notes.push({ code: "spline-too-short", needs: needed, has });
  if (slip) notes.push({ code: "shaft-longer", by: engagement - slip.engagement, now: shaftLength(car) });
  const change = (field: keyof Slip, label: string, value: number, after: number): SolveChange => ({
    path: `driveshaft.slip.${field}`,
    label,
    dimension: "length",
    before: slip?.[field] ?? null,
    exact: value,
    after,
  });
  const all = [
    change("engagement", "slip engaged at ride height", exact.engagement, engagement),
    change("pushInLeft", "slip left to push in at ride height", exact.pushInLeft, Math.max(0, pushInLeft)),
    ...(slip?.leastEngagement === engaged
      ? []
      : [change("leastEngagement", "least engagement", engaged, onMark(engaged, car.units))]),
  ];
  const changes = all.filter(({ before, after }) => before === null || Math.abs(before - after) > 1e-9);
  return finish(context, {
    ...common,
    aim: { ...aim, best: spare },
    changes,
    operations: operationsOf(changes, ({ after }) => typedLength(after, car.units)),
    notes,
    readingsOf: (after) => [
      {
        label: "slip engaged where it is least",
        dimension: "length",
        signed: false,
        before: leastEngaged(car, plunge),
        after: leastEngaged(after, plunge),
      },
      {
        label: "slip left to push in where it is least",
        dimension: "length",
        signed: false,
        before: leastLeft(car, plunge),
        after: leastLeft(after, plunge),
      },
    ],
  });
}

const leastEngaged = ({ driveshaft }: Car, { most }: Plunge): number | null =>
  driveshaft?.slip ? driveshaft.slip.engagement - most : null;

const leastLeft = ({ driveshaft }: Car, { least }: Plunge): number | null =>
  driveshaft?.slip?.pushInLeft === undefined ? null : driveshaft.slip.pushInLeft + least;

const shaftLength = ({ driveshaft }: Car): number =>
  driveshaft ? distance(driveshaft.inner.centre, driveshaft.outer.centre) : 0;
