import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Primitive } from "@armwright/drawing";
import { study } from "@armwright/engine";
import { fingerprintOf, readCarValue } from "@armwright/engine/document";
import { describe, expect, test } from "vitest";
import { type EditableDocument, type ExampleName, exampleDocument } from "../../../engine/test/example-documents.ts";
import { bookLeaves } from "../../src/book.ts";
import type { Leaf } from "../../src/paper/leaf.ts";
import type { PageSize } from "../../src/paper/page-size.ts";
import { writePdf } from "../../src/paper/write-pdf.ts";
import { hasRenderer } from "../paper/rendered.ts";
import { type GreyPicture, readGreyPng, readPgm, strangePixels, writeGreyPng } from "./grey-picture.ts";

/*
 * A few sheets against pictures of them that were looked at and found good, so that no drawing breaks unseen. Date,
 * fingerprint and the sheet's number are masked. `node tools/store-sheet-pictures.mjs` makes the pictures anew: look at them before they are kept.
 */

/** Of cars that are there to be drawn, not to be designed on: both units, both papers, three kinds of linkage. */
const SHEETS: readonly (readonly [car: ExampleName, paper: PageSize["name"], sheet: string])[] = [
  ["juniper", "a4", "car"],
  ["juniper", "a4", "lower-arm-left"],
  ["juniper", "a4", "cycle-cards-1"],
  ["greasewood", "letter", "jig-lower-arm"],
  ["greasewood", "letter", "spindle-right"],
  ["greasewood", "letter", "templates-1"],
  ["rabbitbrush", "letter", "mounts-left"],
  ["catclaw", "a4", "links-1"],
];

const DPI = 100;
/** Strange pixels that a sheet may have: the specks that another release of the renderer leaves. */
const MOST_STRANGE = 6;

const isStoring = process.env["STORE_SHEET_PICTURES"] === "1";
const stored = (name: string): URL => new URL(`./${name}.png`, import.meta.url);

function masked(parts: readonly Primitive[], fingerprint: string): readonly Primitive[] {
  return parts.map((part) => {
    if (part.shape === "group") return { ...part, parts: masked(part.parts, fingerprint) };
    if (part.shape !== "text") return part;
    if (part.text === fingerprint) return { ...part, text: "0000-0000-0000" };
    return /^\d+ of \d+$/.test(part.text) ? { ...part, text: "0 of 0" } : part;
  });
}

const books = new Map<string, { readonly leaves: readonly Leaf[]; readonly fingerprint: string }>();

function bookOf(car: ExampleName, paper: PageSize["name"]) {
  // Arms on their starting frames: what the examples' tubes are sized to is no matter of these pictures.
  const { strength: _, ...document } = exampleDocument(car) as EditableDocument & { readonly strength?: unknown };
  const reading = readCarValue(document);
  if (!reading.ok) throw new Error("the example does not read");
  const leaves = bookLeaves(study(reading.car), reading.document, { paper, date: new Date(0) });
  return { leaves, fingerprint: fingerprintOf(reading.document) };
}

function leafOf(car: ExampleName, paper: PageSize["name"], sheet: string): Leaf {
  const book = books.get(`${car} ${paper}`) ?? bookOf(car, paper);
  books.set(`${car} ${paper}`, book);
  const leaf = book.leaves.find(({ id }) => id === sheet);
  if (!leaf) throw new Error(`no sheet ${sheet}, but ${book.leaves.map(({ id }) => id).join(", ")}`);
  return { ...leaf, parts: masked(leaf.parts, book.fingerprint) };
}

async function pictureOf(leaf: Leaf): Promise<GreyPicture> {
  const folder = mkdtempSync(join(tmpdir(), "armwright-sheet-"));
  try {
    writeFileSync(join(folder, "sheet.pdf"), await writePdf([leaf], { title: "t", subject: "s", date: new Date(0) }));
    execFileSync("pdftoppm", ["-r", String(DPI), "-gray", "-singlefile", "sheet.pdf", "sheet"], {
      cwd: folder,
    });
    return readPgm(new Uint8Array(readFileSync(join(folder, "sheet.pgm"))));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Both ways: what is new, and what has gone. */
const strange = (a: GreyPicture, b: GreyPicture): number => strangePixels(a, b) + strangePixels(b, a);

describe.skipIf(!hasRenderer)("sheets as they were found good", () => {
  test.each(SHEETS)("%s on %s: %s", async (car, paper, sheet) => {
    const picture = await pictureOf(leafOf(car, paper, sheet));
    const name = `${car}-${paper}-${sheet}`;
    if (isStoring) writeFileSync(stored(name), writeGreyPng(picture));
    const found = strange(picture, readGreyPng(new Uint8Array(readFileSync(stored(name)))));
    if (found > MOST_STRANGE) writeFileSync(join(tmpdir(), `${name}-now.png`), writeGreyPng(picture));
    expect(found, `${name}: see ${join(tmpdir(), `${name}-now.png`)}`).toBeLessThanOrEqual(MOST_STRANGE);
  });

  test("a line moved by half a millimetre, a word that reads otherwise and a line left out are all seen", async () => {
    const leaf = leafOf("juniper", "a4", "lower-arm-left");
    const good = await pictureOf(leaf);
    const flat = (parts: readonly Primitive[]): readonly Primitive[] =>
      parts.flatMap((part) => (part.shape === "group" ? flat(part.parts) : [part]));
    const parts = flat(leaf.parts);
    const seen = async (changed: readonly Primitive[]): Promise<number> =>
      strange(good, await pictureOf({ ...leaf, parts: changed }));
    expect(await seen(parts)).toBeLessThanOrEqual(MOST_STRANGE);
    // The last tube drawn is the nearest one: nothing lies over it.
    const tube = parts.findLastIndex(({ shape, layer }) => shape === "area" && layer === "tube");
    const word = parts.findIndex((part) => part.shape === "text" && part.layer === "dimension");
    expect(Math.min(tube, word)).toBeGreaterThan(0);
    const moved = parts.map((part, index) =>
      index === tube && part.shape === "area"
        ? {
            ...part,
            path: part.path.map((step) =>
              "at" in step ? { ...step, at: { x: step.at.x, y: step.at.y + 0.5 } } : step,
            ),
          }
        : part,
    );
    const reworded = parts.map((part, index) =>
      index === word && part.shape === "text" ? { ...part, text: part.text.replace(/\d(?=\D*$)/, "9") } : part,
    );
    expect(parts[word]).not.toEqual(reworded[word]);
    expect(await seen(moved)).toBeGreaterThan(MOST_STRANGE);
    expect(await seen(reworded)).toBeGreaterThan(MOST_STRANGE);
    expect(await seen(parts.filter((_, index) => index !== tube))).toBeGreaterThan(MOST_STRANGE);
  });
});
