import { type Judged, trialOf } from "./candidate.ts";
import { type MountLoad, mountLoadOf } from "./mount-load.ts";
import type { Search } from "./search.ts";
import { slackOf } from "./slack.ts";
import { type Reading, readingOf, type TapeTo, tapeTo } from "./tape-to.ts";

/** A place for the shock, with what the tape has to read and how far it may be missed. */
export interface Proposal extends Judged {
  /** How far both mounts may be off at once, each in any direction, before a requirement can break, m: on the safe side. */
  readonly slack: number;
  /** Motion ratio at full bump less that at ride height: above zero it rises. */
  readonly progression: number;
  /** Null where the car gives no weights. */
  readonly mountLoad: MountLoad | null;
  readonly tape: { readonly upper: Reading; readonly lower: Reading };
  /** From pivots on the same body: the chassis for the upper mount, the arm or spindle for the lower. */
  readonly tapeTo: { readonly upper: readonly TapeTo[]; readonly lower: readonly TapeTo[] };
}

export const proposalOf = (search: Search, judged: Judged): Proposal => ({
  ...judged,
  slack: slackOf(trialOf(search, judged.shock, judged.lower), judged.upper),
  progression: judged.motionRatioAtBump - judged.motionRatio,
  mountLoad: mountLoadOf(search.corner.car, judged),
  tape: { upper: readingOf(judged.upper), lower: readingOf(judged.lower.point) },
  tapeTo: {
    upper: tapeTo(search.corner, judged.upper, "chassis"),
    lower: tapeTo(search.corner, judged.lower.point, judged.lower.on),
  },
});
