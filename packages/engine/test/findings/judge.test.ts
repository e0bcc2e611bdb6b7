import { describe, expect, it } from "vitest";
import { type CarDocument, type FieldValue, readCarValue, setField } from "../../src/document/index.ts";
import type { FindingCode, Gravity } from "../../src/findings/finding.ts";
import { sayFinding } from "../../src/findings/say-finding.ts";
import { study } from "../../src/study/study.ts";
import { type ExampleName, exampleDocument } from "../example-documents.ts";

interface Case {
  readonly what: string;
  readonly changes: readonly (readonly [string, FieldValue])[];
  readonly code: FindingCode;
  readonly gravity: Gravity;
  readonly says: RegExp;
}

/** Each begins from the demo car, which has none of these. */
const CASES: readonly Case[] = [
  {
    what: "a strap too short to stand at ride",
    changes: [["strap.length", 2]],
    code: "stop-past-at-ride",
    gravity: "must",
    says: /^The strap is 1\d [\d/]+ in too short for the car to stand at ride height\.$/,
  },
  {
    what: "a bump stop solid at ride",
    changes: [
      ["bumpStop.reach", 12],
      ["bumpStop.solid", 11],
    ],
    code: "stop-past-at-ride",
    gravity: "must",
    says: /^The bump stop would be squeezed .* past solid at ride height\.$/,
  },
  {
    what: "a chosen stop that another part beats",
    changes: [["stops.droop", "shock"]],
    code: "another-part-stops-first",
    gravity: "mind",
    says: /^The strap ends droop at 8 1\/4 in, before the shock that was chosen\.$/,
  },
  {
    what: "a travel aimed at beyond the strap",
    changes: [["stops.droop", 12]],
    code: "another-part-stops-first",
    gravity: "mind",
    says: /^The strap ends droop at 8 1\/4 in, before the aimed-at stop that was chosen\.$/,
  },
  {
    what: "a hub taped from the wrong place",
    changes: [["wheel.hubFace.z", "16 3/8"]],
    code: "wheel-off-the-ground",
    gravity: "mind",
    says: /^At ride height the loaded tyre ends 5\/8 in above the ground: wheel centre at 16 3\/8 in, loaded radius 15 3\/4 in\.$/,
  },
  {
    what: "an outer joint off the stub axle",
    changes: [["driveshaft.outer.centre.z", 17]],
    code: "joint-off-the-stub-axle",
    gravity: "mind",
    says: /^The outer U-joint's centre lies 1 [\d/]+ in off the wheel's spin axis/,
  },
  {
    what: "an outer joint that bends too little",
    changes: [["driveshaft.outer.angleLimit", 20]],
    code: "limit-before-stop",
    gravity: "must",
    says: /^The outer U-joint reaches the end of its angle 6 [\d/]+ in into droop, 1 [\d/]+ in \(± \d[\d/]* in\) before the strap ends it\.$/,
  },
  {
    what: "an inner joint whose limit is not known",
    changes: [["driveshaft.inner.angleLimit", undefined]],
    code: "joint-limit-unknown",
    gravity: "mind",
    says: /^No angle limit is given for the inner U-joint; it bends up to 2\d\.\d deg, 8 1\/4 in down from ride\.$/,
  },
  {
    what: "a shock without springs",
    changes: [["shock.springs", undefined]],
    code: "springs-missing",
    gravity: "note",
    says: /^No springs are entered: what holds the car up is not known\.$/,
  },
  {
    what: "a droop aimed at that the shock is too short for",
    changes: [["targets.droop", 11]],
    code: "shock-short-for-travel",
    gravity: "mind",
    says: /^The shock is too short for the droop aimed at: it is fully open .* down, 11 in is aimed at/,
  },
  {
    what: "a car with no strap",
    changes: [
      ["strap", undefined],
      ["stops.droop", 8],
    ],
    code: "no-part-stops-the-wheel",
    gravity: "mind",
    says: /^No strap is entered, so droop ends at the 8 in aimed at only on paper\.$/,
  },
  {
    what: "a tank moved onto the shock",
    changes: [["keepOuts[0].clearance", 2]],
    code: "clearance-short",
    gravity: "mind",
    says: /in apart .* 2 in wanted\.$/,
  },
  {
    what: "a track that is not the one wanted",
    changes: [["targets.trackWidth", 76]],
    code: "track-differs",
    gravity: "mind",
    says: /^Track width comes to 74 in, 76 in wanted\.$/,
  },
  {
    what: "springs without weights",
    changes: [["weights.corner", undefined]],
    code: "springs-need-weights",
    gravity: "note",
    says: /^Springs are entered, but not what they carry/,
  },
  {
    what: "springs longer than the shock",
    changes: [
      ["shock.springs.main.freeLength", 14],
      ["shock.springs.tender.freeLength", 14],
    ],
    code: "springs-do-not-fit",
    gravity: "must",
    says: /^The springs stand 27 3\/16 in long on a shock that is 25 1\/4 in eye to eye when open\.$/,
  },
  {
    what: "a main spring solid before the bump stop",
    changes: [["shock.springs.main.solidLength", "6 1/2"]],
    code: "coil-bind-before-stop",
    gravity: "must",
    says: /^The main spring is solid, coil on coil, before the bump travel ends 6 13\/16 in up from ride\.$/,
  },
  {
    what: "a tender solid for want of a stop",
    changes: [
      ["shock.springs.crossoverAt", undefined],
      ["shock.springs.tender.solidLength", 6],
    ],
    code: "coil-bind-before-stop",
    gravity: "must",
    says: /^The tender spring is solid, coil on coil, before the bump travel ends/,
  },
  {
    what: "springs that hang loose at the strap",
    changes: [["shock.springs.preload", "-1 1/2"]],
    code: "spring-loose-at-droop",
    gravity: "mind",
    says: /^With the wheel hanging the springs are loose by 13\/16 in and can jump off their seats\.$/,
  },
  {
    what: "springs that do not carry the car",
    changes: [["weights.corner", 3000]],
    code: "car-sits-on-its-stop",
    gravity: "must",
    says: /^The springs do not carry the car: it sits on the bump stop\.$/,
  },
  {
    what: "springs that lift the wheel to full droop",
    changes: [["weights.corner", 150]],
    code: "car-sits-on-its-stop",
    gravity: "must",
    says: /^The springs lift the car until the wheel hangs at full droop: no droop travel is left\.$/,
  },
  {
    what: "preload a few turns short",
    changes: [["shock.springs.preload", "1/4"]],
    code: "ride-height-off",
    gravity: "mind",
    says: /^On these springs the car sits [\d/]+ in lower than drawn\.$/,
  },
  {
    what: "springs too stiff for trails of another kind",
    changes: [["targets.use", "trail"]],
    code: "ride-frequency",
    gravity: "mind",
    says: /^The ride frequency is 0\.9\d Hz; 1\.20 Hz to 1\.60 Hz is common practice for trail use\.$/,
  },
  {
    what: "tender and main the wrong way round",
    changes: [
      ["shock.springs.main.rate", 250],
      ["shock.springs.tender.rate", 300],
    ],
    code: "main-softer-than-tender",
    gravity: "mind",
    says: /^The main spring \(250 lb\/in\) is softer than the tender \(300 lb\/in\)/,
  },
  {
    what: "a slider at its stop at ride",
    changes: [["shock.springs.crossoverAt", 21]],
    code: "crossover-at-ride",
    gravity: "mind",
    says: /^The slider is at its stop already where the car sits/,
  },
];

const findingsOf = (changes: Case["changes"], example: ExampleName = "saltbush") => {
  let document: CarDocument = exampleDocument(example);
  for (const [path, value] of changes) document = setField(document, path, value);
  const reading = readCarValue(document);
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  return study(reading.car).findings;
};

describe("findings", () => {
  it.each(CASES)("$what", ({ changes, code, gravity, says }) => {
    const before = findingsOf([]).map((finding) => sayFinding(finding, "inch-pound").sentence);
    const found = findingsOf(changes).filter((finding) => finding.code === code);
    const said = found.map((finding) => sayFinding(finding, "inch-pound").sentence);
    expect(said.filter((sentence) => says.test(sentence))).toHaveLength(1);
    expect(found.every((finding) => finding.gravity === gravity)).toBe(true);
    expect(before.filter((sentence) => says.test(sentence))).toHaveLength(0);
  });

  it("tell a shock too short for the travel as one thing, not as two that contradict each other", () => {
    const reading = readCarValue({ ...exampleDocument("saltbush"), targets: { bump: 6, droop: 11 } });
    if (!reading.ok) throw new Error("the car does not read");
    const ofDroop = study(reading.car).findings.filter(({ values }) => values["way"] === "droop");
    const codes = ofDroop.map(({ code }) => code);
    expect(codes).toContain("shock-short-for-travel");
    expect(codes).not.toContain("travel-short");
    expect(ofDroop.filter(({ code, place }) => code === "limit-close" && place === "shock.longest")).toEqual([]);
  });

  it("come worst first, and each says where it comes from and what can be done", () => {
    const findings = findingsOf([
      ["driveshaft.outer.angleLimit", 20],
      ["strap.length", 30],
    ]);
    const weight = { must: 0, mind: 1, note: 2 };
    const weights = findings.map(({ gravity }) => weight[gravity]);
    expect(weights).toEqual([...weights].sort((a, b) => a - b));
    for (const finding of findings) {
      expect(finding.source).not.toBe("");
      expect(sayFinding(finding, "metric").remedy).toMatch(/\.$/);
    }
  });

  it("speak millimetres to who builds in them", () => {
    for (const finding of findingsOf([["targets.trackWidth", 2200]], "juniper")) {
      const { sentence, remedy } = sayFinding(finding, "metric");
      expect(`${sentence} ${remedy}`).not.toMatch(/\d in\b/);
    }
  });

  it("see what stands on the right only", () => {
    const box = { name: "battery", shape: "box", centre: { x: 0, y: -36, z: 16 }, size: { x: 10, y: 10, z: 10 } };
    const reading = readCarValue(setField(exampleDocument("saltbush"), "keepOuts[6]", box as FieldValue));
    if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
    const { right } = reading.car;
    const sentences = study(right!).findings.map((finding) => sayFinding(finding, "inch-pound").sentence);
    expect(sentences).toContain("Tyre to battery: they touch already with the car at ride height.");
    const left = study(reading.car).findings.map((finding) => sayFinding(finding, "inch-pound").sentence);
    expect(left.join()).not.toContain("battery: they touch");
  });

  it("see a trailing arm's tube in the tyre", () => {
    const sentences = findingsOf(
      [["linkage.trailingArm.outboardPivot", { x: 1, y: 34, z: "15 1/4" }]],
      "rabbitbrush",
    ).map((finding) => sayFinding(finding, "inch-pound").sentence);
    expect(sentences.join("\n")).toMatch(/tyre sidewall: they touch already with the car at ride height/);
  });
});
