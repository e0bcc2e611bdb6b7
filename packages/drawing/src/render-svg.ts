import type { Box, Drawing, PathStep, Primitive, TextPrimitive } from "./primitive.ts";
import {
  CLASSES,
  DASHES,
  DRAWING_CSS,
  GAP_SIZE,
  HALO,
  HATCHES,
  hatchId,
  type Theme,
  TYPES,
  tokenCss,
  WEIGHTS,
} from "./style.ts";
import { textParts } from "./words.ts";

export interface SvgOptions {
  /** Set before the ids of hatches and clips, so that several SVGs can stand on one page. */
  readonly prefix?: string;
  /** Colours in the SVG itself: one theme, or both with the reader's choice. Without it the page's properties count. */
  readonly theme?: Theme | "both";
  /** `@font-face` rules of the house's face, for an SVG that is looked at where the face is not installed. */
  readonly faces?: string;
  /** What a screen reader says of the whole. */
  readonly label?: string;
}

/** A drawing as the text of an SVG. Classes as in style.ts; colours from custom properties. */
export function svgText(drawing: Drawing, options: SvgOptions = {}): string {
  const { sheet } = drawing;
  const prefix = options.prefix ?? "d";
  const clips: string[] = [];
  const body = drawing.parts.map((part) => primitiveText(part, { pen: sheet.pen, prefix, clips })).join("");
  const label = options.label === undefined ? "" : ` role="img" aria-label="${escaped(options.label)}"`;
  const unit = sheet.pen === 1 ? "" : "mm";
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${n(sheet.width)} ${n(sheet.height)}" ` +
    `width="${n(sheet.width)}${unit}" height="${n(sheet.height)}${unit}"${label}>` +
    `<style>${options.faces ?? ""}${styleText(options.theme)}${DRAWING_CSS}</style>` +
    `<defs>${hatchText(prefix, sheet.pen)}${clips.join("")}</defs>${body}</svg>`
  );
}

function styleText(theme: SvgOptions["theme"]): string {
  if (theme === undefined) return "";
  if (theme !== "both") return `svg{${tokenCss(theme)}}`;
  return `svg{${tokenCss("light")}}@media (prefers-color-scheme:dark){svg{${tokenCss("dark")}}}`;
}

/** The hatch patterns as SVG, for a page's own defs too. */
export const hatchText = (prefix: string, pen: number): string =>
  (Object.keys(HATCHES) as (keyof typeof HATCHES)[])
    .map((hatch) => {
      const { pitch, turn, width, ink } = HATCHES[hatch];
      const size = n(pitch * pen);
      return (
        `<pattern id="${hatchId(prefix, hatch)}" width="${size}" height="${size}" patternUnits="userSpaceOnUse" ` +
        `patternTransform="rotate(${turn})"><line x1="0" y1="0" x2="0" y2="${size}" class="${CLASSES.ink(ink)}" ` +
        `stroke-width="${n(width * pen)}"/></pattern>`
      );
    })
    .join("");

interface Pen {
  readonly pen: number;
  readonly prefix: string;
  readonly clips: string[];
}

function primitiveText(primitive: Primitive, to: Pen): string {
  const classes = (...names: string[]): string =>
    `class="${[...names, CLASSES.layer(primitive.layer)].join(" ")}"${
      primitive.meaning === undefined ? "" : ` data-meaning="${escaped(primitive.meaning)}"`
    }`;
  switch (primitive.shape) {
    case "line":
      return `<path d="${pathText(primitive.path)}" ${classes(
        CLASSES.line,
        CLASSES.ink(primitive.ink),
        CLASSES.weight(primitive.weight),
        CLASSES.dash(primitive.dash),
      )}${strokeText(primitive, to.pen)}/>`;
    case "area": {
      const d = pathText(primitive.path);
      const outline = classes(
        CLASSES.area,
        CLASSES.fill(primitive.fill),
        CLASSES.ink(primitive.ink),
        CLASSES.weight(primitive.weight),
        CLASSES.dash(primitive.dash),
      );
      const solid = `<path d="${d}" fill-rule="evenodd" ${outline}${strokeText(primitive, to.pen)}/>`;
      if (!primitive.hatch) return solid;
      return `${solid}<path d="${d}" fill-rule="evenodd" fill="url(#${hatchId(to.prefix, primitive.hatch)})" stroke="none"/>`;
    }
    case "text":
      return `<text x="${n(primitive.at.x)}" y="${n(primitive.at.y)}" ${classes(
        CLASSES.text,
        CLASSES.ink(primitive.ink),
        CLASSES.size(primitive.size),
        ...(primitive.bold ? [CLASSES.bold] : []),
        ...(primitive.halo === "none" ? [] : [CLASSES.halo(primitive.halo)]),
      )}${textStyle(primitive, to.pen)}>${wordsText(primitive.text)}</text>`;
    case "group": {
      const clip = primitive.clip ? ` clip-path="url(#${clipId(primitive.clip, to)})"` : "";
      const label = primitive.label === undefined ? "" : ` role="img" aria-label="${escaped(primitive.label)}"`;
      const body = primitive.parts.map((part) => primitiveText(part, to)).join("");
      return `<g ${classes(CLASSES.group)}${label}${clip}>${body}</g>`;
    }
  }
}

function clipId(clip: Box, { prefix, clips }: Pen): string {
  const id = `${prefix}-clip-${clips.length}`;
  clips.push(
    `<clipPath id="${id}"><rect x="${n(clip.x)}" y="${n(clip.y)}" width="${n(clip.width)}" height="${n(clip.height)}"/></clipPath>`,
  );
  return id;
}

function strokeText(
  { ink, weight, dash }: { ink: string; weight: keyof typeof WEIGHTS; dash: keyof typeof DASHES },
  pen: number,
): string {
  if (ink === "none") return "";
  const dashes = DASHES[dash].map((length) => n(length * pen)).join(" ");
  return ` stroke-width="${n(WEIGHTS[weight] * pen)}"${dashes === "" ? "" : ` stroke-dasharray="${dashes}"`}`;
}

function textStyle(primitive: TextPrimitive, pen: number): string {
  const type = TYPES[primitive.size];
  const anchor = primitive.anchor === "start" ? "" : ` text-anchor="${primitive.anchor}"`;
  const turn =
    primitive.turn === 0
      ? ""
      : ` transform="rotate(${n((primitive.turn * 180) / Math.PI)} ${n(primitive.at.x)} ${n(primitive.at.y)})"`;
  const halo = primitive.halo === "none" ? "" : ` stroke-width="${n(HALO * pen)}"`;
  return ` font-size="${n(type.size * pen)}" font-weight="${primitive.bold ? type.boldWeight : type.weight}"${halo}${anchor}${turn}`;
}

const wordsText = (words: string): string =>
  textParts(words)
    .map(({ text, fraction, isBehindWhole }) => {
      if (!fraction) return escaped(text);
      const gap = isBehindWhole ? `<tspan font-size="${GAP_SIZE}em"> </tspan>` : "";
      return `${gap}<tspan class="${CLASSES.fraction}">${text}</tspan>`;
    })
    .join("");

/** The `d` of a path. */
export const pathText = (path: readonly PathStep[]): string => path.map(stepText).join("");

function stepText(step: PathStep): string {
  switch (step.to) {
    case "move":
      return `M${n(step.at.x)} ${n(step.at.y)}`;
    case "line":
      return `L${n(step.at.x)} ${n(step.at.y)}`;
    case "curve":
      return `C${n(step.c1.x)} ${n(step.c1.y)} ${n(step.c2.x)} ${n(step.c2.y)} ${n(step.at.x)} ${n(step.at.y)}`;
    case "close":
      return "Z";
  }
}

/** To a hundredth of a sheet unit, never `-0`. */
function n(value: number): string {
  const rounded = Math.round(value * 100) / 100;
  return String(rounded === 0 ? 0 : rounded);
}

const ESCAPES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };
const escaped = (words: string): string => words.replace(/[&<>"]/g, (mark) => ESCAPES[mark] ?? mark);
