import type { Car } from "../car/car.ts";
import type { Corner } from "../cycle/corner.ts";
import type { TravelReport } from "../limits/travel-report.ts";
import { studySprings } from "../springs/spring-study.ts";
import { type StopsWish, USUAL_STOPS } from "./assumptions.ts";
import { type BumpStopStudy, studyBumpStop } from "./study-bump-stop.ts";
import { type StrapStudy, studyStrap } from "./study-strap.ts";

/** What ends the travel, and what it has to take. Null where the document has no such part. */
export interface StopsStudy {
  readonly wish: StopsWish;
  readonly strap: StrapStudy | null;
  readonly bumpStop: BumpStopStudy | null;
}

export function studyStops(
  made: { readonly car: Car; readonly corner: Corner; readonly travel: TravelReport },
  asked: Partial<StopsWish> = {},
): StopsStudy {
  const wish = { ...USUAL_STOPS, ...asked };
  const springs = studySprings(made);
  return {
    wish,
    strap: studyStrap(made.corner, made.travel.droop, springs, wish),
    bumpStop: studyBumpStop(made.corner, made.travel.bump, springs, wish),
  };
}
