import { z } from "zod";
import { BOLT_GRADES } from "../../strength/bolt.ts";
import { PSI } from "../../units/convert.ts";
import { type Assumed, inches, inchRange, type Typical } from "../assumed.ts";
import { type Fields, fieldFacts } from "../fields.ts";
import { strengthFramesSection } from "./strength-frames.ts";

export const STRENGTH_ASSUMED = {
  armWall: {
    dimension: "length",
    from: () => inches(0.12),
    words: ".120 in",
    because: "common practice: arms are .095 to .120 in",
  },
  linkWall: {
    dimension: "length",
    from: () => inches(0.095),
    words: ".095 in",
    because: "common practice: links are .095 to .120 in",
  },
  material: {
    dimension: "word",
    from: () => "DOM 1020",
    words: "DOM 1020",
    because: "the weaker of the common ones",
  },
  crossDiameter: {
    dimension: "length",
    from: (diameter: number) => diameter,
    words: "that of the arm's own tubes",
    because: "common practice",
  },
  crossWall: {
    dimension: "length",
    from: (wall: number) => wall,
    words: "that of the arm's own tubes",
    because: "common practice",
  },
  eccentricity: {
    dimension: "length",
    from: () => inches(1 / 16),
    words: "1/16 in",
    because: "common practice: tape error and weld pull",
  },
  exposed: {
    dimension: "length",
    from: (thread: number) => thread / 2,
    words: "half of the thread's diameter",
    because: "from memory: jam nut close to the head",
  },
  tabCount: { dimension: "word", from: () => "2", words: "two", because: "common practice: bolts in double shear" },
  tabMaterial: {
    dimension: "word",
    from: () => "mild plate",
    words: "mild plate",
    because: "common practice",
  },
  tabHeight: {
    dimension: "length",
    from: (width: number) => width / 2,
    words: "half of the tab's width",
    because: "common practice: a tab about as high as wide",
  },
  filler: {
    dimension: "stress",
    from: () => 70_000 * PSI,
    words: "70 ksi",
    because: "common practice: ER70S filler",
  },
  bore: { dimension: "length", from: () => 0, words: "none", because: "taken as solid" },
} as const satisfies Record<string, Assumed<number>>;

const psiRange = (from: number, to: number): Typical => ({ from: from * PSI, to: to * PSI });

const materialSection = (f: Fields) =>
  f.section("One material of your own.", {
    name: f.text("What you call it; a built-in name is taken over by yours."),
    yield: f.quantity("stress", "Least yield strength, from its certificate.", {
      sign: "positive",
      typical: psiRange(30_000, 100_000),
    }),
    ultimate: f.quantity("stress", "Least breaking strength.", {
      sign: "positive",
      typical: psiRange(50_000, 125_000),
    }),
    weldedYield: f
      .quantity("stress", "Yield strength beside a weld that is not heat-treated, where you know it.", {
        sign: "positive",
      })
      .exactOptional(),
    weldedUltimate: f
      .quantity("stress", "Breaking strength beside a weld, where you know it.", { sign: "positive" })
      .exactOptional(),
    source: f.text("Where the figures come from.").exactOptional(),
  });

const record = <Item extends z.ZodType>(meaning: string, item: Item) =>
  z.record(z.string(), item, { error: () => "an object in braces" }).register(fieldFacts, { meaning });

const MATERIAL = "Name of a material: DOM 1020, DOM 1026, DOM 1015, 4130 N, mild plate, or one of your own.";
const material = (f: Fields, assumed?: Pick<Assumed, "words" | "because">) =>
  f.text(MATERIAL).register(fieldFacts, {
    meaning: MATERIAL,
    ...(assumed ? { assumed: { words: assumed.words, because: assumed.because } } : {}),
  });

const tubeSection = (f: Fields) =>
  f.section("The tube of one arm or link; its diameter is given with the linkage.", {
    wall: f
      .length("Wall thickness.", {
        sign: "positive",
        typical: inchRange(0.083, 0.25),
        assumed: { words: ".120 in of an arm, .095 in of a link", because: "common practice: .095 to .120 in" },
      })
      .exactOptional(),
    material: material(f, STRENGTH_ASSUMED.material).exactOptional(),
    crossDiameter: f
      .length("Outside diameter of an arm's cross tubes.", {
        sign: "positive",
        assumed: STRENGTH_ASSUMED.crossDiameter,
      })
      .exactOptional(),
    crossWall: f
      .length("Wall of an arm's cross tubes.", { sign: "positive", assumed: STRENGTH_ASSUMED.crossWall })
      .exactOptional(),
    eccentricity: f
      .length("How far a link's pull runs off the middle of its tube.", {
        sign: "not-negative",
        assumed: STRENGTH_ASSUMED.eccentricity,
      })
      .exactOptional(),
    gusset: gussetSection(f).exactOptional(),
    under: underSection(f).exactOptional(),
  });

const gussetSection = (f: Fields) =>
  f.section("A plate welded on edge under an arm's tube, to carry what lands there.", {
    at: f.text("The mount that it stands under: `bumpStop.strikes`, `shock.lower`, `strap.lower`."),
    thickness: f.length("Thickness of the plate.", { sign: "positive", typical: inchRange(0.125, 0.25) }),
    depth: f.length("How far it stands out from the tube.", { sign: "positive", typical: inchRange(0.75, 2) }),
    reach: f.length("How far it runs along the tube either way.", { sign: "positive", typical: inchRange(2, 6) }),
  });

const underSection = (f: Fields) =>
  f.section(
    "A second tube under each of an arm's tubes that shock or bump stop press on, from end to end, with a post under them.",
    {
      diameter: f.length("Outside diameter of the second tube and its posts.", {
        sign: "positive",
        typical: inchRange(0.75, 1.5),
      }),
      wall: f.length("Wall of the second tube and its posts.", { sign: "positive", typical: inchRange(0.083, 0.188) }),
      drop: f.length("From the middle of the arm's tube down to the middle of the second one, at the post.", {
        sign: "positive",
        typical: inchRange(2, 5),
      }),
    },
  );

const ratingSection = (f: Fields) =>
  f.section("What is known of one rod end's strength.", {
    radial: f.quantity("force", "Static radial load as its maker quotes it.", { sign: "positive" }).exactOptional(),
    axial: f
      .quantity("force", "Static load along the bolt as its maker quotes it.", {
        sign: "positive",
        assumed: { words: "a tenth of the radial one", because: "common practice: 10 to 20 %" },
      })
      .exactOptional(),
    exposed: f
      .length("Shank between the head and what holds it, the jam nut.", {
        sign: "not-negative",
        assumed: STRENGTH_ASSUMED.exposed,
      })
      .exactOptional(),
  });

const boltSection = (f: Fields) =>
  f.section("One bolt.", {
    size: f.thread("Its thread as sold: `5/8-18` or `M16x1.5`."),
    grade: f.oneOf(BOLT_GRADES, "Grade (inch) or class (metric) as marked on its head."),
    shear: f.oneOf(["single", "double"], "Whether one tab or two hold it."),
  });

const tabSection = (f: Fields) =>
  f.section("The tabs at one bolt.", {
    count: f.oneOf(["1", "2"], "How many tabs carry the bolt.", { assumed: STRENGTH_ASSUMED.tabCount }).exactOptional(),
    thickness: f.length("Thickness of one tab.", { sign: "positive", typical: inchRange(0.1875, 0.375) }),
    width: f.length("Width of a tab at the hole, across the pull.", { sign: "positive", typical: inchRange(1.25, 3) }),
    edgeDistance: f.length("From the hole's middle to the edge it is pulled toward.", {
      sign: "positive",
      typical: inchRange(0.5, 1.5),
    }),
    height: f
      .length("From the hole's middle to the weld at the tab's foot.", {
        sign: "positive",
        assumed: STRENGTH_ASSUMED.tabHeight,
      })
      .exactOptional(),
    material: material(f, STRENGTH_ASSUMED.tabMaterial).exactOptional(),
  });

const weldSection = (f: Fields) =>
  f.section("The fillet welds at the foot of one place's tabs.", {
    leg: f.length("Leg of the fillet.", { sign: "positive", typical: inchRange(0.125, 0.3125) }),
    length: f.length("All runs together, crater ends left off.", { sign: "positive", typical: inchRange(2, 12) }),
    filler: f
      .quantity("stress", "Breaking strength of the filler.", { sign: "positive", assumed: STRENGTH_ASSUMED.filler })
      .exactOptional(),
  });

const shaftSection = (f: Fields) =>
  f.section("The half shaft.", {
    diameter: f.length("Least diameter that carries the torque: at a spline, its root.", { sign: "positive" }),
    bore: f.length("Hole through it.", { sign: "not-negative", assumed: STRENGTH_ASSUMED.bore }).exactOptional(),
    material: material(f),
    jointTorque: f
      .quantity("torque", "Torque that the weaker joint is rated for, from its maker.", { sign: "positive" })
      .exactOptional(),
  });

const stubSection = (f: Fields) =>
  f.section("The stub axle or hub snout that carries the wheel.", {
    diameter: f.length("Diameter at the outer bearing.", { sign: "positive", typical: inchRange(1, 2.5) }),
    bore: f.length("Hole through it.", { sign: "not-negative", assumed: STRENGTH_ASSUMED.bore }).exactOptional(),
    material: material(f),
    toBearing: f.length("From the hub face in to the middle of the outer bearing.", {
      sign: "not-negative",
      typical: inchRange(0.5, 4),
    }),
  });

/** Everything that the strength of parts is judged by. */
export const strengthSection = (f: Fields) =>
  f.section("What the parts are made of, for the question whether they hold.", {
    materials: f
      .list("Your own materials, beside DOM 1020, DOM 1026, DOM 1015, 4130 N and mild plate.", materialSection(f))
      .exactOptional(),
    tubes: record(
      "The tubes by arm or link: `lowerArm`, `upperArm`, `trailingArm`, `upperLink`, `toeLink`, `links.NAME`.",
      tubeSection(f),
    ).exactOptional(),
    frames: strengthFramesSection(f).exactOptional(),
    rodEnds: record(
      "Ratings of rod ends by pivot, as in `rodEnds`; `all` for those not named.",
      ratingSection(f),
    ).exactOptional(),
    bolts: record(
      "Bolts by place: a pivot, `shock.upper`, `shock.lower`, `strap.upper`, `strap.lower`; `all` for those not named.",
      boltSection(f),
    ).exactOptional(),
    tabs: record("Tabs by place, as bolts.", tabSection(f)).exactOptional(),
    welds: record("Welds of the tabs by place, as bolts.", weldSection(f)).exactOptional(),
    shaft: shaftSection(f).exactOptional(),
    stub: stubSection(f).exactOptional(),
  });
