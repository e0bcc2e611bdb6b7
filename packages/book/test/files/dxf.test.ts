import { study } from "@armwright/engine";
import DxfParser from "dxf-parser";
import { describe, expect, test } from "vitest";
import { exampleCar } from "../../../engine/test/example-documents.ts";
import { cutList } from "../../src/cut/cut-list.ts";
import { dxfText } from "../../src/files/dxf.ts";
import { copeTemplates } from "../../src/sheets/template-sheets.ts";

/* Read back with a general DXF library (dxf-parser, npm). */

interface Entity {
  readonly type: string;
  readonly layer: string;
  readonly vertices?: readonly { readonly x: number; readonly y: number }[];
  readonly shape?: boolean;
}

const readBack = (text: string) => {
  const read = new DxfParser().parseSync(text);
  if (!read) throw new Error("the DXF does not read");
  return read as unknown as { readonly header: Record<string, number>; readonly entities: readonly Entity[] };
};

// The first template is of a tube that is given as 1 1/2 in, or as a cross tube of 44 mm.
describe.each([
  ["saltbush", 38.1],
  ["juniper", 44],
] as const)("a cope template of %s as DXF", (name, diameter) => {
  const made = study(exampleCar(name));
  const template = copeTemplates(cutList(made.corner), made.car.units)[0]!;
  const read = readBack(dxfText(template.parts, made.car.units));
  const unit = made.car.units === "metric" ? 1 : 25.4;

  test("says its unit: inches 1, millimetres 4", () => {
    expect(read.header["$INSUNITS"]).toBe(made.car.units === "metric" ? 4 : 1);
  });

  test("its cut is one closed line, once round the tube, on the layer CUT", () => {
    const cuts = read.entities.filter(({ layer, type }) => layer === "CUT" && type === "LWPOLYLINE");
    expect(cuts).toHaveLength(1);
    const xs = cuts[0]!.vertices!.map(({ x }) => x);
    const ys = cuts[0]!.vertices!.map(({ y }) => y);
    expect((Math.max(...xs) - Math.min(...xs)) * unit).toBeCloseTo(Math.PI * diameter, 6);
    expect((Math.max(...ys) - Math.min(...ys)) * unit).toBeLessThan(template.box.height + 1e-6);
    expect(cuts[0]!.shape).toBe(true);
  });

  test("marks and words are on layers of their own", () => {
    const layers = new Set(read.entities.map(({ layer }) => layer));
    expect([...layers].sort()).toEqual(["CUT", "FLAP", "MARK"]);
    expect(read.entities.filter(({ type }) => type === "TEXT").length).toBeGreaterThan(2);
  });
});
