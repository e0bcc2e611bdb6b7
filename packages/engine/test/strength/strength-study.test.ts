import { describe, expect, test } from "vitest";
import { studyStrength } from "../../src/strength/strength-study.ts";
import { study } from "../../src/study/study.ts";
import { carOfDocument, exampleCar, exampleDocument } from "../example-documents.ts";

const INCH = 0.0254;
const strengthOf = (car: Parameters<typeof study>[0]) => studyStrength(study(car))!;

describe("the strength of the demo car", () => {
  const found = strengthOf(exampleCar("saltbush"));

  test("weakest first, each with its load case, its place and what it may bear", () => {
    const factors = found.checks.map(({ factor }) => factor ?? Number.POSITIVE_INFINITY);
    expect(factors).toEqual([...factors].sort((a, b) => a - b));
    for (const check of found.checks) {
      expect(check.allowable).toBeGreaterThan(0);
      if (check.factor === null) continue;
      expect(check.loadCase).not.toBeNull();
      expect(check.factor).toBeCloseTo(check.allowable / check.demand, 12);
    }
  });

  // Common practice, no source: an upper link of 1-1/4 × .095 in drawn tube stands.
  test("the upper link stands", () => {
    for (const { part, factor } of found.checks) if (part === "upperLink") expect(factor!).toBeGreaterThan(1.5);
  });

  // By hand: the front tube as a beam on two hinges, 20.75 in long, the shock's 3522 lb of 3 g at half bump at 12.7 in from
  // its inner end, of which the leaning shock bends it by most; the rear tube takes some, and the mount's lever adds.
  test("the arm's tube under the shock bears at least most of what a beam on two hinges bears", () => {
    const tube = found.checks.find(({ label }) => label === "lower arm, front tube")!;
    const [a, b] = [12.7 * INCH, 8.05 * INCH];
    const outer = 1.5 * INCH;
    const inner = outer - 2 * 0.12 * INCH;
    const modulus = ((Math.PI / 32) * (outer ** 4 - inner ** 4)) / outer;
    expect(tube.demand).toBeGreaterThan((0.8 * 3522 * 4.448 * a * b) / (a + b) / modulus);
  });

  test("a larger or thicker tube holds more and weighs more", () => {
    const present = found.alternatives.find(({ isPresent }) => isPresent)!;
    for (const { size, factor, mass, isPresent } of found.alternatives) {
      if (isPresent) continue;
      const isMore = size.diameter > present.size.diameter || size.wall > present.size.wall;
      expect(mass > present.mass).toBe(isMore);
      expect(factor! > present.factor!).toBe(isMore);
    }
  });

  test("says what it could not judge", () => {
    expect(found.notEntered).toContain("bolts");
  });
});

describe("what the document says", () => {
  test("a thicker wall, a bolt and tabs are judged as entered", () => {
    const car = carOfDocument({
      ...exampleDocument("saltbush"),
      strength: {
        tubes: { lowerArm: { wall: 0.188, material: "4130 N" } },
        bolts: { all: { size: "5/8-18", grade: "8", shear: "double" } },
        tabs: { all: { thickness: "1/4", width: 2, edgeDistance: 1 } },
      },
    });
    const found = strengthOf(car);
    const plain = strengthOf(exampleCar("saltbush"));
    const arm = (of: typeof found) => of.checks.find(({ label }) => label === "lower arm, front tube")!;
    expect(arm(found).factor!).toBeGreaterThan(2 * arm(plain).factor!);
    const bolts = found.checks.filter(({ check }) => check === "bolt-shear");
    expect(bolts.length).toBeGreaterThan(5);
    expect(found.notEntered).not.toContain("bolts");
  });

  test("half the load is twice the factor", () => {
    const document = exampleDocument("saltbush");
    const light = carOfDocument({ ...document, weights: { ...document.weights, corner: 360, unsprung: 67.5 } });
    const [a, b] = [strengthOf(exampleCar("saltbush")), strengthOf(light)];
    const link = (of: typeof a) => of.checks.find(({ check }) => check === "link-pushed")!;
    expect(link(b!).factor! / link(a!).factor!).toBeCloseTo(2, 1);
  });

  test("without the wheel's weight there is no load to judge by", () => {
    const { weights: _, ...document } = exampleDocument("saltbush");
    expect(studyStrength(study(carOfDocument(document)))).toBeNull();
  });
});
