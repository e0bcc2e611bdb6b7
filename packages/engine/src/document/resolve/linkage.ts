import type { AArm, Link, Linkage } from "../../car/car.ts";
import { addScaled, LEFT, type Vec3 } from "../../geometry/vec3.ts";
import { TUBE_ASSUMED } from "../linkages/form.ts";
import { HUB_INBOARD, TRAILING_ARM_ASSUMED } from "../linkages/trailing-arm.ts";
import type { Path } from "../path.ts";
import type { LinkageDocument } from "../schema.ts";
import type { Resolver } from "./resolver.ts";

type HArmDocument = Extract<LinkageDocument, { kind: "h-arm" }>;
type AArmDocument = Extract<LinkageDocument, { kind: "double-a-arm" }>["lowerArm"];
type LinkDocument = HArmDocument["upperLink"];

export function resolveLinkage(document: LinkageDocument, hubFace: Vec3, r: Resolver): Linkage {
  switch (document.kind) {
    case "h-arm": {
      const { lowerArm } = document;
      return {
        kind: "h-arm",
        lowerArm: {
          innerFront: r.point(lowerArm.innerFront),
          innerRear: r.point(lowerArm.innerRear),
          outerFront: r.point(lowerArm.outerFront),
          outerRear: r.point(lowerArm.outerRear),
          diameter: r.either(lowerArm.diameter, ["linkage", "lowerArm", "diameter"], TUBE_ASSUMED.arm, undefined),
        },
        upperLink: resolveLink(document.upperLink, ["linkage", "upperLink"], r),
      };
    }
    case "double-a-arm":
      return {
        kind: "double-a-arm",
        lowerArm: resolveAArm(document.lowerArm, ["linkage", "lowerArm"], r),
        upperArm: resolveAArm(document.upperArm, ["linkage", "upperArm"], r),
        toeLink: resolveLink(document.toeLink, ["linkage", "toeLink"], r),
      };
    case "trailing-arm": {
      const { trailingArm } = document;
      return {
        kind: "trailing-arm",
        trailingArm: {
          inboardPivot: r.point(trailingArm.inboardPivot),
          outboardPivot: r.point(trailingArm.outboardPivot),
          hub: trailingArm.hub ? r.point(trailingArm.hub) : assumedHub(hubFace, r),
          diameter: r.either(trailingArm.diameter, ["linkage", "trailingArm", "diameter"], TUBE_ASSUMED.arm, undefined),
        },
      };
    }
    case "five-link":
      return {
        kind: "five-link",
        links: document.links.map((link, index) => ({
          name: link.name,
          ...resolveLink(link, ["linkage", "links", index], r),
        })),
      };
  }
}

function assumedHub(hubFace: Vec3, r: Resolver): Vec3 {
  const { words, because } = TRAILING_ARM_ASSUMED.hub;
  r.note(["linkage", "trailingArm", "hub"], "word", words, because);
  return addScaled(hubFace, LEFT, -HUB_INBOARD);
}

function resolveAArm(arm: AArmDocument, at: Path, r: Resolver): AArm {
  return {
    innerFront: r.point(arm.innerFront),
    innerRear: r.point(arm.innerRear),
    outer: r.point(arm.outer),
    diameter: r.either(arm.diameter, [...at, "diameter"], TUBE_ASSUMED.arm, undefined),
  };
}

function resolveLink(link: LinkDocument, at: Path, r: Resolver): Link {
  return {
    inner: r.point(link.inner),
    outer: r.point(link.outer),
    diameter: r.either(link.diameter, [...at, "diameter"], TUBE_ASSUMED.link, undefined),
  };
}
