import type { Study } from "../study/study.ts";

/** What has to be made and held true for a linkage: to weigh one kind against another. */
export interface LinkageParts {
  readonly kind: string;
  readonly title: string;
  readonly arms: number;
  readonly links: number;
  readonly rodEnds: number;
  readonly uJoints: number;
  /** Chassis brackets to place. */
  readonly chassisPivots: number;
  /** What wants a jig, in words: common practice. */
  readonly jigged: readonly string[];
}

export function linkageParts({ car, corner }: Study): LinkageParts {
  const arms = corner.arms.filter(({ body }) => corner.pivots.some(({ shank }) => shank.body === body));
  const shaft = car.driveshaft;
  return {
    kind: car.linkage.kind,
    title: corner.kind.title,
    arms: arms.length,
    links: corner.members.filter(({ body }) => body === "link").length,
    rodEnds: corner.pivots.length,
    uJoints: shaft ? [shaft.inner, shaft.outer].filter(({ kind }) => kind === "u-joint").length : 0,
    chassisPivots: corner.pivots.filter(({ boltSide }) => boltSide === "chassis").length,
    jigged: JIGGED[car.linkage.kind],
  };
}

const JIGGED: Record<Study["car"]["linkage"]["kind"], readonly string[]> = {
  "h-arm": [
    "lower arm: two hinge lines in one piece, true to each other",
    "spindle: hinge line, link tab and hub face in one piece",
    "left and right arms as mirror images",
  ],
  "double-a-arm": [
    "lower arm: hinge line and ball in one piece",
    "upper arm: hinge line and ball in one piece",
    "spindle: two balls, toe-link tab and hub face in one piece",
    "left and right arms as mirror images",
  ],
  "trailing-arm": ["arm: hinge line and hub face in one piece, since it alone sets camber and toe"],
  "five-link": ["spindle: five tabs and hub face in one piece", "ten chassis brackets, both sides, to the same mark"],
};
