import { type Assumed, degreeRange, inches, inchRange } from "../assumed.ts";
import type { Fields } from "../fields.ts";
import { JOINT_ANGLE_LIMIT } from "../limits.ts";

export const DRIVESHAFT_ASSUMED = {
  outputAxis: {
    dimension: "word",
    from: () => "outboard",
    words: "straight out",
    because: "common practice: the gearbox sits square in the car",
  },
  yokePhase: {
    dimension: "angle",
    from: () => 0,
    words: "0",
    because: "common practice: both yokes of a shaft lie in one plane",
  },
  leastEngagement: {
    dimension: "length",
    from: () => inches(1.5),
    words: "1 1/2 in",
    because: "common practice: 1 to 1 1/2 spline diameters stay engaged at full droop",
  },
  diameter: { dimension: "length", from: () => inches(1.5), words: "1 1/2 in", because: "common practice" },
} as const satisfies Record<string, Assumed>;

const JOINT_KINDS = ["u-joint", "constant-velocity"] as const;

const jointFields = (f: Fields, which: string) => ({
  kind: f.oneOf(JOINT_KINDS, `Kind of the ${which} joint.`),
  angleLimit: f
    .angle(`Most that the ${which} joint may bend.`, {
      sign: "positive",
      limit: JOINT_ANGLE_LIMIT,
      typical: degreeRange(20, 35),
    })
    .exactOptional(),
});

export const driveshaftSection = (f: Fields) =>
  f.section("Half shaft from gearbox to wheel.", {
    output: f.section("Gearbox or diff output.", {
      point: f.point("Centre of the inner joint."),
      axis: f.direction("Which way the output points.", { assumed: DRIVESHAFT_ASSUMED.outputAxis }).exactOptional(),
    }),
    inner: f.section("Joint at the gearbox.", jointFields(f, "inner")),
    outer: f.section("Joint at the stub axle.", {
      centre: f.point("Centre of the outer joint."),
      ...jointFields(f, "outer"),
    }),
    slip: f
      .section("Slip yoke or sliding spline.", {
        engagement: f.length("Spline still engaged at ride height.", { sign: "positive", typical: inchRange(2, 5) }),
        leastEngagement: f
          .length("Least engagement wanted anywhere in the travel.", {
            sign: "not-negative",
            typical: inchRange(1, 2),
            assumed: DRIVESHAFT_ASSUMED.leastEngagement,
          })
          .exactOptional(),
        pushInLeft: f
          .length("How far it can still be pushed in from ride height before it bottoms.", {
            sign: "not-negative",
            typical: inchRange(0.75, 2),
          })
          .exactOptional(),
      })
      .exactOptional(),
    yokePhase: f
      .angle(
        "How far the outer yoke is turned against the inner one, right-handed about the line from inner to outer joint.",
        {
          assumed: DRIVESHAFT_ASSUMED.yokePhase,
        },
      )
      .exactOptional(),
    diameter: f
      .length("Outside diameter of the shaft.", {
        sign: "positive",
        typical: inchRange(1, 2.5),
        assumed: DRIVESHAFT_ASSUMED.diameter,
      })
      .exactOptional(),
  });
