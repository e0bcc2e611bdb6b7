import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { keepWishes, keptWishes } from "../../src/mounts/kept-wishes.ts";
import { FIRST_WISHES, type Wishes } from "../../src/mounts/mounts-store.ts";
import { exampleCar, INCH } from "./car.ts";

const { corner } = exampleCar("saltbush");
const CAR = "saltbush h-arm";

const WISHES: Wishes = {
  ...FIRST_WISHES,
  chosen: ["twelve"],
  zones: {
    upper: { kind: "box", from: { x: 0, y: 0.3, z: 0.6 }, to: { x: 0.2, y: 0.5, z: 0.9 } },
    lower: [
      { kind: "tube", member: corner.members[0]!.id, standoff: 0.03, from: 0.2, to: 0.9 },
      { kind: "box", on: "spindle", from: { x: 0, y: 0.6, z: 0.2 }, to: { x: 0.1, y: 0.7, z: 0.3 } },
    ],
  },
  travel: { droop: -0.2, bump: 0.1 },
  step: INCH,
};

let items: Map<string, string>;
beforeEach(() => {
  items = new Map();
  vi.stubGlobal("localStorage", {
    getItem: (key: string) => items.get(key) ?? null,
    setItem: (key: string, text: string) => items.set(key, text),
  });
});
afterEach(() => vi.unstubAllGlobals());

test("what was asked of the finder is there again for the same car, and for no other", () => {
  keepWishes(CAR, WISHES);
  keepWishes("catclaw five-link", { ...WISHES, chosen: [] });
  expect(keptWishes(CAR, corner)).toEqual(WISHES);
  expect(keptWishes("juniper trailing-arm", corner)).toBeNull();
});

test("a zone on a tube that the car no longer has is left out, and nothing broken is believed", () => {
  const { zones } = WISHES;
  keepWishes(CAR, { ...WISHES, zones: { ...zones!, lower: [{ ...zones!.lower[0]!, member: "gone" } as never] } });
  expect(keptWishes(CAR, corner)?.zones?.lower).toEqual([]);
  keepWishes(CAR, {
    ...WISHES,
    zones: { ...zones!, upper: { kind: "tube", keepOut: "gone", standoff: { x: 0, y: 0, z: 0 } } },
  });
  expect(keptWishes(CAR, corner)).toBeNull();
  keepWishes(CAR, { ...WISHES, travel: { droop: "deep" } as never, requirements: { lean: Number.NaN } as never });
  expect(keptWishes(CAR, corner)).toMatchObject({ travel: null, requirements: FIRST_WISHES.requirements });
  for (const text of ["", "{", "7", '[["saltbush h-arm", 3]]']) {
    items.set("armwright.mount-wishes", text);
    expect(keptWishes(CAR, corner)).toBeNull();
  }
});
