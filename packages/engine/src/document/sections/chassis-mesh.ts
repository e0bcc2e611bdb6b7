import { z } from "zod";
import { type Assumed, inches, inchRange } from "../assumed.ts";
import { type Fields, fieldFacts } from "../fields.ts";

export const CHASSIS_MESH_ASSUMED = {
  clearance: {
    dimension: "length",
    from: () => inches(0.5),
    words: "1/2 in",
    because: "common practice: parts move, bend and grow",
  },
} as const satisfies Record<string, Assumed>;

/** Fewer points than this leave open how the mesh is turned. */
export const LEAST_MESH_POINTS = 3;

/** What a mesh's file name may end in. */
export const MESH_ENDINGS = [".stl", ".obj", ".glb"] as const;

export const chassisMeshSection = (f: Fields) =>
  f.section("A scan or model of the chassis, placed on the car by points that are known on both.", {
    file: f.text("Name of the mesh's file, which is kept beside the car: STL, OBJ or GLB."),
    clearance: f
      .length("Gap wanted between the mesh and wheel, arms, links, shaft and shock.", {
        sign: "not-negative",
        typical: inchRange(0.25, 2),
        assumed: CHASSIS_MESH_ASSUMED.clearance,
      })
      .exactOptional(),
    points: f.list(
      "Three spots or more, not in one line, each as it lies in the file and as it was taped on the car.",
      f.section("A spot that is known on both.", {
        name: f.text("What it is, in the builder's words.").exactOptional(),
        mesh: f.section("Where it lies in the mesh, in the file's own axes and unit.", {
          x: fileNumber("The file's x."),
          y: fileNumber("The file's y."),
          z: fileNumber("The file's z."),
        }),
        car: f.point("Where it lies on the car."),
      }),
    ),
  });

const fileNumber = (meaning: string) => z.number({ error: () => "a number" }).register(fieldFacts, { meaning });
