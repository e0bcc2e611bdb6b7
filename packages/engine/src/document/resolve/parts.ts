import type { BumpStop, Driveshaft, JointKind, ShaftJoint, Shock, ShockEyes, Slip, Strap } from "../../car/car.ts";
import { LEFT, scale, type Vec3 } from "../../geometry/vec3.ts";
import type { BumpStopDocument, DriveshaftDocument, ShockDocument, StrapDocument, Typed } from "../schema.ts";
import { DRIVESHAFT_ASSUMED } from "../sections/driveshaft.ts";
import { BUMP_STOP_ASSUMED, SHOCK_ASSUMED } from "../sections/shock.ts";
import type { Resolver } from "./resolver.ts";
import { resolveGas, resolveSprings } from "./springs.ts";
import { resolveHoles, resolveStopLaw, resolveStretch } from "./stop-force.ts";

export function resolveDriveshaft(document: DriveshaftDocument, r: Resolver): Driveshaft {
  const phase = r.either(document.yokePhase, ["driveshaft", "yokePhase"], DRIVESHAFT_ASSUMED.yokePhase, undefined);
  return {
    inner: resolveJoint(document.output.point, document.inner, r),
    outer: resolveJoint(document.outer.centre, document.outer, r),
    outputAxis: resolveOutputAxis(document.output.axis, r),
    // In a mirror a right-handed turn is a left-handed one.
    yokePhase: r.side === "right" && phase !== 0 ? -phase : phase,
    ...(document.slip ? { slip: resolveSlip(document.slip, r) } : {}),
    diameter: r.either(document.diameter, ["driveshaft", "diameter"], DRIVESHAFT_ASSUMED.diameter, undefined),
  };
}

function resolveJoint(
  centre: Parameters<Resolver["point"]>[0],
  joint: { readonly kind: JointKind; readonly angleLimit?: Typed },
  r: Resolver,
): ShaftJoint {
  const limit = joint.angleLimit;
  return {
    centre: r.point(centre),
    kind: joint.kind,
    ...(limit === undefined ? {} : { angleLimit: r.value(limit, "angle") }),
  };
}

/** Along the output, always pointing outboard, whichever way it was given. */
function resolveOutputAxis(typed: DriveshaftDocument["output"]["axis"], r: Resolver): Vec3 {
  if (typed === undefined) {
    const { from, because } = DRIVESHAFT_ASSUMED.outputAxis;
    r.note(["driveshaft", "output", "axis"], "word", from(), because);
    return LEFT;
  }
  const axis = r.direction(typed);
  return axis.y < 0 ? scale(axis, -1) : axis;
}

function resolveSlip(document: NonNullable<DriveshaftDocument["slip"]>, r: Resolver): Slip {
  const { leastEngagement } = DRIVESHAFT_ASSUMED;
  return {
    engagement: r.length(document.engagement),
    leastEngagement: r.either(
      document.leastEngagement,
      ["driveshaft", "slip", "leastEngagement"],
      leastEngagement,
      undefined,
    ),
    ...(document.pushInLeft === undefined ? {} : { pushInLeft: r.length(document.pushInLeft) }),
  };
}

export function resolveShock(document: ShockDocument, r: Resolver): Shock {
  const longest = r.length(document.longest);
  const stroke = longest - r.length(document.shortest);
  return {
    upper: r.mount(document.upper, ["shock", "upper"]),
    lower: r.mount(document.lower, ["shock", "lower"]),
    shortest: r.length(document.shortest),
    longest,
    diameter: r.either(document.diameter, ["shock", "diameter"], SHOCK_ASSUMED.diameter, undefined),
    eyes: resolveEyes(document, r),
    ...(document.springs ? { springs: resolveSprings(document.springs, longest, r) } : {}),
    ...(document.gas ? { gas: resolveGas(document.gas, stroke, r) } : {}),
  };
}

const resolveEyes = (document: ShockDocument, r: Resolver): ShockEyes => ({
  ...(document.misalignmentLimit === undefined
    ? {}
    : { misalignmentLimit: r.value(document.misalignmentLimit, "angle") }),
  ...(document.eyeWidth === undefined ? {} : { eyeWidth: r.length(document.eyeWidth) }),
  ...(document.eyeDiameter === undefined ? {} : { eyeDiameter: r.length(document.eyeDiameter) }),
  ...(document.tabGap === undefined ? {} : { tabGap: r.length(document.tabGap) }),
});

export function resolveStrap(document: StrapDocument, r: Resolver): Strap {
  return {
    upper: r.mount(document.upper, ["strap", "upper"]),
    lower: r.mount(document.lower, ["strap", "lower"]),
    length: r.length(document.length),
    stretch: resolveStretch(document, r),
    ...resolveHoles(document.holeSpacing, r),
  };
}

export function resolveBumpStop(document: BumpStopDocument, r: Resolver): BumpStop {
  const reach = r.length(document.reach);
  const base = r.mount(document.base, ["bumpStop", "base"]);
  const strikes = r.mount(document.strikes, ["bumpStop", "strikes"]);
  const solid = r.either(document.solid, ["bumpStop", "solid"], BUMP_STOP_ASSUMED.solid, reach);
  return {
    base,
    strikes,
    reach,
    solid,
    law: resolveStopLaw(document, { reach, solid }, r),
    ...resolveHoles(document.holeSpacing, r),
  };
}
