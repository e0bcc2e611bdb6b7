import type { Vec3 } from "../geometry/vec3.ts";
import { type Judged, trialOf } from "./candidate.ts";
import type { Search } from "./search.ts";
import { slackOf } from "./slack.ts";

/** A place for the shock, with what the tape has to read and how far it may be missed. */
export interface Proposal extends Judged {
  /** How far both mounts may be off at once, each in any direction, before a requirement can break, m: on the safe side. */
  readonly slack: number;
  /** From the datum in the design position, m: forward, out from the centreline, up from the ground. */
  readonly tape: { readonly upper: Tape; readonly lower: Tape };
}

export interface Tape {
  readonly forward: number;
  readonly out: number;
  readonly up: number;
}

const tapeOf = ({ x, y, z }: Vec3): Tape => ({ forward: x, out: y, up: z });

export const proposalOf = (search: Search, judged: Judged): Proposal => ({
  ...judged,
  slack: slackOf(trialOf(search, judged.shock, judged.lower), judged.upper),
  tape: { upper: tapeOf(judged.upper), lower: tapeOf(judged.lower.point) },
});
