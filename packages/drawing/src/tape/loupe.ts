import { INCH, MILLIMETRE, type UnitSystem } from "@armwright/engine";
import { polyline, rectangle, spot } from "../path.ts";
import type { Box, Primitive } from "../primitive.ts";
import { area, group, line, stroke, text } from "../sketch.ts";
import { reading } from "../words.ts";
import { heightOf, marksBetween, type TapeScale } from "./scale.ts";

const LARGER = 4;
/** What it shows of the tape, m, and its marks: numbers at the second step. */
const WINDOW: Readonly<
  Record<UnitSystem, { readonly span: number; readonly steps: readonly number[]; readonly caption: string }>
> = {
  "inch-pound": { span: INCH, steps: [INCH, INCH / 4, INCH / 8, INCH / 16], caption: "in 16ths" },
  metric: { span: 25 * MILLIMETRE, steps: [10 * MILLIMETRE, 5 * MILLIMETRE, MILLIMETRE], caption: "in mm" },
};
const LENGTHS = [0.5, 0.36, 0.26, 0.17];

/** The tape at the marker, four times larger, joined to it by flared hairs. `rect` bounds it; it stands `out` px off. */
export function loupeParts(scale: TapeScale, travel: number, system: UnitSystem, rect: Box, out: number): Primitive[] {
  const { blade, pen } = scale;
  const { span, steps, caption } = WINDOW[system];
  const per = scale.scale * LARGER;
  const width = 56 * pen;
  const height = Math.min(span * per, 220 * pen, rect.height - 40 * pen);
  const x = blade.x + blade.width + out * pen;
  const centre = heightOf(scale, travel);
  const y = Math.min(Math.max(centre - height / 2, rect.y + 4 * pen), rect.y + rect.height - height - 24 * pen);
  const shown = height / per;
  const at = (t: number): number => y + height / 2 - (t - travel) * per;
  const numbered = steps[1]!;
  const parts: Primitive[] = [];
  for (const mark of marksBetween({ steps }, travel - shown / 2, travel + shown / 2)) {
    const height16 = at(mark.travel);
    parts.push(
      stroke("tape", spot(x, height16), spot(x + width * (LENGTHS[mark.rank] ?? 0.17), height16), {
        weight: mark.rank === 0 ? "visible" : "thin",
      }),
    );
    const clear = Math.abs(mark.travel - travel) * per > 10 * pen;
    const fits = height16 > y + 10 * pen && height16 < y + height - 9 * pen;
    if (mark.rank > 1 || !clear || !fits) continue;
    parts.push(
      text("tape", spot(x + width - 5 * pen, height16 + 5 * pen), markLabel(mark.travel, mark.rank, numbered, system), {
        anchor: "end",
        ink: "ink",
      }),
    );
  }
  const flare = (Math.min(shown, span) / 2) * scale.scale;
  const edge = blade.x + blade.width;
  return [
    group(
      "tape",
      [
        area("tape", rectangle(x, y, width, height), { fill: "blade", weight: "ghost" }),
        ...parts,
        stroke("tape", spot(x, at(travel)), spot(x + width, at(travel)), { weight: "visible" }),
        line("tape", polyline([spot(edge, centre - flare), spot(edge + 8 * pen, centre - flare), spot(x, y)]), {
          ink: "ink-2",
          weight: "hair",
        }),
        line(
          "tape",
          polyline([spot(edge, centre + flare), spot(edge + 8 * pen, centre + flare), spot(x, y + height)]),
          {
            ink: "ink-2",
            weight: "hair",
          },
        ),
        text("tape", spot(x + width / 2, y + height + 17 * pen), caption, { anchor: "middle" }),
      ],
      { meaning: "loupe" },
    ),
  ];
}

/** Whole inches by their number, quarters by the fraction alone; millimetres by their number. */
function markLabel(travel: number, rank: number, step: number, system: UnitSystem): string {
  if (system === "metric" || rank === 0) return reading(travel, "length", system);
  const quarters = Math.abs(Math.round(travel / step)) % 4;
  return reading(quarters * step, "length", system);
}
