import { makeCorner, type Study } from "@armwright/engine";
import type { CarDocument } from "@armwright/engine/document";
import { type BookOptions, bookLeaves } from "./book.ts";
import { cutList } from "./cut/cut-list.ts";
import { assemblySolids } from "./files/assembly.ts";
import { cutListCsv, hardwareCsv } from "./files/cut-list-csv.ts";
import { dxfText } from "./files/dxf.ts";
import { glbBytes } from "./files/glb.ts";
import { distancesCsv, pointsCsv } from "./files/points-csv.ts";
import type { Solid } from "./files/solid.ts";
import { stlBytes } from "./files/stl.ts";
import { viewSvg } from "./files/view-svg.ts";
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

/** Every file of a car's build book, made one by one. The same car and date give the same bytes. */
export async function bookFiles(
  study: Study,
  document: CarDocument,
  options: BookOptions,
  progress: Progress = () => undefined,
): Promise<readonly BookFile[]> {
  const makers = bookMakers(study, document, options);
  const files: BookFile[] = [];
  for (const { name, make } of makers) {
    files.push({ name, bytes: await make() });
    progress(files.length, makers.length, name);
  }
  return files;
}

/** The files of a car's build book by name, the PDF first. */
export function bookMakers(study: Study, document: CarDocument, options: BookOptions): readonly BookMaker[] {
  const stem = stemOf(study);
  const cuts = cutList(study.corner);
  const makers: readonly (readonly [name: string, make: () => Uint8Array | Promise<Uint8Array>])[] = [
    [
      `${stem}-book.pdf`,
      () =>
        writePdf(bookLeaves(study, document, options), {
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
    [`${stem}-cut-list.csv`, () => utf8(cutListCsv(cuts, study.car))],
    [`${stem}-hardware.csv`, () => utf8(hardwareCsv(cuts, study.corner))],
    ...copeTemplates(cuts, study.car.units).map(
      ({ number, parts }) => [`${stem}-cope-T${number}.dxf`, () => utf8(dxfText(parts, study.car.units))] as const,
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
  return makers.map(([name, make]) => ({ name, make }));
}

/** Name of car and version as a file may be called anywhere: `saltbush-b`. */
export function stemOf({ car }: Pick<Study, "car">): string {
  const words = [car.name, ...(car.version === undefined ? [] : [car.version])].join(" ");
  const plain = words
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "");
  return plain.slice(0, 60) || "car";
}

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
