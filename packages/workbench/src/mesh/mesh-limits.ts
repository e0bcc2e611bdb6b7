import type { DirectionReport, Finding, LimitReport, Study } from "@armwright/engine";
import { studyWith } from "../store/study-with.ts";
import { type LeastGap, leastGaps, type MeshSamples } from "./samples.ts";

/** Place in the document that everything about the scan leads to. */
const PLACE = "chassisMesh";

type Direction = "bump" | "droop";

/** The study with what the scan adds: where a part meets it before a stop, and where a gap is less than is wanted. */
export function withMesh(study: Study, samples: MeshSamples): Study {
  const wanted = study.car.chassisMesh?.clearance ?? 0;
  const rows = leastGaps(samples);
  const bump = reported(study.travel.bump, samples);
  const droop = reported(study.travel.droop, samples);
  const findings = [
    ...study.findings,
    ...met(samples, bump, "bump"),
    ...met(samples, droop, "droop"),
    ...rows.flatMap((row) => (row.gap !== null && row.gap > 0 && row.gap < wanted ? [tooNear(row, wanted)] : [])),
  ];
  return studyWith(study, {
    travel: { ...study.travel, bump, droop },
    findings: findings.sort((a, b) => GRAVITY.indexOf(a.gravity) - GRAVITY.indexOf(b.gravity)),
  });
}

const GRAVITY: readonly Finding["gravity"][] = ["must", "mind", "note"];

/** Where each part first meets the scan, from ride height outward; none beyond the stops, where nobody looked. */
function touches({ parts, travels, gaps }: MeshSamples, direction: Direction): readonly (number | null)[] {
  const sign = direction === "bump" ? 1 : -1;
  const order = travels
    .map((travel, index) => ({ travel, index }))
    .filter(({ travel }) => travel * sign >= -1e-9)
    .sort((a, b) => sign * (a.travel - b.travel));
  return parts.map((_, part) => {
    let before: { readonly travel: number; readonly gap: number } | null = null;
    for (const { travel, index } of order) {
      const gap = gaps[index]?.[part]?.gap ?? Number.POSITIVE_INFINITY;
      if (gap <= 0) {
        if (!before || !Number.isFinite(before.gap)) return travel;
        return before.travel + ((travel - before.travel) * before.gap) / (before.gap - gap);
      }
      before = { travel, gap };
    }
    return null;
  });
}

function reported(report: DirectionReport, samples: MeshSamples): DirectionReport {
  const sign = report.direction === "bump" ? 1 : -1;
  const found = touches(samples, report.direction).flatMap((travel, part): LimitReport[] => {
    const { id = "", label = "" } = samples.parts[part] ?? {};
    if (travel === null) return [];
    const gapAtStop = gapNearest(samples, part, report.stop.travel);
    return [
      {
        id: `clearance:${id}:chassis-mesh`,
        code: "clearance",
        label: `${label} to scan`,
        nature: "hard",
        place: PLACE,
        travel,
        pastAtRide: Math.abs(travel) < 1e-6,
        travelLeft: sign * (travel - report.stop.travel),
        spare: gapAtStop,
        dimension: "length",
        spareWord: "of air",
        isProtected: sign * (travel - report.stop.travel) > 0,
      },
    ];
  });
  if (found.length === 0) return report;
  const limits = [...report.limits, ...found].sort((a, b) => Math.abs(a.travel) - Math.abs(b.travel));
  return { ...report, limits, first: limits.find(({ nature }) => nature === "hard") ?? null };
}

function gapNearest({ travels, gaps }: MeshSamples, part: number, travel: number): number {
  let nearest = 0;
  travels.forEach((each, index) => {
    if (Math.abs(each - travel) < Math.abs((travels[nearest] ?? 0) - travel)) nearest = index;
  });
  return gaps[nearest]?.[part]?.gap ?? 0;
}

const SOURCE = "exact nearest distance to every triangle of the scan, at solved positions between the stops";

function met(samples: MeshSamples, report: DirectionReport, way: Direction): readonly Finding[] {
  return report.limits
    .filter(({ place }) => place === PLACE)
    .map((limit) => ({
      code: "limit-before-stop",
      gravity: "must",
      place: PLACE,
      travel: limit.travel,
      ...spotOf(samples, limit),
      source: SOURCE,
      values: {
        limit: limit.label,
        code: "clearance",
        way,
        stop: STOP_NAMES[report.stop.by],
        part: way === "bump" ? "bump stop" : "strap",
        travel: { value: Math.abs(limit.travel), dimension: "length" },
        before: { value: Math.max(0, -limit.travelLeft), dimension: "length" },
        over: { value: Math.abs(limit.spare), dimension: "length" },
      },
    }));
}

function spotOf(samples: MeshSamples, { id, travel }: LimitReport): Pick<Finding, "at"> {
  const part = samples.parts.findIndex((each) => id === `clearance:${each.id}:chassis-mesh`);
  const index = samples.travels.reduce(
    (best, each, i) => (Math.abs(each - travel) < Math.abs((samples.travels[best] ?? 0) - travel) ? i : best),
    0,
  );
  const at = samples.gaps[index]?.[part]?.at;
  return at ? { at } : {};
}

const STOP_NAMES: Readonly<Record<DirectionReport["stop"]["by"], string>> = {
  "bump-stop": "bump stop",
  strap: "strap",
  shock: "shock",
  travel: "travel aimed at",
};

const tooNear = ({ label, gap, travel, at }: LeastGap, wanted: number): Finding => ({
  code: "clearance-short",
  gravity: "mind",
  place: PLACE,
  travel,
  ...(at && { at }),
  source: `gap wanted round the scan; ${SOURCE}`,
  values: {
    pair: `${label} to scan`,
    limit: label,
    gap: { value: gap ?? 0, dimension: "length" },
    wanted: { value: wanted, dimension: "length" },
    travel: { value: travel, dimension: "length" },
    more: { value: wanted - (gap ?? 0), dimension: "length" },
  },
});
