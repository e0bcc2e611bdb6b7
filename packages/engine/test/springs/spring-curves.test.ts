import { expect, it } from "vitest";
import { dampingOverTravel, springOverLength, wheelSpringOverTravel } from "../../src/springs/spring-curves.ts";
import { type SpringStudy, studySprings } from "../../src/springs/spring-study.ts";
import { shockPlaceAt } from "../../src/springs/wheel-spring.ts";
import { study } from "../../src/study/study.ts";
import { carOfDocument, exampleDocument } from "../example-documents.ts";

const DEMO = "saltbush";
const car = carOfDocument(exampleDocument(DEMO));
const made = study(car);
const springs = studySprings(made)!;
const shortest = car.shock!.shortest;

const near = (ours: number, theirs: number, relative: number) =>
  expect(Math.abs(ours / theirs - 1)).toBeLessThan(relative);

it("holds the work that the force has done, and the rate is the slope of the force", () => {
  const { gas: _, ...shockSpring } = springs.shockSpring;
  const points = springOverLength({ ...springs, shockSpring }, shortest);
  expect(points.length).toBeGreaterThan(49);
  let work = points[0]!.energy;
  for (let i = 1; i < points.length; i += 1) {
    const [a, b] = [points[i - 1]!, points[i]!];
    const way = a.shockLength - b.shockLength;
    work += ((a.force + b.force) / 2) * way;
    if (way > 1e-5) near((b.force - a.force) / way, (a.rate + b.rate) / 2, 1e-3);
  }
  near(points.at(-1)!.energy, work, 1e-9);
});

it("steps at crossover: two in series before it, the main spring alone after it", () => {
  const { crossover } = springs;
  const { main, tender } = springs.springs;
  const points = springOverLength(springs, shortest);
  const rateBeside = (side: number) =>
    points.reduce((best, point) =>
      Math.abs(point.shockLength - crossover!.shockLength - side) <
      Math.abs(best.shockLength - crossover!.shockLength - side)
        ? point
        : best,
    ).rate;
  const gasless = (rate: number) => rate - (springs.positions[1]!.state.gasRate ?? 0);
  near(rateBeside(1e-7) - rateBeside(-1e-7), 1 / (1 / main.rate + 1 / tender!.rate) - main.rate, 1e-3);
  expect(gasless(rateBeside(1e-7))).toBeLessThan(main.rate);
  const over = wheelSpringOverTravel(made.corner, springs);
  const steepest = over
    .slice(1)
    .map((point, i) => (point.wheelRate - over[i]!.wheelRate) / (point.travel - over[i]!.travel));
  const at = steepest.indexOf(Math.max(...steepest));
  expect(Math.abs(over[at]!.travel - crossover!.travel!)).toBeLessThan(1e-5);
});

it("damps critically by 2·√(K·m) at the wheel, and by that over MR² at the shock", () => {
  for (const { travel, atWheel, atShock } of dampingOverTravel(made.corner, springs)) {
    const rate = wheelSpringOverTravel(made.corner, springs).find((point) => point.travel === travel)!.wheelRate;
    near(atWheel, 2 * Math.sqrt(rate * springs.sprungMass), 1e-12);
    near(atShock * shockPlaceAt(made.corner, travel)!.motionRatio ** 2, atWheel, 1e-12);
  }
});

/** A car whose scale reads so much more, studied from its document. */
function sprungHeavierBy(share: number): SpringStudy {
  const { cornerMass, unsprungMass } = car.chassis;
  const chassis = { ...car.chassis, cornerMass: unsprungMass! + (cornerMass! - unsprungMass!) * share };
  return studySprings(study({ ...car, chassis }))!;
}

it("tells what 5 % of weight does, as a car of that weight sits; the turns bring it back", () => {
  const { heavier, lighter } = springs.weightError!;
  expect(heavier.lower).toBeGreaterThan(0);
  expect(lighter.lower).toBeLessThan(0);
  for (const [effect, share] of [
    [heavier, 1.05],
    [lighter, 0.95],
  ] as const) {
    const other = sprungHeavierBy(share);
    expect(effect.lower).toBeCloseTo(other.rest.travel - springs.rest.travel, 6);
    const { preload, collarPitch } = springs.springs;
    const wound = {
      ...springs.springs,
      preload: preload + effect.turns * collarPitch,
      crossoverAt: springs.crossover!.shockLength,
    };
    const back = studySprings(
      study({
        ...car,
        chassis: { ...car.chassis, cornerMass: car.chassis.unsprungMass! + other.sprungMass },
        shock: { ...car.shock!, springs: wound },
      }),
    )!;
    expect(back.rest.travel).toBeCloseTo(springs.rest.travel, 5);
  }
});
