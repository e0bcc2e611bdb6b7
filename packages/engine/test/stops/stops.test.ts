import { describe, expect, it } from "vitest";
import type { Car } from "../../src/car/car.ts";
import { makeCorner } from "../../src/cycle/corner.ts";
import { readCarValue, setField } from "../../src/document/index.ts";
import type { CarDocument } from "../../src/document/schema.ts";
import { USUAL_STOPS } from "../../src/stops/assumptions.ts";
import { curveAt } from "../../src/stops/force-points.ts";
import { lineMotionAt } from "../../src/stops/line-motion.ts";
import { proposeStops } from "../../src/stops/propose-stops.ts";
import { runDown } from "../../src/stops/run-down.ts";
import { studyStops } from "../../src/stops/study-stops.ts";
import { study } from "../../src/study/study.ts";
import { INCH, STANDARD_GRAVITY } from "../../src/units/convert.ts";
import { carOfDocument, type EditableDocument, EXAMPLES, exampleCar, exampleDocument } from "../example-documents.ts";

const bare = (name: (typeof EXAMPLES)[number]): EditableDocument => {
  const { strap: _strap, bumpStop: _stop, stops: _stops, ...rest } = exampleDocument(name);
  return rest as EditableDocument;
};

type Operations = ReturnType<typeof proposeStops>["operations"];

const documentWith = (document: EditableDocument, operations: Operations): EditableDocument =>
  operations.reduce<CarDocument>(
    (made, { path, value }) => setField(made, path, value),
    document as CarDocument,
  ) as EditableDocument;

function applied(document: EditableDocument, operations: Operations): Car {
  const reading = readCarValue(documentWith(document, operations));
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  return reading.car;
}

describe("a line between two mounts", () => {
  it("has the ratio of its own shortening, on every example", () => {
    for (const name of EXAMPLES) {
      const car = exampleCar(name);
      const corner = makeCorner(car);
      for (const part of [
        car.strap && [car.strap.upper, car.strap.lower],
        car.bumpStop && [car.bumpStop.base, car.bumpStop.strikes],
      ]) {
        if (!part) continue;
        for (const travel of [-0.1, 0, 0.09]) {
          const at = (z: number) => lineMotionAt(corner, part[0]!, part[1]!, z)!;
          const slope = (at(travel - 1e-5).length - at(travel + 1e-5).length) / 2e-5;
          expect(at(travel).ratio).toBeCloseTo(slope, 7);
        }
      }
    }
  });
});

describe("a mass that runs down", () => {
  it("drops on a linear spring as its energy balance says (closed form, no publication: 300 kg, 0.5 m, 40 N/mm: 354.547 mm)", () => {
    const weight = 300 * STANDARD_GRAVITY;
    const force = (z: number) => weight - 40_000 * z;
    const end = runDown({ from: 0, to: 1, energy: weight * 0.5, mass: 300, damping: 0, force });
    // The step in which it stops is crossed on a straight line of energy.
    expect(end.travel).toBeCloseTo(0.354547, 3);
    expect(end.left).toBe(0);
  });

  it("keeps energy without a damper and loses some with one", () => {
    const force = (z: number) => 100 - 300 * z;
    const run = { from: 0, to: 0.5, energy: 40, mass: 20, damping: 0, force };
    expect(runDown(run).left).toBeCloseTo(40 + 100 * 0.5 - 150 * 0.25, 9);
    expect(runDown({ ...run, damping: 10 }).left).toBeLessThan(runDown(run).left);
  });
});

describe("stops of the demo", () => {
  const made = study(exampleCar("saltbush"));

  it("tells the strap's margin and the stop's as the travel report does", () => {
    const { strap, bumpStop } = studyStops(made);
    const limit = made.travel.droop.first!;
    expect(strap?.margin).toBeCloseTo(made.travel.droop.stop.travel - limit.travel, 9);
    expect(bumpStop?.solid?.travel).toBeCloseTo(made.travel.bump.stop.travel, 6);
    expect(bumpStop?.solid?.length).toBeCloseTo(1.25 * INCH, 6);
  });

  it("lets a higher fall and absent dampers bring more energy to the stop, which takes its best height without going solid", () => {
    const low = studyStops(made).bumpStop!.drop!;
    expect(studyStops(made, { dropHeight: 0.6 }).bumpStop!.drop!.arrives).toBeGreaterThan(low.arrives);
    expect(studyStops(made, { dampingBump: 0 }).bumpStop!.drop!.arrives).toBeGreaterThan(low.arrives);
    expect(studyStops(made, { dropHeight: low.mostHeight * 0.98 }).bumpStop!.drop!.left).toBe(0);
    expect(studyStops(made, { dropHeight: low.mostHeight * 1.02 }).bumpStop!.drop!.left).toBeGreaterThan(0);
  });

  it("gives the snatch's energy to the strap where speed is stated: no more than it brings, and what springs and weight add", () => {
    const { strap, wish } = studyStops(made, { snatchSpeed: 2 });
    const { snatch, taut } = strap!;
    expect(snatch!.speed).toBeCloseTo(2, 9);
    const strain = snatch!.stretch / strap!.strap.length;
    const stored = curveAt(strap!.strap.stretch!, strain).energy * strap!.strap.length;
    expect(stored).toBeGreaterThan(0.5 * snatch!.energy);
    expect(snatch!.travel).toBeLessThan(taut!.travel);
    expect(wish.marginDroop).toBeGreaterThan(0);
  });

  it("says nothing of energies where weights are missing", () => {
    const { weights: _, ...rest } = exampleDocument("saltbush");
    const { strap, bumpStop } = studyStops(study(carOfDocument(rest)));
    expect([strap?.snatch, bumpStop?.drop]).toEqual([null, null]);
    expect(strap?.taut).not.toBeNull();
  });

  it("counts holes of a tail: to the margin asked for, never past it", () => {
    const document = exampleDocument("saltbush");
    const strap = { ...document.strap!, holeSpacing: 0.5 };
    const { holes, snatch } = studyStops(study(carOfDocument({ ...document, strap }))).strap!;
    expect(snatch!.margin!).toBeLessThan(0);
    expect(holes).toBeLessThan(0);
    const length = study(exampleCar("saltbush")).car.strap!.length / INCH + 0.5 * holes!;
    const after = studyStops(study(carOfDocument({ ...document, strap: { ...strap, length } }))).strap!;
    expect(after.snatch!.margin!).toBeGreaterThan(0);
  });
});

/** A snatch that hardly stretches a strap, m/s. */
const SLOW = 0.1;

describe("what is proposed where a car has neither", () => {
  for (const name of ["saltbush", "greasewood", "rabbitbrush", "juniper"] as const) {
    it(`gives ${name} stops that end the travel before any hard limit, square to the pad`, () => {
      const document = bare(name);
      const proposal = proposeStops(study(carOfDocument(document)));
      const after = study(applied(document, proposal.operations));
      for (const end of [after.travel.bump, after.travel.droop]) {
        expect(end.stop.works).toBe(true);
        expect(end.first === null || end.first.travelLeft > 0).toBe(true);
      }
      const { strap, bumpStop } = studyStops(after);
      expect(bumpStop!.touched!.offPath).toBeLessThan((2 * Math.PI) / 180);
      // Where weights and springs are known, the strap is stretched by a snatch; else only the wish's margin is kept.
      const left = strap!.snatch ? strap!.snatch.margin! : strap!.margin! - USUAL_STOPS.marginDroop + INCH / 16;
      expect(left).toBeGreaterThan(0);
      expect(after.travel.droop.first).not.toBeNull();
      // Not past the droop that is aimed at, and short of it by less than is read, unless something has to end it sooner.
      const short = after.travel.droop.stop.travel + carOfDocument(document).targets.droop!;
      if ("refused" in proposal.strap) throw new Error("no strap");
      expect(short).toBeGreaterThan(-1e-6);
      if (!strap!.snatch && proposal.strap.because === null) expect(short).toBeLessThan(INCH / 32);
      const codes = after.findings.map(({ code }) => code);
      expect(codes).not.toContain("stop-does-not-work");
      expect(codes).not.toContain("shock-is-the-stop");
    });
  }

  it.each(["saltbush", "greasewood", "rabbitbrush", "juniper"] as const)("asked anew changes nothing on %s", (name) => {
    const bareDocument = bare(name);
    const document = documentWith(bareDocument, proposeStops(study(carOfDocument(bareDocument))).operations);
    const { operations } = proposeStops(study(carOfDocument(document)));
    expect(operations.length).toBeGreaterThan(0);
    expect(documentWith(document, operations)).toEqual(document);
  });

  it("makes the strap the shorter, the harder it is snatched: just so long that it stretches to no hard limit", () => {
    const document = bare("saltbush");
    const made = study(carOfDocument(document));
    const lengthFor = (snatchSpeed: number): number => {
      const { strap, operations } = proposeStops(made, { snatchSpeed });
      if ("refused" in strap) throw new Error("no strap");
      const after = study(applied(document, operations));
      const snatched = studyStops(after, { snatchSpeed }).strap!.snatch!;
      expect(snatched.margin!).toBeGreaterThanOrEqual(0);
      // Longer by what the next longer ones have, and it would be struck: no length is given away.
      const longer = { ...after.car, strap: { ...after.car.strap!, length: strap.length + INCH / 4 } };
      const struck = studyStops(study(longer), { snatchSpeed }).strap!.snatch!.margin!;
      if (snatchSpeed > SLOW) expect(struck).toBeLessThan(0);
      return strap.length;
    };
    expect(lengthFor(5)).toBeLessThan(lengthFor(3));
    expect(lengthFor(3)).toBeLessThan(lengthFor(SLOW));
  });

  it("refuses a linkage without an arm", () => {
    const { strap, bumpStop, operations } = proposeStops(study(carOfDocument(bare("catclaw"))));
    expect([strap, bumpStop, operations]).toEqual([{ refused: "no-arm" }, { refused: "no-arm" }, []]);
  });

  it("common practice, no source: a strap of about 18 in with a remakeable tail, let out or taken in by holes", () => {
    const document = bare("saltbush");
    const { strap, operations } = proposeStops(study(carOfDocument(document)));
    if ("refused" in strap) throw new Error("no strap");
    expect(Math.abs(strap.length / INCH - 18)).toBeLessThan(1);
    const car = applied(document, [...operations, { path: "strap.holeSpacing", value: 0.75 }]);
    const again = proposeStops(study(car)).strap;
    if ("refused" in again) throw new Error("no strap");
    const steps = (again.length - car.strap!.length) / (0.75 * INCH);
    expect(steps).toBeCloseTo(again.holes!, 9);
  });

  it("common practice, no source: a stop on a sliding collar, changed for a gas one later, keeps its place and takes its own charge", () => {
    const document = exampleDocument("saltbush");
    const bumpStop = { ...document.bumpStop!, holeSpacing: 0.5 };
    const before = studyStops(study(carOfDocument({ ...document, bumpStop }))).bumpStop!;
    expect(Number.isInteger(before.holes)).toBe(true);
    const gas = { ...bumpStop, gas: { pressure: 150, rodDiameter: 1.25 } };
    const after = studyStops(study(carOfDocument({ ...document, bumpStop: gas }))).bumpStop!;
    expect(after.touched!.travel).toBe(before.touched!.travel);
    expect(after.law.kind).toBe("gas");
    // 150 psi on a rod 1 1/4 in thick: 184 lb at the touch, by arithmetic.
    expect(after.push.touched / 4.4482216).toBeCloseTo((150 * Math.PI * 1.25 ** 2) / 4, 1);
  });
});
