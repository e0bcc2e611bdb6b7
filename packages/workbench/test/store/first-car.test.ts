import { readdirSync, readFileSync } from "node:fs";
import { applyOperations, readCarDocument, startingDocument } from "@armwright/engine/document";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { beginMove, bench, edit, move, setSide, showCar } from "../../src/store/bench.ts";
import { connection } from "../../src/store/connection.ts";
import { firstCar } from "../../src/store/first-car.ts";
import { followFirstCar, keepForNextTime } from "../../src/store/keep-for-next-time.ts";

const EXAMPLES = new URL("../../../../examples/", import.meta.url);
const car = startingDocument("h-arm", "inch-pound");

/** As a browser's: its keys are its own. */
function storage(): Storage {
  return Object.create({
    getItem(this: Record<string, string>, key: string) {
      return this[key] ?? null;
    },
    setItem(this: Record<string, string>, key: string, text: string) {
      this[key] = text;
    },
    removeItem(this: Record<string, string>, key: string) {
      delete this[key];
    },
  }) as Storage;
}

/** The same with every −0 as 0, which JSON does not tell apart. */
function unsigned(value: unknown): unknown {
  if (typeof value === "number") return value + 0;
  if (Array.isArray(value)) return value.map(unsigned);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, each]) => [name, unsigned(each)]));
}

const nobody = async (): Promise<Response> => new Response("not found", { status: 404 });
const answers = (asked: (address: string) => Promise<Response>) => {
  vi.stubGlobal("fetch", vi.fn(asked));
};

beforeEach(() => {
  vi.stubGlobal("localStorage", storage());
  answers(nobody);
  showCar(car);
  connection.setState({ name: "mine" });
});
afterEach(() => vi.unstubAllGlobals());

describe("a car that is drawn before it can be read", () => {
  test.each(readdirSync(EXAMPLES).filter((file) => file.endsWith(".car.json")))(
    "is whole again out of JSON: %s",
    (file) => {
      const text = readFileSync(new URL(file, EXAMPLES), "utf8");
      const reading = readCarDocument(text);
      if (!reading.ok) throw new Error(`${file} cannot be read`);
      const { survey: _, ...read } = reading.car;
      const again = JSON.parse(JSON.stringify(read)) as typeof read;
      expect(again).toEqual(unsigned(read));
    },
  );

  test("on a page without a bench is the one that was left, by its name only", async () => {
    keepForNextTime();
    expect((await firstCar("mine"))?.car.datum).toBe(car.datum);
    expect(await firstCar("another")).toBeUndefined();
    expect(await firstCar(null)).toBeUndefined();
  });

  test("is none while edits wait, of a bench that knows none, and of one too slow to answer", async () => {
    keepForNextTime();
    localStorage.setItem("armwright:waiting:folder:1", "{}");
    expect(await firstCar("mine")).toBeUndefined();
    localStorage.removeItem("armwright:waiting:folder:1");
    expect(await firstCar("mine")).toBeDefined();
    answers(async () => Response.json({ first: null }));
    expect(await firstCar("mine")).toBeUndefined();
    answers(async () => new Response("", { status: 401 }));
    expect(await firstCar("mine")).toBeUndefined();
    answers(() => Promise.reject(new DOMException("too slow", "TimeoutError")));
    expect(await firstCar("mine")).toBeUndefined();
    answers(() => Promise.reject(new TypeError("no network")));
    expect(await firstCar("mine")).toBeDefined();
  });

  test("is not an older state: an edit after which the page crashes, a fault, a movement, the right side leave none", async () => {
    followFirstCar();
    keepForNextTime();
    expect(await firstCar("mine")).toBeDefined();
    edit([{ path: "strap.length", value: 22 }], "strap");
    expect(await firstCar("mine")).toBeUndefined();
    keepForNextTime();
    expect((await firstCar("mine"))?.car.strap?.length).toBeCloseTo(22 * 0.0254, 9);
    edit([{ path: "strap.length", value: "long" }], "strap");
    keepForNextTime();
    expect(await firstCar("mine")).toBeUndefined();
    edit([{ path: "strap.length", value: 21 }], "strap");
    beginMove("strap");
    move([{ path: "strap.length", value: 20 }]);
    keepForNextTime();
    expect(await firstCar("mine")).toBeUndefined();
    showCar(applyOperations(car, [{ path: "right.strap", value: { ...car.strap, length: 17 } as never }]));
    keepForNextTime();
    setSide("right");
    expect(bench.getState().side).toBe("right");
    keepForNextTime();
    expect(await firstCar("mine")).toBeUndefined();
  });
});
