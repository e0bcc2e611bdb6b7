import { execFileSync } from "node:child_process";
import { study } from "@armwright/engine";
import { readCarValue } from "@armwright/engine/document";
import DxfParser from "dxf-parser";
import { validateBytes } from "gltf-validator";
import { describe, expect, test } from "vitest";
import { type ExampleName, exampleCar, exampleDocument } from "../../engine/test/example-documents.ts";
import { type BookFile, bookFiles } from "../src/book-files.ts";
import { hasRenderer } from "./paper/rendered.ts";

/** The book of an example with a version and with plates; files by their names without car and version. */
async function filesOf(name: ExampleName, date: Date, travel?: number): Promise<ReadonlyMap<string, Uint8Array>> {
  const isInch = exampleDocument(name).units === "inch-pound";
  const reading = readCarValue({
    ...exampleDocument(name),
    version: "b 2",
    strength: {
      bolts: { all: { size: isInch ? "5/8-18" : "M16x1.5", grade: isInch ? "8" : "10.9", shear: "double" } },
      tabs: {
        all: isInch ? { thickness: "1/4", width: 2, edgeDistance: 1 } : { thickness: 6, width: 50, edgeDistance: 25 },
      },
    },
  });
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  const files = await bookFiles(study(reading.car), reading.document, {
    paper: "a4",
    date,
    ...(travel !== undefined && { travel }),
  });
  const stem = `${name}-b-2-`;
  for (const file of files) expect(file.name.startsWith(stem), file.name).toBe(true);
  return new Map(files.map((file: BookFile) => [file.name.slice(stem.length), file.bytes]));
}

const text = (bytes: Uint8Array | undefined): string => new TextDecoder().decode(bytes);

/** Cells of a line of CSV after RFC 4180. */
function cells(line: string): readonly string[] {
  const found: string[] = [""];
  let isQuoted = false;
  for (const sign of line) {
    if (sign === '"') isQuoted = !isQuoted;
    else if (sign === "," && !isQuoted) found.push("");
    else found[found.length - 1] += sign;
  }
  return found;
}

/** What is not well formed in a piece of XML: tags that do not pair, attributes without quotes, bare ampersands. */
function faultsOfXml(xml: string): readonly string[] {
  const faults: string[] = [];
  const open: string[] = [];
  const tag = /<(\/?)([A-Za-z][\w:-]*)((?:\s+[\w:-]+="[^"<]*")*)\s*(\/?)>/g;
  let end = 0;
  for (const found of xml.matchAll(tag)) {
    const between = xml.slice(end, found.index);
    if (/[<]|&(?!(?:amp|lt|gt|quot|apos|#\d+|#x[0-9a-f]+);)/i.test(between)) faults.push(between.slice(0, 60));
    end = found.index + found[0].length;
    if (found[1] === "/") {
      if (open.pop() !== found[2]) faults.push(found[0]);
    } else if (found[4] !== "/") open.push(found[2]!);
  }
  return [...faults, ...open, ...(xml.slice(end).trim() === "" ? [] : [xml.slice(end, end + 60)])];
}

describe.each(["saltbush", "juniper"] as const)("the files of %s", (name) => {
  const made = filesOf(name, new Date("2026-11-25"));

  test("every kind is there, under the names of car and version", async () => {
    const names = [...(await made).keys()];
    for (const wanted of [
      "book.pdf",
      "points.csv",
      "distances.csv",
      "cycle.csv",
      "hardware.csv",
      "cut-list.csv",
      "rear.svg",
      "top.svg",
      "left.svg",
      "sheet-lower-arm-left.svg",
      "sheet-jig-corner.svg",
      "cope-T1.dxf",
      "assembly.glb",
      "assembly.stl",
    ])
      expect(names).toContain(wanted);
    expect(names.some((each) => each.startsWith("tab-all-") && each.endsWith(".dxf"))).toBe(true);
    expect(new Set(names).size).toBe(names.length);
  });

  test("the same car and date give the same bytes; another date changes paper alone", async () => {
    const [first, again, later] = [
      await made,
      await filesOf(name, new Date("2026-11-25")),
      await filesOf(name, new Date("2026-11-26")),
    ];
    const differ = (other: ReadonlyMap<string, Uint8Array>): readonly string[] =>
      [...first].filter(([file, bytes]) => !Buffer.from(bytes).equals(other.get(file)!)).map(([file]) => file);
    expect(differ(again)).toEqual([]);
    const changed = differ(later);
    expect(changed).toContain("book.pdf");
    for (const file of changed) expect(file).toMatch(/^book\.pdf$|^sheet-.*\.svg$/);
  });

  test("every CSV has as many cells in each row as in its head, and no value that is none", async () => {
    for (const [file, bytes] of await made) {
      if (!file.endsWith(".csv")) continue;
      const lines = text(bytes).trimEnd().split("\r\n");
      expect(lines.length, file).toBeGreaterThan(2);
      for (const line of lines) expect(cells(line).length, `${file}: ${line}`).toBe(cells(lines[0]!).length);
      expect(text(bytes)).not.toMatch(/NaN|undefined|Infinity/);
    }
  });

  test("the cycle's CSV goes from full droop to full bump with camber at ride as designed", async () => {
    const [head, ...rows] = text((await made).get("cycle.csv"))
      .trimEnd()
      .split("\r\n");
    const camber = cells(head!).findIndex((cell) => cell.startsWith("camber ["));
    const travels = rows.map((row) => Number.parseFloat(cells(row)[0]!));
    expect(travels).toEqual([...travels].sort((a, b) => a - b));
    const ride = rows.find((row) => Number.parseFloat(cells(row)[0]!) === 0);
    const designed = (exampleCar(name).wheel.camber * 180) / Math.PI;
    expect(Number.parseFloat(cells(ride!)[camber]!)).toBeCloseTo(designed, 6);
    expect(travels[0]!).toBeLessThan(0);
    expect(travels.at(-1)!).toBeGreaterThan(0);
  });

  test("every SVG is well-formed with a size in mm; every DXF and the glTF read without complaint", async () => {
    for (const [file, bytes] of await made) {
      if (file.endsWith(".svg")) {
        const svg = text(bytes);
        expect(svg, file).toMatch(/^<svg [^>]*width="[\d.]+mm" height="[\d.]+mm"/);
        expect(faultsOfXml(svg), file).toEqual([]);
      }
      if (file.endsWith(".dxf")) {
        const read = new DxfParser().parseSync(text(bytes));
        expect(read?.entities.length, file).toBeGreaterThan(2);
        expect(text(bytes)).not.toContain("NaN");
      }
    }
    const report = await validateBytes((await made).get("assembly.glb")!);
    expect(report.issues.messages).toEqual([]);
  });

  test("the solid assembly stands at the travel that was asked for: its tyre's lowest point moves with the wheel", async () => {
    const lowest = (stl: Uint8Array): number => {
      const view = new DataView(stl.buffer, stl.byteOffset, stl.byteLength);
      const count = view.getUint32(80, true);
      let least = Number.POSITIVE_INFINITY;
      for (let i = 0; i < count; i += 1)
        for (const corner of [0, 1, 2])
          least = Math.min(least, view.getFloat32(84 + 50 * i + 12 + 12 * corner + 8, true));
      return least;
    };
    const ride = lowest((await made).get("assembly.stl")!);
    const hanging = lowest((await filesOf(name, new Date("2026-11-25"), -0.1)).get("assembly.stl")!);
    expect(ride - hanging).toBeGreaterThan(0.09 * (Math.abs(ride) > 5 ? 1000 : 1));
  });

  test.skipIf(!hasRenderer)("the PDF has a page a sheet, all of the paper that was asked for", async () => {
    const found = execFileSync("pdfinfo", ["-"], { input: (await made).get("book.pdf")!, encoding: "utf8" });
    expect(found).toMatch(/Page size: +595\.\d+ x 841\.\d+ pts \(A4\)/);
    expect(Number(/Pages: +(\d+)/.exec(found)![1])).toBeGreaterThan(20);
  });
});
