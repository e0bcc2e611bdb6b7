import type { Primitive } from "@armwright/drawing";
import { formatNumber, type UnitSystem } from "@armwright/engine";
import { type CopeTemplate, copeTemplate } from "../cope/cope-template.ts";
import type { CutList } from "../cut/cut-list.ts";
import { tubeWords } from "../cut/hardware.ts";
import { moved } from "../paper/moved.ts";
import { RULER_HEIGHT, ruler } from "../paper/ruler.ts";
import type { Makings, Sheet } from "./sheet.ts";

const DEGREE = Math.PI / 180;
const BETWEEN = 6;

/** Every coped end of the car as its template, from the paper's corner, mm. */
export function copeTemplates(
  { templates, lines }: CutList,
  units: UnitSystem,
): readonly (CopeTemplate & { readonly number: number })[] {
  return templates.map(({ number, piece, end }) => {
    const line = lines.find((each) => each.piece === piece);
    return {
      number,
      ...copeTemplate(
        end.line,
        {
          title: `T${number}: tube ${line?.number ?? ""}, ${piece.name}`,
          under: `${tubeWords(piece.diameter, piece.wall, units)}, ${formatNumber(end.angle / DEGREE, 0)}° onto ${end.onto.map(({ name }) => name).join(" and ")}`,
          outerDiameter: piece.diameter * 1000,
        },
        0,
        0,
      ),
    };
  });
}

/** Cope templates at true size, as many on a sheet as find room, each sheet with its ruler. */
export function templateSheets({ room, cuts, study }: Makings): readonly Sheet[] {
  const drawn = copeTemplates(cuts, study.car.units);
  const floor = room.y + room.height - RULER_HEIGHT - 2;
  const sheets: Sheet[] = [];
  let parts: Primitive[] = [];
  let top = room.y;
  const close = (): void => {
    if (parts.length === 0) return;
    sheets.push({
      id: `templates-${sheets.length + 1}`,
      title: `Cope templates ${sheets.length + 1}`,
      note: "TRUE SIZE",
      parts: [...parts, ...ruler(room.x, floor + 2)],
      isTrueSize: true,
    });
    parts = [];
    top = room.y;
  };
  for (const { parts: own, box } of drawn) {
    if (top + box.height > floor) close();
    parts.push(...own.map((part) => moved(part, room.x, top)));
    top += box.height + BETWEEN;
  }
  close();
  return sheets;
}
