import { makeCorner, type Study } from "@armwright/engine";
import type { CarDocument } from "@armwright/engine/document";
import { type BookOptions, bookLeaves } from "./book.ts";
import { cutList } from "./cut/cut-list.ts";
import { plates } from "./cut/plate.ts";
import { assemblySolids } from "./files/assembly.ts";
import { cutListCsv, hardwareCsv } from "./files/cut-list-csv.ts";
import { cycleCsv } from "./files/cycle-csv.ts";
import { dxfText } from "./files/dxf.ts";
import { glbBytes } from "./files/glb.ts";
import { distancesCsv, pointsCsv } from "./files/points-csv.ts";
import type { Solid } from "./files/solid.ts";
import { stlBytes } from "./files/stl.ts";
import { viewSvg } from "./files/view-svg.ts";
import type { Leaf } from "./paper/leaf.ts";
import { leafSvg } from "./paper/leaf-svg.ts";
import { writePdf } from "./paper/write-pdf.ts";
import { copeTemplates } from "./sheets/template-sheets.ts";

/** A file of the book, named after car and version. */
export interface BookFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Told after each file: what it was, and how many there are. */
export type Progress = (done: number, of: number, name: string) => void;

/** A file that is made when it is asked for. */
export interface BookMaker {
  readonly name: string;
  readonly make: () => Uint8Array | Promise<Uint8Array>;
}

/** Sheets of words and tables: the rest are drawings, and files of their own too. */
const WORDS_ONLY = /^(order|cut-list|hardware|cycle-cards|settings|strength|sign-off|buy|mounts)(-\d+)?$/;

/** Every file of a car's build book, made one by one. The same car and date give the same bytes. */
export async function bookFiles(
  study: Study,
  document: CarDocument,
  options: BookOptions,
  progress: Progress = () => undefined,
): Promise<readonly BookFile[]> {
  const { files: makers } = makeBook(study, document, options);
  const files: BookFile[] = [];
  for (const { name, make } of makers) {
    files.push({ name, bytes: await make() });
    progress(files.length, makers.length, name);
  }
  return files;
}

/** A car's build book: its sheets, and its files by name, the PDF first. */
export interface Book {
  readonly leaves: readonly Leaf[];
  readonly files: readonly BookMaker[];
}

export function makeBook(study: Study, document: CarDocument, options: BookOptions): Book {
  const stem = stemOf(study);
  const cuts = cutList(study.corner);
  const leaves = bookLeaves(study, document, options, cuts);
  const makers: readonly (readonly [name: string, make: () => Uint8Array | Promise<Uint8Array>])[] = [
    [
      `${stem}-book.pdf`,
      () =>
        writePdf(leaves, {
          title: `${study.car.name}: build book`,
          subject: "Rear suspension: sheets to cut, weld and check by",
          date: options.date,
        }),
    ],
    [`${stem}-points.csv`, () => utf8(pointsCsv(study.corner))],
    [`${stem}-distances.csv`, () => utf8(distancesCsv(study.corner))],
    ...(["rear", "top", "left"] as const).map(
      (view) => [`${stem}-${view}.svg`, () => utf8(viewSvg(study, view, options.paper))] as const,
    ),
    ...leaves
      .filter(({ id }) => !WORDS_ONLY.test(id))
      .map((leaf) => [`${stem}-sheet-${leaf.id}.svg`, () => utf8(leafSvg(leaf))] as const),
    [`${stem}-cycle.csv`, () => utf8(cycleCsv(study))],
    [`${stem}-cut-list.csv`, () => utf8(cutListCsv(cuts, study.car))],
    [`${stem}-hardware.csv`, () => utf8(hardwareCsv(cuts, study.corner))],
    ...copeTemplates(cuts, study.car.units).map(
      ({ number, parts }) => [`${stem}-cope-T${number}.dxf`, () => utf8(dxfText(parts, study.car.units))] as const,
    ),
    ...plates(study.corner).map(
      ({ id, parts }) => [`${stem}-${plainName(id)}.dxf`, () => utf8(dxfText(parts, study.car.units))] as const,
    ),
    [`${stem}-assembly.glb`, () => glbBytes(solids(), study.car.name)],
    [`${stem}-assembly.stl`, () => stlBytes(solids(), study.car.name)],
  ];
  const right = study.car.right ? makeCorner(study.car.right) : study.corner;
  let made: readonly Solid[] | undefined;
  const solids = (): readonly Solid[] => {
    made ??= assemblySolids(study.corner, right, options.travel ?? 0);
    return made;
  };
  return { leaves, files: makers.map(([name, make]) => ({ name, make })) };
}

/** Name of car and version as a file may be called anywhere: `saltbush-b`. */
export function stemOf({ car }: Pick<Study, "car">): string {
  return plainName([car.name, ...(car.version === undefined ? [] : [car.version])].join(" ")).slice(0, 60) || "car";
}

/** Words as a file may be called anywhere. */
const plainName = (words: string): string =>
  words
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "");

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
