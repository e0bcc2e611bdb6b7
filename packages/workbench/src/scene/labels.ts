import { textParts } from "@armwright/drawing";
import type { Vec3 } from "@armwright/engine";
import { hasFraction } from "../words/fractions.ts";
import type { Ball, Eye } from "./eye.ts";
import { AROUND, type Box } from "./label-room.ts";

/** Words pinned to a spot of the scene. */
export interface Label {
  readonly at: Vec3;
  readonly text: string;
  readonly detail?: string;
  /** `stop`: ring, leader and numbered pennant; `hold`: bracketed; `note`: with a leader; `quiet`: at the spot itself. */
  readonly kind: "stop" | "hold" | "note" | "quiet";
  /** In the pennant. */
  readonly order?: number;
  /** Draws a ring round the spot. */
  readonly ring?: boolean;
  /** Left out when looked at along this direction: all labels of a row would lie in one place. */
  readonly row?: Vec3;
}

const SVG = "http://www.w3.org/2000/svg";
const SHELF = 46;
const IN_ROW = 0.97;
/** At the foot of the canvas the page has its buttons, px. */
const FOOT = 44;
const GAP = 4;

interface Shown {
  label: Label;
  readonly element: HTMLElement;
  readonly leader: SVGPathElement;
  readonly ring: SVGCircleElement;
  width: number;
  height: number;
}

/** The labels over a canvas: HTML, so that words are words in every browser and zoom. Colours are the page's tokens. */
export class Labels {
  private readonly overlay: HTMLElement;
  private readonly lines: SVGSVGElement;
  private shown: readonly Shown[] = [];
  private readonly spot = { x: 0, y: 0, depth: 0 };
  private readonly hub = { x: 0, y: 0, depth: 0 };

  constructor(canvas: HTMLCanvasElement) {
    const page = canvas.ownerDocument;
    this.overlay = page.createElement("div");
    this.overlay.className = "scene-labels";
    // The same is told by findings, tape and the canvas's own name.
    this.overlay.setAttribute("aria-hidden", "true");
    style(this.overlay, { position: "absolute", overflow: "hidden", pointerEvents: "none", zIndex: "1" });
    this.lines = page.createElementNS(SVG, "svg");
    style(this.lines, { position: "absolute", inset: "0", width: "100%", height: "100%" });
    this.overlay.append(this.lines);
    canvas.after(this.overlay);
  }

  /** Lays the overlay over the canvas. */
  cover(canvas: HTMLCanvasElement): void {
    style(this.overlay, {
      left: `${canvas.offsetLeft}px`,
      top: `${canvas.offsetTop}px`,
      width: `${canvas.clientWidth}px`,
      height: `${canvas.clientHeight}px`,
    });
  }

  set(labels: readonly Label[]): void {
    // Words that are there already keep their elements, wherever their spots have gone to.
    const kept = new Map<string, Shown[]>();
    for (const each of this.shown) {
      const same = kept.get(keyOf(each.label));
      if (same) same.push(each);
      else kept.set(keyOf(each.label), [each]);
    }
    this.shown = labels.map((label) => {
      const old = kept.get(keyOf(label))?.shift();
      if (!old) return this.make(label);
      old.label = label;
      return old;
    });
    for (const same of kept.values()) {
      for (const { element, leader, ring } of same) for (const each of [element, leader, ring]) each.remove();
    }
  }

  /** Puts every label beside its spot, clear of those before it, and where there is room clear of the car's parts too. */
  place(eye: Eye, wheel: Ball | null, parts: readonly Box[]): void {
    const taken: Box[] = [];
    if (wheel) eye.spotOf(wheel.at, this.hub);
    for (const shown of this.shown) {
      const { label, element, leader, ring } = shown;
      if (shown.width === 0 && label.text !== "") {
        shown.width = element.offsetWidth;
        shown.height = element.offsetHeight;
      }
      eye.spotOf(label.at, this.spot);
      const { x, y } = this.spot;
      const isIn = x > -20 && y > -20 && x < eye.width + 20 && y < eye.height + 20 && !this.isBehind(label, eye, wheel);
      element.style.visibility = isIn ? "" : "hidden";
      leader.style.visibility = isIn && label.kind !== "quiet" && label.text !== "" ? "" : "hidden";
      ring.style.visibility = isIn && label.ring ? "" : "hidden";
      if (!isIn) continue;
      ring.setAttribute("cx", short(x));
      ring.setAttribute("cy", short(y));
      if (label.text === "") continue;
      const box = freeBox(label, x, y, shown, eye, taken, parts);
      if (!box) {
        element.style.visibility = "hidden";
        leader.style.visibility = "hidden";
        continue;
      }
      // Words that had to go elsewhere are led to what they name.
      if (label.kind === "quiet" && !isOver(box, x, y)) leader.style.visibility = "";
      taken.push(box);
      element.style.transform = `translate(${Math.round(box.x)}px, ${Math.round(box.y)}px)`;
      leader.setAttribute("d", leaderPath(x, y, box, label.ring ? 13 : 3));
    }
  }

  dispose(): void {
    this.overlay.remove();
  }

  /** A quiet label whose spot the wheel hides is left out, and a row of labels that is seen end on. */
  private isBehind({ kind, row }: Label, eye: Eye, wheel: Ball | null): boolean {
    if (row && Math.abs(row.x * eye.back.x + row.y * eye.back.y + row.z * eye.back.z) > IN_ROW) return true;
    if (kind !== "quiet" || !wheel || this.spot.depth > this.hub.depth) return false;
    return Math.hypot(this.spot.x - this.hub.x, this.spot.y - this.hub.y) < wheel.radius * eye.scale * 0.8;
  }

  private make(label: Label): Shown {
    const page = this.overlay.ownerDocument;
    const element = page.createElement("div");
    element.className = `scene-label scene-label-${label.kind}`;
    const ink = label.kind === "stop" ? "var(--stop)" : label.kind === "hold" ? "var(--hold)" : "var(--ink-2)";
    style(element, {
      position: "absolute",
      left: "0",
      top: "0",
      display: "flex",
      alignItems: "flex-start",
      gap: "6px",
      font: "500 var(--t-1, 0.875rem)/1.25 var(--face, system-ui, sans-serif)",
      color: ink,
      whiteSpace: "nowrap",
      textShadow: HALO,
    });
    if (label.kind === "stop") element.append(pennant(page, label.order ?? 0));
    const words = page.createElement("div");
    words.append(...set(page, label.text));
    if (label.kind === "stop" || label.kind === "hold") words.style.fontWeight = "600";
    if (label.detail !== undefined) {
      const detail = page.createElement("div");
      style(detail, { color: label.kind === "note" ? "var(--ink)" : ink, fontWeight: "500" });
      detail.append(...set(page, label.detail));
      words.append(detail);
    }
    element.append(words);
    this.overlay.append(element);
    const leader = page.createElementNS(SVG, "path");
    style(leader, { fill: "none", stroke: ink, strokeWidth: "1" });
    const ring = page.createElementNS(SVG, "circle");
    ring.setAttribute("r", "12");
    style(ring, { fill: "none", stroke: ink, strokeWidth: "2.4" });
    this.lines.append(leader, ring);
    return { label, element, leader, ring, width: 0, height: 0 };
  }
}

const HALO = [..."0123456789ab"]
  .map(
    (_, i) =>
      `${(2 * Math.cos((i * Math.PI) / 6)).toFixed(2)}px ${(2 * Math.sin((i * Math.PI) / 6)).toFixed(2)}px 1px var(--paper)`,
  )
  .join(", ");

/**
 * Where a label goes: to the side with more room, moved up or down past those that are there, clear of the parts where it
 * can be. A quiet one stays on its spot, or goes round it where the spot is taken, or is left out (null).
 */
function freeBox(
  label: Label,
  x: number,
  y: number,
  size: { width: number; height: number },
  eye: Eye,
  taken: readonly Box[],
  parts: readonly Box[],
): Box | null {
  const tries = label.kind === "quiet" ? quietPlaces(label, x, y, size) : besidePlaces(label, x, y, size, eye);
  const inView = tries.filter(
    (box) => box.x > 6 && box.y > 6 && box.x + box.width < eye.width - 6 && box.y + box.height < eye.height - FOOT,
  );
  const free = inView.filter((box) => taken.every((other) => !overlaps(box, other)));
  const clear = free.find((box) => parts.every((part) => !overlaps(box, part)));
  if (clear || label.kind === "quiet") return clear ?? null;
  return free[0] ?? { ...tries[0]!, y: Math.min(eye.height - size.height - 6, Math.max(6, y - 20)) };
}

/** On the spot itself; words with a line beneath them also round it. */
function quietPlaces(
  { detail }: Label,
  x: number,
  y: number,
  { width, height }: { width: number; height: number },
): Box[] {
  const round = detail === undefined ? [] : AROUND;
  return [{ x: 0, y: 0 }, ...round].map((by) => ({
    x: x + by.x - (by.x > 4 ? 0 : by.x < -4 ? width : width / 2),
    y: y + by.y - height / 2,
    width,
    height,
  }));
}

function besidePlaces(
  label: Label,
  x: number,
  y: number,
  { width, height }: { width: number; height: number },
  eye: Eye,
): Box[] {
  // Clear of the arrows of what is held.
  const near = label.kind === "hold" ? SHELF + 22 : SHELF;
  const isRightSide = x < eye.width / 2;
  const sides = [near, near + 64, near + 140].flatMap((shelf) => {
    const right = x + shelf;
    const left = x - shelf - width;
    return (isRightSide ? [right, left] : [left, right]).filter((at) => at > 6 && at + width < eye.width - 6);
  });
  const over = Math.min(eye.width - width - 8, Math.max(8, x - width / 2));
  const middle = sides.length > 0 ? y - 26 : y - 34 - height / 2;
  return (sides.length > 0 ? sides : [over]).flatMap((at) =>
    Array.from({ length: 24 }, (_, step) => {
      const shift = (step % 2 === 0 ? -1 : 1) * Math.ceil(step / 2) * 14;
      return { x: at, y: middle - height / 2 + shift, width, height };
    }),
  );
}

const isOver = (box: Box, x: number, y: number): boolean =>
  x >= box.x && x <= box.x + box.width && y >= box.y - 1 && y <= box.y + box.height + 1;

/** From the spot to the label's shelf; straight up or down to a label that lies over or under its spot. */
function leaderPath(x: number, y: number, box: Box, from: number): string {
  if (x > box.x && x < box.x + box.width) {
    const isAbove = box.y + box.height / 2 < y;
    return `M${short(x)} ${short(y + (isAbove ? -from : from))}V${short(isAbove ? box.y + box.height + 2 : box.y - 2)}`;
  }
  const isRight = box.x > x;
  const edge = isRight ? box.x - GAP : box.x + box.width + GAP;
  const shelf = box.y + Math.min(14, box.height / 2);
  const dx = edge + (isRight ? -12 : 12) - x;
  const dy = shelf - y;
  const size = Math.hypot(dx, dy) || 1;
  const start = `M${short(x + (dx / size) * from)} ${short(y + (dy / size) * from)}`;
  return `${start}L${short(x + dx)} ${short(shelf)}H${short(edge)}`;
}

const overlaps = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width + 6 && b.x < a.x + a.width + 6 && a.y < b.y + b.height + 2 && b.y < a.y + a.height + 2;

/** A filled flag with its order; a bare one where it has none. */
function pennant(page: Document, order: number): Element {
  const svg = page.createElementNS(SVG, "svg");
  svg.setAttribute("viewBox", "0 0 24 18");
  style(svg, { width: "24px", height: "18px", flex: "none" });
  const flag = page.createElementNS(SVG, "path");
  flag.setAttribute("d", "M0 9L6 0H24V18H6Z");
  style(flag, { fill: "var(--stop)" });
  svg.append(flag);
  if (order > 0) {
    const number = page.createElementNS(SVG, "text");
    number.setAttribute("x", "14");
    number.setAttribute("y", "14");
    number.setAttribute("text-anchor", "middle");
    number.textContent = String(order);
    style(number, { fill: "var(--on-accent)", fontSize: "14px", fontWeight: "600", textShadow: "none" });
    svg.append(number);
  }
  return svg;
}

/** Words with their fractions set as fractions. */
function set(page: Document, text: string): Node[] {
  if (!hasFraction(text)) return [page.createTextNode(text)];
  return textParts(text).map((part) => {
    if (!part.fraction) return page.createTextNode(part.text);
    const span = page.createElement("span");
    span.className = part.isBehindWhole ? "q behind" : "q";
    span.textContent = part.text;
    return span;
  });
}

const keyOf = ({ kind, text, detail, order, ring }: Label): string =>
  `${kind}|${order ?? ""}|${ring ?? ""}|${text}|${detail ?? ""}`;

const style = (element: HTMLElement | SVGElement, styles: Partial<CSSStyleDeclaration>): void => {
  Object.assign(element.style, styles);
};

const short = (value: number): string => String(Math.round(value * 10) / 10);
