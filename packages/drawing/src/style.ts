import type { Dash, Hatch, Ink, TextPrimitive, Weight } from "./primitive.ts";

/**
 * How each primitive looks: the one source for screen, SVG and paper. Lengths are in px of the look; times `sheet.pen` they
 * are sheet units.
 */
export type Theme = "light" | "dark";

type Token = Exclude<Ink, "none"> | "paper-2" | "rule";

export const TOKENS: Readonly<Record<Theme, Readonly<Record<Token, string>>>> = {
  light: {
    paper: "#F3EEE2",
    "paper-2": "#EAE3D3",
    blade: "#FBF8F0",
    ink: "#19242B",
    "ink-2": "#4B555B",
    pencil: "#77766B",
    stop: "#B3271A",
    hold: "#3A35B8",
    "on-accent": "#FBF8F0",
    grid: "#CDD6CB",
    "grid-0": "#76907B",
    rule: "#19242B",
  },
  dark: {
    paper: "#0F2234",
    "paper-2": "#152C41",
    blade: "#19344B",
    ink: "#E9E6DA",
    "ink-2": "#AFBDC6",
    pencil: "#8299AB",
    stop: "#FF8B6E",
    hold: "#B5AEFF",
    "on-accent": "#0F2234",
    grid: "#25445D",
    "grid-0": "#6288A3",
    rule: "#AFBDC6",
  },
};

export const WEIGHTS: Readonly<Record<Weight, number>> = {
  rim: 4.4,
  outline: 2.4,
  curve: 2.2,
  visible: 1.6,
  ghost: 1.25,
  thin: 1,
  hair: 0.7,
};

export const DASHES: Readonly<Record<Dash, readonly number[]>> = {
  solid: [],
  ghost: [12, 3, 2.5, 3, 2.5, 3],
  centre: [14, 3, 3, 3],
  "keep-out": [7, 3],
  construction: [2, 3],
  hinge: [9, 2.5, 2.5, 2.5],
  dots: [0.1, 3.6],
  short: [3, 3],
};

/** Parallel lines: `pitch` apart, `turn` in degrees clockwise from upright, drawn in `ink`. */
export interface HatchStyle {
  readonly pitch: number;
  readonly turn: number;
  readonly width: number;
  readonly ink: Ink;
}

export const HATCHES: Readonly<Record<Hatch, HatchStyle>> = {
  cut: { pitch: 5, turn: 45, width: 0.8, ink: "ink" },
  "keep-out": { pitch: 11, turn: -45, width: 0.9, ink: "pencil" },
  "out-of-reach": { pitch: 5.5, turn: 45, width: 1, ink: "stop" },
  uncertain: { pitch: 4, turn: -45, width: 0.7, ink: "ink-2" },
};

export interface TypeStyle {
  readonly size: number;
  readonly weight: number;
  readonly boldWeight: number;
}

export const TYPES: Readonly<Record<TextPrimitive["size"], TypeStyle>> = {
  label: { size: 14, weight: 400, boldWeight: 600 },
  text: { size: 15, weight: 400, boldWeight: 600 },
  reading: { size: 17, weight: 500, boldWeight: 600 },
  title: { size: 21, weight: 500, boldWeight: 600 },
  result: { size: 30, weight: 500, boldWeight: 600 },
};

export const FACE = '"National Park", "DejaVu Sans Condensed", "Segoe UI", system-ui, sans-serif';

/** A fraction is set this much larger than the digits before it, in a span of class `q`. */
export const FRACTION_SIZE = 1.28;
/**
 * Size of the space between a whole number and its fraction, of the text's size: narrow where the fraction is set as one, and
 * enough where the reader's machine lacks the face and sets `15 1⁄16` in full digits, which must never read as 151⁄16.
 */
export const GAP_SIZE = 0.6;
/** Width of the halo's edge round a glyph. */
export const HALO = 5;

/** Class names, the same in SVG text and on the page. `i-` stroke or text colour, `f-` fill, `h-` hatch, `t-` size. */
export const CLASSES = {
  line: "d-line",
  area: "d-area",
  text: "d-text",
  group: "d-group",
  bold: "bold",
  fraction: "q",
  layer: (layer: string): string => `l-${layer}`,
  ink: (ink: Ink): string => `i-${ink}`,
  fill: (ink: Ink): string => `f-${ink}`,
  weight: (weight: Weight): string => `w-${weight}`,
  dash: (dash: Dash): string => `dash-${dash}`,
  hatch: (hatch: Hatch): string => `h-${hatch}`,
  size: (size: TextPrimitive["size"]): string => `t-${size}`,
  halo: (halo: "paper" | "blade"): string => `halo-${halo}`,
} as const;

/** Ids of the hatch patterns, under a prefix of the page's own. */
export const hatchId = (prefix: string, hatch: Hatch): string => `${prefix}-${hatch}`;

export const INKS: readonly Ink[] = [
  "ink",
  "ink-2",
  "pencil",
  "stop",
  "hold",
  "on-accent",
  "grid",
  "grid-0",
  "paper",
  "blade",
];

/** The rules that go with the classes; colours come from custom properties of the names in TOKENS. */
export const DRAWING_CSS = [
  `.${CLASSES.line}{fill:none}`,
  `.${CLASSES.line},.${CLASSES.area}{stroke-linejoin:round}`,
  `.${CLASSES.weight("outline")},.${CLASSES.weight("rim")},.${CLASSES.weight("visible")},.${CLASSES.dash("dots")}{stroke-linecap:round}`,
  `.${CLASSES.dash("keep-out")},.${CLASSES.dash("hinge")},.${CLASSES.dash("short")}{stroke-linecap:butt}`,
  ...INKS.map((ink) => `.${CLASSES.ink(ink)}{stroke:var(--${ink})}`),
  `.${CLASSES.ink("none")}{stroke:none}`,
  ...INKS.map((ink) => `.${CLASSES.fill(ink)}{fill:var(--${ink})}`),
  `.${CLASSES.fill("none")}{fill:none}`,
  `.${CLASSES.text}{font-family:var(--face,${FACE});font-variant-numeric:tabular-nums lining-nums;stroke:none}`,
  ...INKS.map((ink) => `.${CLASSES.text}.${CLASSES.ink(ink)}{stroke:none;fill:var(--${ink})}`),
  ...(["paper", "blade"] as const).map(
    (halo) => `.${CLASSES.text}.${CLASSES.halo(halo)}{paint-order:stroke;stroke:var(--${halo});stroke-linejoin:round}`,
  ),
  `.${CLASSES.fraction}{font-feature-settings:"frac","tnum";font-size:${FRACTION_SIZE}em;line-height:0;letter-spacing:0}`,
].join("\n");

/** Custom properties of a theme, for a rule of the page or of a lone SVG. */
export const tokenCss = (theme: Theme): string =>
  Object.entries(TOKENS[theme])
    .map(([name, colour]) => `--${name}:${colour}`)
    .join(";");
