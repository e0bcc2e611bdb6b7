import {
  type Box,
  DASHES,
  FRACTION_SIZE,
  GAP_SIZE,
  HALO,
  HATCHES,
  type Hatch,
  type Ink,
  type PathStep,
  type Primitive,
  type TextPrimitive,
  TYPES,
  textParts,
  WEIGHTS,
} from "@armwright/drawing";
import { DEGREE } from "@armwright/engine";
import PDFDocument from "pdfkit";
import { fonts } from "./fonts.ts";
import { type Leaf, PEN } from "./leaf.ts";

type Pdf = InstanceType<typeof PDFDocument>;

export interface PdfFacts {
  readonly title: string;
  readonly subject: string;
  /** The one thing that two books of the same car may differ in. */
  readonly date: Date;
}

/** Points of the page description a mm. */
const POINTS = 72 / 25.4;

/**
 * Leaves as the bytes of a PDF: vectors, text that can be selected, its faces embedded. The same leaves and facts give the
 * same bytes.
 */
export function writePdf(leaves: readonly Leaf[], facts: PdfFacts): Promise<Uint8Array> {
  const pdf = new PDFDocument({
    autoFirstPage: false,
    compress: true,
    lang: "en-GB",
    displayTitle: true,
    info: {
      Title: facts.title,
      Subject: facts.subject,
      Creator: "Armwright",
      Producer: "Armwright",
      CreationDate: facts.date,
      ModDate: facts.date,
    },
  });
  const chunks: Uint8Array[] = [];
  const done = new Promise<Uint8Array>((resolve, reject) => {
    pdf.on("data", (chunk: Uint8Array) => chunks.push(chunk));
    pdf.on("end", () => resolve(joined(chunks)));
    pdf.on("error", reject);
  });
  const faces = fonts();
  for (const name of ["regular", "medium", "bold", "signs"] as const) {
    pdf.registerFont(name, Buffer.from(faces[name]));
    layOnce(pdf, name);
  }
  for (const leaf of leaves) {
    pdf.addPage({ size: [leaf.page.width * POINTS, leaf.page.height * POINTS], margin: 0 });
    pdf.outline.addItem(leaf.title);
    pdf.save();
    pdf.scale(POINTS);
    for (const part of leaf.parts) draw(pdf, part);
    pdf.restore();
  }
  pdf.end();
  return done;
}

interface LaidFace {
  layoutRun(text: string, features?: unknown): object;
}

/**
 * The writer lays a text out anew for its width, for its halo and for itself, wherever it asks for features of the face: here
 * each text of a face is laid out once. Its typings do not tell of the face it has chosen; where that is kept otherwise, texts are laid out as often as it likes.
 */
function layOnce(pdf: Pdf, name: string): void {
  const { _font: face } = pdf.font(name) as unknown as { readonly _font?: LaidFace };
  if (!face?.layoutRun) return;
  const laid = new Map<string, object>();
  const layOut = face.layoutRun.bind(face);
  face.layoutRun = (text, features) => {
    const key = `${JSON.stringify(features)} ${text}`;
    const run = laid.get(key) ?? layOut(text, features);
    laid.set(key, run);
    return run;
  };
}

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(chunks.reduce((length, chunk) => length + chunk.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}

/** Black ink on white paper: everything has to survive a black and white print with grease on it. */
const INK: Readonly<Record<Exclude<Ink, "none">, string>> = {
  ink: "#000000",
  "ink-2": "#2B2B2B",
  pencil: "#6A6A6A",
  stop: "#B3271A",
  hold: "#000000",
  "on-accent": "#FFFFFF",
  grid: "#D8D8D8",
  "grid-0": "#8C8C8C",
  paper: "#FFFFFF",
  blade: "#FFFFFF",
};

function draw(pdf: Pdf, primitive: Primitive): void {
  switch (primitive.shape) {
    case "line":
      if (primitive.ink === "none") return;
      trace(pdf, primitive.path);
      stroke(pdf, primitive);
      return;
    case "area": {
      const { fill, ink, hatch, path } = primitive;
      if (fill !== "none") {
        trace(pdf, path);
        pdf.fillColor(INK[fill]).fill("even-odd");
      }
      if (hatch) hatched(pdf, path, hatch);
      if (ink !== "none") {
        trace(pdf, path);
        stroke(pdf, primitive);
      }
      return;
    }
    case "text":
      write(pdf, primitive);
      return;
    case "group":
      pdf.save();
      if (primitive.clip) {
        const { x, y, width, height } = primitive.clip;
        pdf.rect(x, y, width, height).clip();
      }
      for (const part of primitive.parts) draw(pdf, part);
      pdf.restore();
  }
}

function trace(pdf: Pdf, path: readonly PathStep[]): void {
  for (const step of path) {
    switch (step.to) {
      case "move":
        pdf.moveTo(step.at.x, step.at.y);
        break;
      case "line":
        pdf.lineTo(step.at.x, step.at.y);
        break;
      case "curve":
        pdf.bezierCurveTo(step.c1.x, step.c1.y, step.c2.x, step.c2.y, step.at.x, step.at.y);
        break;
      case "close":
        pdf.closePath();
    }
  }
}

function stroke(
  pdf: Pdf,
  { ink, weight, dash }: { ink: Ink; weight: keyof typeof WEIGHTS; dash: keyof typeof DASHES },
): void {
  if (ink === "none") return;
  const dashes = DASHES[dash].map((length) => length * PEN);
  pdf
    .lineWidth(WEIGHTS[weight] * PEN)
    .lineJoin("round")
    .lineCap(dash === "dots" || (dash === "solid" && weight !== "thin" && weight !== "hair") ? "round" : "butt");
  // The typings know one length for a dash; the program takes a list, as the page description does.
  if (dashes.length > 0) pdf.dash(dashes as unknown as number, {});
  else pdf.undash();
  pdf.strokeColor(INK[ink]).stroke();
  pdf.undash();
}

/** Parallel lines across the path's box, clipped to the path. */
function hatched(pdf: Pdf, path: readonly PathStep[], hatch: Hatch): void {
  const { pitch, turn, width, ink } = HATCHES[hatch];
  if (ink === "none") return;
  const box = boxOf(path);
  const reach = Math.hypot(box.width, box.height) / 2 + pitch;
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  const angle = (turn * Math.PI) / 180;
  const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
  const step = pitch * PEN;
  pdf.save();
  trace(pdf, path);
  pdf.clip("even-odd");
  // Counted from the paper's own corner, so that neighbouring areas' lines meet.
  const phase = middle.x * dx + middle.y * dy;
  const first = Math.ceil((phase - reach) / step) * step - phase;
  for (let off = first; off <= reach; off += step) {
    const [x, y] = [middle.x + off * dx, middle.y + off * dy];
    pdf.moveTo(x - dy * -reach, y - dx * reach).lineTo(x + dy * -reach, y + dx * reach);
  }
  pdf
    .lineWidth(width * PEN)
    .strokeColor(INK[ink])
    .stroke();
  pdf.restore();
}

function boxOf(path: readonly PathStep[]): Box {
  const spots = path.flatMap((step) =>
    step.to === "close" ? [] : step.to === "curve" ? [step.c1, step.c2, step.at] : [step.at],
  );
  const xs = spots.map(({ x }) => x);
  const ys = spots.map(({ y }) => y);
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

/** Letters that the house's face has: plain Latin with its accents, and these. */
const IN_FACE =
  /^[\u0020-\u007e\u00a0-\u00ff\u2013\u2014\u2018\u2019\u201c\u201d\u2022\u2026\u2032\u2033\u2044\u2191\u2193\u2212]$/u;

interface Run {
  readonly text: string;
  readonly font: "regular" | "medium" | "bold" | "signs";
  readonly size: number;
  readonly features: PDFKit.Mixins.OpenTypeFeatures[];
}

function write(pdf: Pdf, primitive: TextPrimitive): void {
  if (primitive.ink === "none" || primitive.text === "") return;
  const runs = runsOf(primitive);
  const widths = runs.map((run) => {
    pdf.font(run.font, run.size);
    return pdf.widthOfString(run.text, { features: run.features });
  });
  const whole = widths.reduce((sum, width) => sum + width, 0);
  const start = primitive.anchor === "start" ? 0 : primitive.anchor === "middle" ? -whole / 2 : -whole;
  pdf.save();
  pdf.translate(primitive.at.x, primitive.at.y);
  if (primitive.turn !== 0) pdf.rotate(primitive.turn / DEGREE);
  const set = (isHalo: boolean): void => {
    let x = start;
    runs.forEach((run, index) => {
      pdf.font(run.font, run.size);
      pdf.text(run.text, x, 0, {
        baseline: "alphabetic",
        lineBreak: false,
        features: run.features,
        ...(isHalo && { stroke: true, fill: true }),
      });
      x += widths[index]!;
    });
  };
  if (primitive.halo !== "none") {
    pdf
      .lineWidth(HALO * PEN)
      .lineJoin("round")
      .strokeColor(INK.paper)
      .fillColor(INK.paper);
    set(true);
  }
  pdf.fillColor(INK[primitive.ink]);
  set(false);
  pdf.restore();
}

function runsOf({ text, size, bold }: TextPrimitive): Run[] {
  const type = TYPES[size];
  const weight = bold ? type.boldWeight : type.weight;
  const face = weight >= 600 ? "bold" : weight >= 500 ? "medium" : "regular";
  return textParts(text).flatMap((part): Run[] => {
    if (part.fraction) {
      const set: Run = {
        text: part.text,
        font: face,
        size: type.size * FRACTION_SIZE * PEN,
        features: ["frac", "tnum"],
      };
      // A space that is there when the text is selected too.
      return part.isBehindWhole
        ? [{ text: " ", font: face, size: type.size * GAP_SIZE * PEN, features: [] }, set]
        : [set];
    }
    return spans(part.text).map(
      ({ words, isInFace }): Run => ({
        text: words,
        font: isInFace ? face : "signs",
        size: type.size * PEN * (isInFace ? 1 : 0.92),
        features: isInFace ? ["tnum"] : [],
      }),
    );
  });
}

/** A text cut where the face that has its letters changes. */
function spans(words: string): { readonly words: string; readonly isInFace: boolean }[] {
  const cut: { words: string; isInFace: boolean }[] = [];
  for (const letter of words) {
    const isInFace = IN_FACE.test(letter);
    const last = cut.at(-1);
    if (last?.isInFace === isInFace) last.words += letter;
    else cut.push({ words: letter, isInFace });
  }
  return cut;
}
