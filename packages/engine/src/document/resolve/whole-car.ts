import type { Chassis, ChosenStop, ChosenStops, KeepOut, Targets } from "../../car/car.ts";
import { rotate, rotationAbout } from "../../geometry/pose.ts";
import { FORWARD, LEFT, scale } from "../../geometry/vec3.ts";
import type { Assumed } from "../assumed.ts";
import type { CarDocument, KeepOutDocument, Typed } from "../schema.ts";
import { CHASSIS_ASSUMED, STOPS_ASSUMED } from "../sections/chassis.ts";
import { KEEP_OUT_ASSUMED } from "../sections/keep-outs.ts";
import type { Resolver } from "./resolver.ts";

export function resolveKeepOut(document: KeepOutDocument, index: number, r: Resolver): KeepOut {
  const clearance = r.either(
    document.clearance,
    ["keepOuts", index, "clearance"],
    KEEP_OUT_ASSUMED.clearance,
    undefined,
  );
  const common = { name: document.name, clearance };
  switch (document.shape) {
    case "box": {
      const { turn, size } = document;
      const rotation = rotationAbout(turn ? r.direction(turn.axis) : FORWARD, turn ? r.value(turn.angle, "angle") : 0);
      const half = scale({ x: r.length(size.x), y: r.length(size.y), z: r.length(size.z) }, 0.5);
      const axisX = turn ? rotate(rotation, FORWARD) : FORWARD;
      const axisY = turn ? rotate(rotation, LEFT) : LEFT;
      return { ...common, shape: "box", centre: r.point(document.centre), half, axisX, axisY };
    }
    case "tube":
      return {
        ...common,
        shape: "tube",
        from: r.point(document.from),
        to: r.point(document.to),
        diameter: r.length(document.diameter),
        ...(document.part === "frame" && { isFrame: true }),
      };
    case "half-space":
      return { ...common, shape: "half-space", point: r.point(document.point), normal: r.direction(document.normal) };
  }
}

export function resolveChassis(document: CarDocument, r: Resolver): Chassis {
  const { weights = {}, targets = {} } = document;
  const { wheelbase, centreOfGravityHeight, rearBrakeShare } = CHASSIS_ASSUMED;
  return {
    wheelbase: r.either(targets.wheelbase, ["targets", "wheelbase"], wheelbase, undefined),
    centreOfGravityHeight: r.either(
      weights.centreOfGravityHeight,
      ["weights", "centreOfGravityHeight"],
      centreOfGravityHeight,
      undefined,
    ),
    rearBrakeShare: r.either(weights.rearBrakeShare, ["weights", "rearBrakeShare"], rearBrakeShare, undefined),
    ...(weights.corner === undefined ? {} : { cornerMass: r.value(weights.corner, "mass") }),
    ...(weights.unsprung === undefined ? {} : { unsprungMass: r.value(weights.unsprung, "mass") }),
  };
}

export function resolveTargets({ targets = {} }: CarDocument, r: Resolver): Targets {
  const { bump, droop, clearanceAtFullBump, trackWidth, wheelbase, use } = targets;
  return {
    ...(bump === undefined ? {} : { bump: r.length(bump) }),
    ...(droop === undefined ? {} : { droop: r.length(droop) }),
    ...(clearanceAtFullBump === undefined ? {} : { clearanceAtFullBump: r.length(clearanceAtFullBump) }),
    ...(trackWidth === undefined ? {} : { trackWidth: r.length(trackWidth) }),
    ...(wheelbase === undefined ? {} : { wheelbase: r.length(wheelbase) }),
    ...(use === undefined ? {} : { use }),
  };
}

/** What was chosen; else the part made for it; else the travel aimed at; else a travel assumed. */
export function resolveStops(document: CarDocument, r: Resolver): ChosenStops {
  const { stops = {}, targets = {} } = document;
  return {
    bump: resolveStop("bump", stops.bump, document.bumpStop && "bump-stop", targets.bump, STOPS_ASSUMED.bump, r),
    droop: resolveStop("droop", stops.droop, document.strap && "strap", targets.droop, STOPS_ASSUMED.droop, r),
  };
}

const PARTS = ["bump-stop", "strap", "shock"] as const;
type Part = (typeof PARTS)[number];

function resolveStop(
  end: "bump" | "droop",
  chosen: Typed | undefined,
  part: Part | undefined,
  target: Typed | undefined,
  assumed: Assumed,
  r: Resolver,
): ChosenStop {
  if (chosen !== undefined) {
    const named = PARTS.find((each) => each === chosen);
    return named ? { by: named } : { by: "travel", travel: r.length(chosen) };
  }
  if (part) {
    r.note(["stops", end], "word", part, "the document has one");
    return { by: part };
  }
  if (target !== undefined) {
    const travel = r.length(target);
    r.note(["stops", end], "length", travel, "the travel aimed at");
    return { by: "travel", travel };
  }
  return { by: "travel", travel: r.either(undefined, ["stops", end], assumed, undefined) };
}
