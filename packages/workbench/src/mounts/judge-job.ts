import {
  type Car,
  type Judged,
  judgeMounts,
  type MountRequest,
  type MountsFound,
  type MountsPart,
  makeCorner,
  mergeParts,
  ownShock,
  regionOf,
} from "@armwright/engine";
import type { Job } from "../jobs/job.ts";
import { type Clouds, cloudsOf } from "./cloud.ts";

export interface JudgeInput {
  readonly car: Car;
  readonly request: MountRequest;
  readonly parts: readonly MountsPart[];
}

/** What the sheet shows of a search. */
export interface Judgement extends Pick<MountsFound, "tested" | "killedBy" | "inTheWay" | "best"> {
  readonly fitting: number;
  /** The shock as it hangs now, by the same wishes; null where the car has none, or none that could be asked for. */
  readonly present: Pick<Judged, "fails" | "strokeUsed"> | null;
  readonly clouds: Clouds;
  /** The request that was answered. */
  readonly request: MountRequest;
}

/** Puts the parts of a search together: counts, the region, and the short list, refined from the grid. */
export const judgeJob: Job<JudgeInput, Judgement> = ({ car, request, parts }) => {
  const found = mergeParts(makeCorner(car), request, parts);
  const { tested, killedBy, inTheWay, best, feasible, search } = found;
  const clouds = cloudsOf(regionOf(search, feasible), search.lower);
  return {
    tested,
    killedBy,
    inTheWay,
    best,
    fitting: feasible.count,
    present: presentOf(car, search),
    clouds,
    request,
  };
};

function presentOf(car: Car, search: MountsFound["search"]): Judgement["present"] {
  const { shock } = car;
  const own = ownShock(car);
  if (!shock || !own || shock.upper.on !== "chassis" || shock.lower.on === "chassis") return null;
  const { on, point } = shock.lower;
  const { fails, strokeUsed } = judgeMounts(search, own, shock.upper.point, { point, on, zone: -1 });
  return { fails, strokeUsed };
}
