import type { Linkage, LinkageKindName } from "../car/car.ts";
import { doubleAArm } from "./double-a-arm.ts";
import { fiveLink } from "./five-link.ts";
import { hArm } from "./h-arm.ts";
import type { LinkageKind } from "./kind.ts";
import { trailingArm } from "./trailing-arm.ts";

/** Every kind of linkage, one line each. */
const KINDS: { readonly [K in LinkageKindName]: LinkageKind<Extract<Linkage, { kind: K }>> } = {
  "h-arm": hArm,
  "double-a-arm": doubleAArm,
  "trailing-arm": trailingArm,
  "five-link": fiveLink,
};

export const LINKAGE_KINDS = Object.keys(KINDS) as readonly LinkageKindName[];

/** The kind of a linkage, typed so that the linkage may be handed to any of its functions. */
export const kindOf = <L extends Linkage>(linkage: L): LinkageKind<L> =>
  KINDS[linkage.kind] as unknown as LinkageKind<L>;
