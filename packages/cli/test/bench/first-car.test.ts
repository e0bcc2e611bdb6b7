import { readCarDocument, startingDocument, writeCarDocument } from "@armwright/engine/document";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { benchUnderTest, CAR_TEXT, type UnderTest } from "./bench-under-test.ts";

let bench: UnderTest;
beforeEach(async () => {
  bench = await benchUnderTest();
});
afterEach(() => bench.end());

const carOf = (text: string) => {
  const reading = readCarDocument(text);
  if (!reading.ok) throw new Error("the car of the test cannot be read");
  return JSON.parse(JSON.stringify(reading.car)) as unknown;
};

describe("the car that a page draws first", () => {
  it("is the one it had last, read already; of an unknown one the folder's own", async () => {
    const other = writeCarDocument(startingDocument("five-link", "metric"));
    expect((await bench.send("PUT", "/api/cars/other", JSON.parse(other))).status).toBe(201);
    expect((await bench.ask("/api/first?last=other")).json()).toEqual({ first: { name: "other", car: carOf(other) } });
    const saltbush = { first: { name: "saltbush", car: carOf(CAR_TEXT) } };
    expect((await bench.ask("/api/first?last=../car")).json()).toEqual(saltbush);
    expect((await bench.ask("/api/first")).json()).toEqual(saltbush);
  });

  it("is none where it has faults: the page reads it and says them", async () => {
    const faulty = CAR_TEXT.replace(/"length": 18/, '"length": "long"');
    expect(faulty).not.toBe(CAR_TEXT);
    await bench.send("PUT", "/api/cars/faulty", JSON.parse(faulty));
    expect((await bench.ask("/api/first?last=faulty")).json()).toEqual({ first: null });
  });
});
