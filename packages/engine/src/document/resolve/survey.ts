import type { Vec3 } from "../../geometry/vec3.ts";
import { AXES, type ReadingKind, type Survey, type SurveyPoint, type SurveyReading } from "../../survey/survey.ts";
import type { SurveyDocument } from "../schema.ts";
import { SURVEY_ASSUMED } from "../sections/survey.ts";
import type { Resolver } from "./resolver.ts";

type ReadingDocument = SurveyDocument["readings"][number];
type PartialDocument = NonNullable<SurveyDocument["points"][number]["fixed"]>;

/** A survey in SI out of a section that passed every check of its own; ± becomes a standard deviation, half of it. */
export function resolveSurvey(document: SurveyDocument, r: Resolver): Survey {
  const places = new Map(document.points.map(({ name }, i) => [name, i]));
  return {
    points: document.points.map(
      (point): SurveyPoint => ({
        name: point.name,
        ...(point.side !== undefined && { side: point.side }),
        fixed: partialOf(point.fixed ?? {}, r),
        rough: partialOf(point.rough ?? {}, r),
      }),
    ),
    readings: document.readings.map((reading) => readingOf(reading, (name) => places.get(name)!, r)),
    uncertainty: uncertaintyOf(document, r),
    adjustment: document.adjustment ?? "constrained",
  };
}

function uncertaintyOf({ uncertainty = {} }: SurveyDocument, r: Resolver): Survey["uncertainty"] {
  const half = (name: keyof typeof SURVEY_ASSUMED): number =>
    r.either(uncertainty[name], ["survey", "uncertainty", name], SURVEY_ASSUMED[name], undefined) / 2;
  return {
    tape: half("tape"),
    height: half("height"),
    out: half("out"),
    along: half("along"),
    level: half("level"),
    "in-line": half("inLine"),
    offset: half("offset"),
    mirror: half("mirror"),
  } satisfies Record<ReadingKind, number>;
}

function partialOf(typed: PartialDocument, r: Resolver): Partial<Vec3> {
  return Object.fromEntries(
    AXES.flatMap((axis) => {
      const value = typed[axis];
      return value === undefined ? [] : [[axis, r.length(value)]];
    }),
  );
}

function readingOf(reading: ReadingDocument, place: (name: string) => number, r: Resolver): SurveyReading {
  const dimension = reading.kind === "level" ? "angle" : "length";
  const isUnread = "reads" in reading ? false : TAKES_READS.includes(reading.kind);
  const common = {
    isDeferred: reading.deferred === true || isUnread,
    ...(reading.plusMinus !== undefined && { sd: r.value(reading.plusMinus, dimension) / 2 }),
  };
  switch (reading.kind) {
    case "tape":
      return { ...common, ...lengths(reading, r), kind: "tape", from: place(reading.from), to: place(reading.to) };
    case "height":
      return {
        ...common,
        ...lengths(reading, r),
        kind: "height",
        point: place(reading.point),
        ...(reading.above !== undefined && { above: place(reading.above) }),
      };
    case "out":
    case "along":
      return {
        ...common,
        ...lengths(reading, r),
        kind: reading.kind,
        point: place(reading.point),
        ...(reading.from !== undefined && { from: place(reading.from) }),
      };
    case "level": {
      const reads = reading.reads === undefined ? 0 : r.value(reading.reads, "angle");
      return { ...common, kind: "level", from: place(reading.from), to: place(reading.to), reads };
    }
    case "in-line":
      return {
        ...common,
        kind: "in-line",
        point: place(reading.point),
        from: place(reading.from),
        to: place(reading.to),
      };
    case "offset":
      return {
        ...common,
        kind: "offset",
        from: place(reading.from),
        to: place(reading.to),
        by: partialOf(reading.by, r),
      };
    case "mirror":
      return { ...common, kind: "mirror", left: place(reading.left), right: place(reading.right) };
  }
}

const TAKES_READS: readonly ReadingKind[] = ["tape", "height", "out", "along", "level"];

const lengths = (
  { reads, add }: { readonly reads?: number | string; readonly add?: number | string },
  r: Resolver,
) => ({ reads: reads === undefined ? 0 : r.length(reads), add: add === undefined ? 0 : r.length(add) });
