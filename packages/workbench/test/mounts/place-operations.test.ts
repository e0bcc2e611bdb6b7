import {
  type Car,
  defaultRequest,
  findMounts,
  hangShock,
  judgeMounts,
  type KeepOut,
  type KeepOutBox,
  lowerKeepOut,
  type MountRequest,
  makeCorner,
  nearKeepOut,
  notchKeepOut,
  type Opening,
  ownShock,
  reportTravel,
  type ShockOption,
  type Vec3,
  whatWouldOpen,
} from "@armwright/engine";
import { applyOperations, type CarDocument, readCarValue } from "@armwright/engine/document";
import { describe, expect, test } from "vitest";
import { inverseOf } from "../../src/store/operations.ts";
import { exampleCar, INCH } from "./car.ts";

const { document, car, corner } = exampleCar("saltbush");
const read = (changed: CarDocument): Car => {
  const reading = readCarValue(changed);
  if (!reading.ok)
    throw new Error(`the changed car does not read: ${reading.faults.map(({ path }) => path).join(", ")}`);
  return reading.car;
};
const own = ownShock(car);
if (!own) throw new Error("the demo has a shock");
const request = defaultRequest(corner, [own], INCH);
const [place] = findMounts(corner, request).best;
if (!place) throw new Error("the demo has places");

describe("taking a place", () => {
  test("hangs the shock there to a sixteenth, and undoing gives the document back", () => {
    const { operations, lost } = hangShock(document, car, place);
    const taken = applyOperations(document, operations);
    const reading = readCarValue(taken);
    if (!reading.ok) throw new Error("what was taken does not read");
    const shock = reading.car.shock;
    for (const axis of ["x", "y", "z"] as const) {
      expect(Math.abs((shock?.upper.point[axis] ?? 9) - place.upper[axis])).toBeLessThanOrEqual(INCH / 32 + 1e-9);
      expect(Math.abs((shock?.lower.point[axis] ?? 9) - place.lower.point[axis])).toBeLessThanOrEqual(INCH / 32 + 1e-9);
    }
    expect(shock?.lower.on).toBe(place.lower.on);
    expect(lost).toBe("");
    expect(taken.shock).toMatchObject({ springs: document.shock?.springs, shortest: "15 1/4" });
    expect(applyOperations(taken, inverseOf(document, operations))).toEqual(document);
  });

  test("another shock loses the springs and gas that were chosen for the one before", () => {
    const other: ShockOption = { ...own, name: "twelve", shortest: 17.375 * INCH, longest: 29.375 * INCH };
    const { operations, lost } = hangShock(document, car, { ...place, shock: other });
    const reading = readCarValue(applyOperations(document, operations));
    if (!reading.ok) throw new Error("what was taken does not read");
    expect(lost).toBe("springs and gas");
    expect(reading.car.shock?.springs).toBeUndefined();
    expect(reading.car.shock?.longest).toBeCloseTo(29.375 * INCH, 9);
  });

  test("a car without a shock gets one", () => {
    const { shock: _, ...bare } = document;
    const reading = readCarValue(bare as typeof document);
    if (!reading.ok) throw new Error("the bare car does not read");
    const taken = readCarValue(
      applyOperations(bare as typeof document, hangShock(bare as typeof document, reading.car, place).operations),
    );
    expect(taken.ok && taken.car.shock?.diameter).toBeCloseTo(own.bodyDiameter, 9);
  });
});

describe("where nothing fits", () => {
  // A tank behind the arms, before a zone so far in and forward that every shock would have to pass through it.
  const index = (document.keepOuts ?? []).findIndex(({ name }) => name === "fuel tank");
  const blocked = applyOperations(document, [
    { path: `keepOuts[${index}].size`, value: { x: 14, y: 34, z: 6 } },
    { path: `keepOuts[${index}].centre`, value: { x: 16.5, y: 0, z: 22 } },
  ]);
  const blockedCar = read(blocked);
  const at = (x: number, y: number, z: number): Vec3 => ({ x: x * INCH, y: y * INCH, z: z * INCH });
  const asked: MountRequest = {
    ...request,
    upper: { kind: "box", from: at(10, 12, 25.5), to: at(14, 16, 37.5) },
  };
  const openings = whatWouldOpen(makeCorner(blockedCar), asked);
  const openingBy = (kind: Opening["change"]["kind"]): Opening => {
    const found = openings.find(({ change }) => change.kind === kind);
    if (!found) throw new Error(`${kind} opens nothing`);
    return found;
  };
  const fitting = (changed: CarDocument): number => findMounts(makeCorner(read(changed)), asked).feasible.count;

  test("lowering the tank on the drawing by what the engine says opens a place, and by less does not", () => {
    expect(fitting(blocked)).toBe(0);
    const { by, notBy } = openingBy("lower-keep-out");
    expect(fitting(applyOperations(blocked, lowerKeepOut(blocked, "fuel tank", by) ?? []))).toBeGreaterThan(0);
    // To the mark of the tape below what opens nothing.
    const less = Math.floor(notBy / (INCH / 16)) * (INCH / 16);
    expect(fitting(applyOperations(blocked, lowerKeepOut(blocked, "fuel tank", less) ?? []))).toBe(0);
  });

  test("the notch cut out on the drawing opens the very place that the engine proposes", () => {
    const { by, notch, proposal } = openingBy("notch-keep-out");
    const tank = blockedCar.keepOuts.find(({ name }) => name === "fuel tank");
    if (tank?.shape !== "box" || !notch) throw new Error("no notch in a box");
    expect(nearKeepOut(blocked, blockedCar, "fuel tank", by)).toBeNull();
    const operations = notchKeepOut(blocked, blockedCar, notch);
    const cut = applyOperations(blocked, operations ?? []);
    const pieces = read(cut).keepOuts.filter(({ name }) => name.startsWith("fuel tank"));
    expect(pieces.length).toBeGreaterThan(1);
    const search = findMounts(makeCorner(read(cut)), { ...asked, shortList: 0 }).search;
    expect(judgeMounts(search, proposal.shock, proposal.upper, proposal.lower).fails).toBeNull();
    // No more is cut away than the notch and two marks of the tape round it, once on each side of the car.
    const volume = (boxes: readonly KeepOut[]): number =>
      boxes.reduce((sum, box) => sum + (box.shape === "box" ? 8 * box.half.x * box.half.y * box.half.z : 0), 0);
    const room = (["x", "y", "z"] as const).reduce(
      (sum, axis) => sum * (notch.to[axis] - notch.from[axis] + INCH / 4),
      1,
    );
    expect(volume([tank]) - volume(pieces)).toBeLessThanOrEqual(2 * room);
    expect(applyOperations(cut, inverseOf(blocked, operations ?? []))).toEqual(blocked);
  });

  test("in the notch the shock keeps its clearance wherever between two marks a tape sets the mounts", () => {
    const { notch, proposal } = openingBy("notch-keep-out");
    if (!notch) throw new Error("no notch in a box");
    const cut = read(applyOperations(blocked, notchKeepOut(blocked, blockedCar, notch) ?? []));
    const { shock } = cut;
    if (!shock) throw new Error("the demo has a shock");
    const half = INCH / 32;
    const moved = ({ x, y, z }: Vec3, [a, b, c]: readonly [number, number, number]): Vec3 => ({
      x: x + a * half,
      y: y + b * half,
      z: z + c * half,
    });
    const ways = [-1, 1].flatMap((a) => [-1, 1].flatMap((b) => [-1, 1].map((c) => [a, b, c] as const)));
    for (const way of ways) {
      const hung: Car = {
        ...cut,
        stops: {
          bump: { by: "travel", travel: asked.travel.bump },
          droop: { by: "travel", travel: -asked.travel.droop },
        },
        shock: {
          ...shock,
          upper: { point: moved(proposal.upper, way), on: "chassis" },
          lower: { point: moved(proposal.lower.point, way), on: proposal.lower.on },
        },
      };
      const gaps = reportTravel(makeCorner(hung)).clearances.filter(
        ({ label, wantedFrom }) => label.startsWith("shock to fuel tank") && wantedFrom === "document",
      );
      expect(gaps.length).toBeGreaterThan(1);
      for (const { label, leastGap, wanted } of gaps) expect(leastGap, `${label}, ${way}`).toBeGreaterThan(wanted);
    }
  });

  test("a keep-out is lowered at least by what is asked, to the next mark of the tape", () => {
    const by = 1.03 * INCH;
    const lowered = readCarValue(applyOperations(document, lowerKeepOut(document, "fuel tank", by) ?? []));
    if (!lowered.ok) throw new Error("the lowered car does not read");
    const tank = (cars: typeof car): KeepOutBox => {
      const found = cars.keepOuts.find(({ name }) => name === "fuel tank");
      if (found?.shape !== "box") throw new Error("no tank");
      return found;
    };
    const down = tank(car).centre.z - tank(lowered.car).centre.z;
    expect(down).toBeGreaterThanOrEqual(by);
    expect(down).toBeLessThan(by + INCH / 16);
    expect(lowerKeepOut(document, "nothing of the kind", by)).toBeNull();
  });

  test("a tube is lowered at both ends, and nothing comes nearer than its clearance allows", () => {
    const operations = lowerKeepOut(document, "cage upright", INCH) ?? [];
    expect(operations.map(({ path }) => path.replace(/\d+/, "n"))).toEqual(["keepOuts[n].from.z", "keepOuts[n].to.z"]);
    expect(nearKeepOut(document, car, "fuel tank", 0.5 * INCH)).toEqual([
      { path: `keepOuts[${index}].clearance`, value: "1/2" },
    ]);
    expect(nearKeepOut(document, car, "fuel tank", 1.5 * INCH)).toBeNull();
  });
});
