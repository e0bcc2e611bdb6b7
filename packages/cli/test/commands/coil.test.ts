import { expect, it } from "vitest";
import { told } from "../fake-io.ts";

const coil = (...words: string[]) => told(["coil", ...words], { files: {} });

it("finds coils for a rate as published (Bhandari, Design of Machine Elements, example 10.3: wire 21, mean 150 mm, 75 N/mm: 7.814775 coils at 81 370 MPa)", async () => {
  // The handbook's G; ours is 79.3 GPa, and coils go with it.
  const { out } = await coil("--metric", "--outside", "171", "--wire", "21", "--rate", "75", "--json");
  const made = JSON.parse(out);
  expect((made.activeCoils * 81_370) / 79_300).toBeCloseTo(7.814775, 4);
});

it("finds rate, coils or wire, each from the other two", async () => {
  const rate = JSON.parse((await coil("--outside", "3", "--wire", "0.44", "--coils", "9", "--json")).out).rate;
  const perInch = rate / 175.126835;
  const wire = JSON.parse((await coil("--outside", "3", "--coils", "9", "--rate", String(perInch), "--json")).out).wire;
  expect(wire / 0.0254).toBeCloseTo(0.44, 5);
  const coils = JSON.parse((await coil("--outside", "3", "--wire", "0.44", "--rate", String(perInch), "--json")).out);
  expect(coils.activeCoils).toBeCloseTo(9, 5);
});

it("says the stress when solid, and refuses what is not a spring", async () => {
  const { code, out } = await coil("--outside", "3", "--wire", "0.44", "--coils", "9", "--free", "12");
  expect(code).toBe(0);
  expect(out).toMatch(/to solid: \d+ lb, stress in the wire [\d.]+ ksi/);
  expect((await coil("--wire", "0.44", "--coils", "9")).code).toBe(2);
  expect((await coil("--outside", "3", "--wire", "0.44")).code).toBe(2);
  expect((await coil("--outside", "1", "--wire", "0.6", "--coils", "9")).code).toBe(2);
  expect((await coil("--outside", "3", "--wire", "0.44", "--coils", "9", "--free", "2")).code).toBe(2);
});
