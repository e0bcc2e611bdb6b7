import type { Primitive } from "@armwright/drawing";
import { type Corner, DEGREE, formatNumber, type UnitSystem } from "@armwright/engine";
import { type CopeTemplate, copeTemplate } from "../cope/cope-template.ts";
import type { CutList } from "../cut/cut-list.ts";
import { tubeWords } from "../cut/hardware.ts";
import { plates, WORDS_HALF, WORDS_UNDER } from "../cut/plate.ts";
import { moved } from "../paper/moved.ts";
import { RULER_HEIGHT, ruler } from "../paper/ruler.ts";
import { tiled } from "../paper/tiled.ts";
import type { Makings, Sheet } from "./sheet.ts";

const BETWEEN = 6;

/** Every coped end of the car as its template, from the paper's corner, mm. */
export function copeTemplates(
  { templates, lines }: CutList,
  units: UnitSystem,
): readonly (CopeTemplate & { readonly number: number })[] {
  return templates.map(({ number, piece, end }) => {
    const line = lines.find((each) => each.piece === piece);
    const numberOf = (id: string): string => tubeNumber(id, lines);
    const onto = end.onto.map(({ id, name }) => `${name} (tube ${numberOf(id)})`).join(" and ");
    return {
      number,
      ...copeTemplate(
        end.line,
        {
          title: `T${number}: tube ${line?.number ?? ""}, ${piece.name}`,
          under: `${tubeWords(piece.diameter, piece.wall, units)}, ${formatNumber(end.angle / DEGREE, 0)}° onto ${onto}${
            end.pastEndOf.length === 0
              ? ""
              : `. REACHES PAST THE END of tube ${end.pastEndOf.map(numberOf).join(" and ")}: leave long, fit on the car, see the cut list`
          }`,
          outerDiameter: piece.diameter * 1000,
        },
        0,
        0,
      ),
    };
  });
}

/** A piece's number on the cut list. */
export const tubeNumber = (id: string, lines: CutList["lines"]): string =>
  String(lines.find(({ piece }) => piece.id === id)?.number ?? id);

/** A true-size drawing and the room it takes, mm. */
interface Flat {
  readonly parts: readonly Primitive[];
  readonly width: number;
  readonly height: number;
}

/** Cope templates, then tabs and gussets, at true size: as many on a sheet as find room, each sheet with its ruler. */
export function templateSheets(makings: Makings): readonly Sheet[] {
  const { cuts, study } = makings;
  const copes = copeTemplates(cuts, study.car.units).map(({ parts, box }) => ({
    parts,
    width: box.width,
    height: box.height,
  }));
  return [
    ...trueSizeSheets("templates", "Cope templates", copes, makings),
    ...trueSizeSheets("plates", "Tabs and gussets", flatPlates(study.corner), makings),
  ];
}

/** Plates with the words beneath them, in a box that holds both. */
const flatPlates = (corner: Corner): Flat[] =>
  plates(corner).map(({ parts, width, height }) => {
    const half = Math.max(width / 2, WORDS_HALF);
    return {
      parts: parts.map((part) => moved(part, half - width / 2, 0)),
      width: 2 * half,
      height: height + WORDS_UNDER,
    };
  });

function trueSizeSheets(id: string, title: string, flats: readonly Flat[], { room }: Makings): Sheet[] {
  const floor = room.y + room.height - RULER_HEIGHT - 2;
  const sheets: Sheet[] = [];
  let parts: Primitive[] = [];
  let [left, top, next] = [room.x, room.y, room.y];
  const close = (shown: readonly Primitive[]): void => {
    if (shown.length > 0) {
      sheets.push({
        id: `${id}-${sheets.length + 1}`,
        title: `${title} ${sheets.length + 1}`,
        note: "TRUE SIZE",
        parts: [...shown, ...ruler(room.x, floor + 2)],
        isTrueSize: true,
      });
    }
    parts = [];
    [left, top, next] = [room.x, room.y, room.y];
  };
  for (const flat of flats) {
    if (flat.width > room.width || flat.height > floor - room.y) {
      close(parts);
      const area = { ...room, height: floor - room.y };
      for (const tile of tiled(flat.parts, flat.width, flat.height, area)) close(tile);
      continue;
    }
    if (left + flat.width > room.x + room.width) [left, top] = [room.x, next];
    if (top + flat.height > floor) close(parts);
    parts.push(...flat.parts.map((part) => moved(part, left, top)));
    next = Math.max(next, top + flat.height + BETWEEN);
    left += flat.width + BETWEEN;
  }
  close(parts);
  return sheets;
}
