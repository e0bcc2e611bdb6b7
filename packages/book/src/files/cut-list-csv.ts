import type { Car, Corner } from "@armwright/engine";
import type { CutList } from "../cut/cut-list.ts";
import { hardware, tubeWords } from "../cut/hardware.ts";
import { csvText, headCell, numberCell, tapeCell } from "./csv.ts";

/** Every tube to cut, in the document's unit, with its template numbers. */
export function cutListCsv({ lines }: CutList, { units }: Car): string {
  const head = [
    "no",
    "tube",
    "part",
    "pieces",
    "size",
    "material",
    headCell("centres", "length", units),
    headCell("cut", "length", units),
    "cut, as the tape reads",
    "one end",
    "other end",
    headCell("mass of one", "mass", units),
  ];
  const end = (template: number | null): string => (template === null ? "square" : `cope T${template}`);
  return csvText([
    head,
    ...lines.map(({ number, piece, count, mass, fromTemplate, toTemplate }) => [
      String(number),
      piece.name,
      piece.part,
      String(count),
      tubeWords(piece.diameter, piece.wall, units),
      piece.material,
      numberCell(piece.centres, "length", units),
      numberCell(piece.length, "length", units),
      tapeCell(piece.length, units),
      end(fromTemplate),
      end(toTemplate),
      numberCell(mass, "mass", units),
    ]),
  ]);
}

/** Rod ends, bungs, nuts and bolts of both sides. */
export const hardwareCsv = ({ lines }: CutList, corner: Corner): string =>
  csvText([
    ["pieces", "part", "size", "where", "look at"],
    ...hardware(
      corner,
      lines.map(({ piece }) => piece),
    ).map(({ count, name, size, where, note }) => [String(count), name, size, where, note]),
  ]);
