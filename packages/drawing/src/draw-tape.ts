import { type Study, unitOf } from "@armwright/engine";
import { polyline, spot } from "./path.ts";
import type { Box, Drawing, Handle, Primitive } from "./primitive.ts";
import { group, patch, stroke, text } from "./sketch.ts";
import { bladeParts } from "./tape/blade.ts";
import { FLAG_PITCH, flagParts, flagsOf, type PlacedFlag, placeFlags } from "./tape/flags.ts";
import { loupeParts } from "./tape/loupe.ts";
import { heightOf, onBlade, type TapeOptions, type TapeScale, tapeScale } from "./tape/scale.ts";

/**
 * The travel tape with the wheel at `travel` (m): blade, flags of every limit near enough, chosen stops, marker and loupe.
 * `rect` is the room for all of it on a sheet it shares with others. Handles: `travel`, `stops.bump`, `stops.droop`.
 */
export function drawTape(study: Study, travel: number, rect: Box, options: TapeOptions = {}): Drawing {
  const scale = tapeScale(study, rect, options);
  const now = onBlade(scale, travel);
  const flags = placeFlags(flagsOf(study, scale), scale, rect, options);
  const shown = flags.map(({ flag }) => flag);
  const parts: Primitive[] = [
    ...unitLabel(study, scale),
    ...bladeParts(study, scale, shown, now, options),
    ...flagParts(flags, scale, options),
    ...rideLabel(scale, flags, options),
    ...(options.loupe === false
      ? []
      : loupeParts(scale, now, study.car.units, rect, options.held?.startsWith("stops.") ? 40 : 22)),
    ...marker(scale, now, options),
  ];
  return {
    sheet: {
      width: rect.x + rect.width,
      height: rect.y + rect.height,
      scale: scale.scale,
      origin: spot(scale.blade.x + scale.blade.width / 2, heightOf(scale, 0)),
      pen: scale.pen,
    },
    parts: [group("tape", parts)],
    handles: handles(scale, now, flags),
  };
}

const unitLabel = (study: Study, { blade, top, pen }: TapeScale): Primitive[] => [
  text("tape", spot(blade.x + blade.width / 2, top - 14 * pen), unitOf("length", study.car.units), {
    anchor: "middle",
  }),
];

/** Says what zero is, where no flag stands in the way. */
function rideLabel(scale: TapeScale, flags: readonly PlacedFlag[], options: TapeOptions): Primitive[] {
  const y = heightOf(scale, 0);
  const free = flags.every(({ height }) => Math.abs(height - y) >= FLAG_PITCH * scale.pen);
  if (options.words === false || !free || !(scale.lowest < 0 && scale.highest > 0)) return [];
  return [text("tape", spot(scale.blade.x - 12 * scale.pen, y + 5 * scale.pen), "ride height", { anchor: "end" })];
}

/** The line across the blade at the present travel and the solid triangle at its right edge. */
function marker(scale: TapeScale, travel: number, options: TapeOptions): Primitive[] {
  const { blade, pen } = scale;
  const y = heightOf(scale, travel);
  const edge = blade.x + blade.width;
  const ink = options.held === "travel" ? "hold" : "ink";
  const tip = edge + 3 * pen;
  return [
    group(
      "tape",
      [
        stroke("tape", spot(blade.x, y), spot(edge + 3 * pen, y), { ink }),
        patch(
          "tape",
          polyline([spot(tip, y), spot(tip + 11 * pen, y - 6.5 * pen), spot(tip + 11 * pen, y + 6.5 * pen)], true),
          { fill: ink },
        ),
      ],
      { meaning: "travel", label: "the wheel now" },
    ),
  ];
}

function handles(scale: TapeScale, travel: number, flags: readonly PlacedFlag[]): Handle[] {
  const { blade, pen } = scale;
  const right = blade.x + blade.width;
  return [
    { path: "travel", label: "wheel, up and down", at: spot(right + 9 * pen, heightOf(scale, travel)) },
    ...flags
      .filter(({ flag }) => flag.kind === "stop")
      .map(({ flag }) => ({
        path: flag.id,
        label: flag.label,
        at: spot(right + 5 * pen, heightOf(scale, flag.travel)),
      })),
  ];
}
