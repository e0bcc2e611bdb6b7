import type { Car } from "../car/car.ts";
import type { Corner } from "../cycle/corner.ts";
import type { Operation } from "../document/operation.ts";
import type { TravelReport } from "../limits/travel-report.ts";
import { studySprings } from "../springs/spring-study.ts";
import { type StopsWish, USUAL_STOPS } from "./assumptions.ts";
import { type BumpStopProposal, proposeBumpStop } from "./propose-bump-stop.ts";
import { type NoProposal, proposeStrap, type StrapProposal } from "./propose-strap.ts";

/** A strap and a bump stop for the travel aimed at, and the changes of the document that put them in. */
export interface StopsProposal {
  readonly strap: StrapProposal | NoProposal;
  readonly bumpStop: BumpStopProposal | NoProposal;
  readonly operations: readonly Operation[];
}

/** What the car has is kept and set anew; what it has not is placed. No look at what stands in the way of either. */
export function proposeStops(
  made: { readonly car: Car; readonly corner: Corner; readonly travel: TravelReport },
  asked: Partial<StopsWish> = {},
): StopsProposal {
  const wish = { ...USUAL_STOPS, ...asked };
  const strap = proposeStrap(made, studySprings(made), wish);
  const bumpStop = proposeBumpStop(made, wish);
  const of = (part: StrapProposal | BumpStopProposal | NoProposal) => ("refused" in part ? [] : part.operations);
  return { strap, bumpStop, operations: [...of(strap), ...of(bumpStop)] };
}
