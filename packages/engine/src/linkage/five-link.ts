import type { FiveLinkLinkage } from "../car/car.ts";
import type { Vec3 } from "../geometry/vec3.ts";
import { type FiveLinkConstants, fiveLinkConstants, linkId } from "./five-link-constants.ts";
import { FEW_ITERATIONS, isTrusted, solveFiveLink } from "./five-link-newton.ts";
import { alongPath, followPath, type Path, solveDesign } from "./five-link-path.ts";
import type { AdjustedLinkage, Lengths, LinkageKind, Mechanism } from "./kind.ts";
import { type MotionState, AT as STATE_PLACES } from "./motion-state.ts";
import { givenLength, linkPivots, linkTube } from "./parts.ts";
import { turnbuckle } from "./screw.ts";

// A local copy: its numbers are then constants to the compiler, where an imported object is looked up at run time.
const AT = STATE_PLACES;

/**
 * Five links with a ball at each end. No closed form: Newton's method on the five lengths, with the wheel centre's height
 * given, for the wheel centre's x and y and the spindle's rotation. The range is found by following the motion along its
 * own length (pseudo-arclength continuation), which does not mind where the height turns back.
 */
export const fiveLink: LinkageKind<FiveLinkLinkage> = {
  kind: "five-link",
  title: "five links",
  arms: () => [],
  members: ({ links }) => links.map((link) => linkTube(linkId(link.name), link.name, link)),
  pivots: ({ links }) => links.flatMap((link) => linkPivots(linkId(link.name), link.name, link)),
  adjusters: ({ links }) => links.map((link) => turnbuckle(linkId(link.name), link.name)),
  adjust: (linkage, id, change): AdjustedLinkage<FiveLinkLinkage> => {
    const link = linkage.links.find(({ name }) => linkId(name) === id)!;
    return { linkage, moved: {}, lengths: { [id]: givenLength({}, id, link.inner, link.outer) + change } };
  },
  mechanism: fiveLinkMechanism,
};

function fiveLinkMechanism(linkage: FiveLinkLinkage, wheelCentre: Vec3, lengths: Lengths = {}): Mechanism {
  const five = fiveLinkConstants(linkage, wheelCentre, lengths);
  const design = solveDesign(five);
  if (!design) {
    const stuck = { travel: 0, toggles: [] };
    return { range: { droop: stuck, bump: stuck }, solve: () => -1 };
  }
  // The path is followed when it is first needed: small moves about the design position do without it.
  let path: Path | undefined;
  const followed = (): Path => {
    path ??= followPath(five, design);
    return path;
  };
  return {
    get range() {
      return followed().range;
    },
    solve: (travel, state) => {
      for (const from of [state, design]) {
        if (!isTrusted(from, travel)) continue;
        const iterations = solveFiveLink(five, travel, from, state, FEW_ITERATIONS);
        if (iterations > 0) return iterations;
      }
      const { range } = followed();
      if (!(travel >= range.droop.travel && travel <= range.bump.travel)) return -1;
      return solveFromPath(five, followed(), travel, state);
    },
  };
}

/** From the path's node next inside the travel; where that is too bold, along the path itself until the height is right. */
function solveFromPath(five: FiveLinkConstants, path: Path, travel: number, into: MotionState): number {
  const nodes = travel >= 0 ? path.bump : path.droop;
  let index = 0;
  while (index + 1 < nodes.length && Math.abs(nodes[index + 1]!.state[AT.travel]!) <= Math.abs(travel)) index += 1;
  const node = nodes[index]!;
  if (isTrusted(node.state, travel)) {
    const iterations = solveFiveLink(five, travel, node.state, into, FEW_ITERATIONS);
    if (iterations > 0) return iterations;
  }
  return solveFiveLink(five, travel, alongPath(five, node, travel), into);
}
