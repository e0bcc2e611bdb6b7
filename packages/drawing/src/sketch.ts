import type {
  AreaPrimitive,
  Box,
  Dash,
  GroupPrimitive,
  Hatch,
  Ink,
  LinePrimitive,
  PathStep,
  Primitive,
  Spot,
  TextPrimitive,
  Weight,
} from "./primitive.ts";

/** Short ways to write primitives; what is left out is the usual: ink, visible, solid. */
interface LineStyle {
  readonly ink?: Ink;
  readonly weight?: Weight;
  readonly dash?: Dash;
  readonly meaning?: string;
}

export const line = (layer: string, path: readonly PathStep[], style: LineStyle = {}): LinePrimitive => ({
  shape: "line",
  layer,
  path,
  ink: style.ink ?? "ink",
  weight: style.weight ?? "visible",
  dash: style.dash ?? "solid",
  ...(style.meaning !== undefined && { meaning: style.meaning }),
});

export const stroke = (layer: string, from: Spot, to: Spot, style: LineStyle = {}): LinePrimitive =>
  line(
    layer,
    [
      { to: "move", at: from },
      { to: "line", at: to },
    ],
    style,
  );

export const area = (
  layer: string,
  path: readonly PathStep[],
  style: LineStyle & { readonly fill?: Ink; readonly hatch?: Hatch } = {},
): AreaPrimitive => ({
  shape: "area",
  layer,
  path,
  fill: style.fill ?? "paper",
  ink: style.ink ?? "ink",
  weight: style.weight ?? "visible",
  dash: style.dash ?? "solid",
  ...(style.hatch && { hatch: style.hatch }),
  ...(style.meaning !== undefined && { meaning: style.meaning }),
});

/** An area without an outline. */
export const patch = (
  layer: string,
  path: readonly PathStep[],
  style: { readonly fill?: Ink; readonly hatch?: Hatch; readonly meaning?: string } = {},
): AreaPrimitive => area(layer, path, { ...style, ink: "none", weight: "hair" });

export const text = (
  layer: string,
  at: Spot,
  words: string,
  style: Partial<Pick<TextPrimitive, "size" | "bold" | "anchor" | "turn" | "ink" | "halo" | "meaning">> = {},
): TextPrimitive => ({
  shape: "text",
  layer,
  at,
  text: words,
  size: style.size ?? "label",
  bold: style.bold ?? false,
  anchor: style.anchor ?? "start",
  turn: style.turn ?? 0,
  ink: style.ink ?? "ink-2",
  halo: style.halo ?? "none",
  ...(style.meaning !== undefined && { meaning: style.meaning }),
});

export const group = (
  layer: string,
  parts: readonly Primitive[],
  more: { readonly meaning?: string; readonly label?: string; readonly clip?: Box } = {},
): GroupPrimitive => ({ shape: "group", layer, parts, ...more });
