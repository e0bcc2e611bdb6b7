import {
  cycleCertainty,
  INCH,
  type Mount,
  placeOn,
  positionOf,
  type Study,
  solveAt,
  study,
  tyreGaps,
  type Vec3,
} from "@armwright/engine";
import { readCarDocument } from "@armwright/engine/document";
import { describe, expect, test } from "vitest";
import { exampleText } from "../../../engine/test/example-documents.ts";
import { bookLeaves } from "../../src/book.ts";
import { linesOf, readNumber } from "./leaf-text.ts";

/*
 * What stands on the cards is read back as a builder reads it and held against the solved corner: lengths between its placed
 * points, worked out here, and the cycle's own quantities where a tape reads one of them.
 */

interface Row {
  readonly label: string;
  readonly must: number;
  readonly plusMinus: number;
}

interface Card {
  readonly name: string;
  readonly travel: number;
  readonly rows: readonly Row[];
}

function cardsOf(name: "saltbush" | "juniper"): { made: Study; cards: readonly Card[]; unit: number } {
  const reading = readCarDocument(exampleText(name));
  if (!reading.ok) throw new Error("the example does not read");
  const made = study(reading.car);
  const leaves = bookLeaves(made, reading.document, { paper: "letter", date: new Date(0) });
  const unit = made.car.units === "metric" ? 0.001 : INCH;
  const { bump, droop } = made.travel;
  const travels: Readonly<Record<string, number>> = {
    "Full bump": bump.stop.travel,
    "Half bump": bump.stop.travel / 2,
    "Ride height": 0,
    "Half droop": droop.stop.travel / 2,
    "Full droop": droop.stop.travel,
  };
  const cards: { name: string; travel: number; rows: Row[] }[] = [];
  for (const line of leaves.filter(({ id }) => id.startsWith("cycle-cards")).flatMap(linesOf)) {
    const head = /^(Full bump|Half bump|Ride height|Half droop|Full droop), travel/.exec(line[0] ?? "");
    if (head) cards.push({ name: head[1]!, travel: travels[head[1]!]!, rows: [] });
    const [label, must, plusMinus] = line;
    if (line.length === 3 && cards.length > 0 && !Number.isNaN(readNumber(must!)))
      cards.at(-1)!.rows.push({ label: label!, must: readNumber(must!), plusMinus: readNumber(plusMinus!) });
  }
  return { made, cards, unit };
}

describe.each(["saltbush", "juniper"] as const)("cycle cards of %s", (name) => {
  const { made, cards, unit } = cardsOf(name);
  const { corner, car } = made;
  const isMetric = car.units === "metric";
  // Half of the last place that a reading has.
  const coarse = (isMetric ? 0.25 : 1 / 32) + 1e-6;
  const fine = (isMetric ? 0.25 : 1 / 64) + 1e-6;

  /** What the tape reads at a travel, m or rad, from the placed points. */
  const expected = (travel: number): Readonly<Record<string, number>> => {
    const { state, row } = solveAt(corner, travel)!;
    const position = positionOf(corner, state);
    const at = ({ point, on }: Mount): Vec3 => placeOn(position, point, on);
    const apart = (a: Vec3, b: Vec3): number => Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);
    const read = (id: string): number => made.quantities.find((each) => each.id === id)!.read(row, corner)!;
    const { shock, driveshaft, strap, bumpStop } = car;
    return {
      "hub centre over the floor": corner.wheelCentre.z + travel,
      "tyre's middle out": corner.attitude.designContact.y + read("halfTrackChange"),
      camber: (read("camber") * 180) / Math.PI,
      "toe across the rim": Math.sin(read("toe")) * car.wheel.rimDiameter,
      ...(shock && { "shock, eye to eye": apart(at(shock.upper), at(shock.lower)) }),
      ...(driveshaft && {
        "half shaft, joint to joint": apart(
          driveshaft.inner.centre,
          placeOn(position, driveshaft.outer.centre, "spindle"),
        ),
      }),
      ...(strap && { "strap, hole to hole": apart(at(strap.upper), at(strap.lower)) }),
      ...(bumpStop && { "bump stop, base to landing place": apart(at(bumpStop.base), at(bumpStop.strikes)) }),
      ...(driveshaft?.slip && {
        "spline still in":
          driveshaft.slip.engagement -
          (apart(driveshaft.inner.centre, placeOn(position, driveshaft.outer.centre, "spindle")) -
            apart(driveshaft.inner.centre, driveshaft.outer.centre)),
      }),
    };
  };

  test("five cards, from full bump to full droop", () => {
    expect(cards.map((card) => card.name)).toEqual([
      "Full bump",
      "Half bump",
      "Ride height",
      "Half droop",
      "Full droop",
    ]);
  });

  test.each(cards)("$name: every reading is the solved corner's, to half of its last place", ({ travel, rows }) => {
    const wanted = Object.entries(expected(travel));
    expect(rows.length).toBeGreaterThanOrEqual(wanted.length);
    for (const [label, value] of wanted) {
      const row = rows.find((each) => each.label.startsWith(label));
      expect(row, label).toBeDefined();
      const isAngle = label === "camber";
      const off = Math.abs(row!.must - (isAngle ? value : value / unit));
      expect(off, `${label}: ${row!.must}`).toBeLessThanOrEqual(
        isAngle ? 0.05 + 1e-6 : label.startsWith("toe") ? fine : coarse,
      );
    }
  });

  test.each(cards)("$name: ± is two standard deviations of building and reading together", ({ travel, rows }) => {
    const { readings } = cycleCertainty(car, [travel]);
    const sd = (id: string): number => readings.find(({ quantity }) => quantity.id === id)!.sd!;
    // ± of a careful reading, two standard deviations: a sixteenth by tape, 0.2° by angle finder.
    const together = (built: number, read: number): number => Math.hypot(2 * built, read);
    const wanted: readonly (readonly [string, number])[] = [
      ["hub centre", together(sd("wheelZ"), INCH / 16) / unit],
      ["camber", together((sd("camber") * 180) / Math.PI, 0.2)],
      ["toe", together(Math.sin(sd("toe")) * car.wheel.rimDiameter, INCH / 32) / unit],
      ["shock", together(sd("shockLength"), INCH / 16) / unit],
    ];
    for (const [label, value] of wanted) {
      const row = rows.find((each) => each.label.startsWith(label))!;
      const last = label === "camber" ? 0.05 : label === "toe" ? fine : coarse;
      expect(Math.abs(row.plusMinus - value), label).toBeLessThanOrEqual(last + 1e-6);
    }
  });

  test.each(cards)("$name: what is nearest to the tyre", ({ travel, rows }) => {
    const [found] = tyreGaps(car, [travel]);
    const row = rows.find(({ label }) => label.startsWith("nearest to the tyre"));
    expect(Math.abs(row!.must - found!.gap / unit)).toBeLessThanOrEqual(coarse);
    expect(row!.plusMinus * unit).toBeGreaterThan(INCH / 8 - coarse * unit);
  });
});
