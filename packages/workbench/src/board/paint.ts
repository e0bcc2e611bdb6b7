import {
  type AreaPrimitive,
  CLASSES,
  DASHES,
  HALO,
  hatchId,
  type LinePrimitive,
  type PathStep,
  type Primitive,
  type TextPrimitive,
  TYPES,
  textParts,
  WEIGHTS,
} from "@armwright/drawing";

const SVG = "http://www.w3.org/2000/svg";

/** Hatch patterns are defined once on the page, under this prefix. */
export const HATCH_PREFIX = "hatch";

/**
 * Makes the children of an SVG element those of the drawing, changing only what differs from what was painted before:
 * while a point is dragged most of a drawing is new numbers in the same elements. `pen`: sheet units a px of the look.
 */
export function paint(parent: SVGElement, parts: readonly Primitive[], pen: number): void {
  for (let i = 0; i < parts.length; i += 1) paintPart(parent, i, parts[i]!, pen);
  while (parent.childNodes.length > parts.length) parent.lastChild?.remove();
}

function paintPart(parent: SVGElement, index: number, part: Primitive, pen: number): void {
  const tag = part.shape === "group" ? "g" : part.shape === "text" ? "text" : "path";
  const element = elementAt(parent, index, tag);
  const before = lastPainted.get(element);
  lastPainted.set(element, { part, pen });
  if (before?.part === part && before.pen === pen) return;
  const same = before && before.pen === pen ? before.part : undefined;
  if (same?.meaning !== part.meaning || !same) put(element, "data-meaning", part.meaning);
  switch (part.shape) {
    case "line":
    case "area":
      if (!same || !hasSameLook(same, part)) paintLook(element, part, pen);
      if (!same || (same.shape !== "line" && same.shape !== "area") || !isSamePath(same.path, part.path)) {
        put(element, "d", pathText(part.path));
      }
      return;
    case "text":
      if (same?.shape !== "text" || !isSameText(same, part)) paintText(element, part, pen);
      return;
    case "group":
      put(element, "class", `${CLASSES.group} ${CLASSES.layer(part.layer)}`);
      put(element, "role", part.label === undefined ? undefined : "img");
      put(element, "aria-label", part.label);
      paintGroup(element, part.parts, part.clip, pen);
      return;
  }
}

/** What an element was last painted from: most of a drawing stays as it is from one frame to the next. */
const lastPainted = new WeakMap<SVGElement, { readonly part: Primitive; readonly pen: number }>();

type Drawn = LinePrimitive | AreaPrimitive;

function paintLook(element: SVGElement, part: Drawn, pen: number): void {
  const isArea = part.shape === "area";
  const filled = isArea ? (part.hatch ? CLASSES.hatch(part.hatch) : CLASSES.fill(part.fill)) : "";
  const kind = isArea ? CLASSES.area : CLASSES.line;
  put(
    element,
    "class",
    `${kind} ${CLASSES.ink(part.ink)} ${filled} ${CLASSES.weight(part.weight)} ${CLASSES.dash(part.dash)}`,
  );
  put(element, "fill", isArea && part.hatch ? `url(#${hatchId(HATCH_PREFIX, part.hatch)})` : undefined);
  put(element, "fill-rule", isArea ? "evenodd" : undefined);
  const dash = DASHES[part.dash];
  put(element, "stroke-width", short(WEIGHTS[part.weight] * pen));
  put(element, "stroke-dasharray", dash.length === 0 ? undefined : dash.map((each) => short(each * pen)).join(" "));
}

function hasSameLook(a: Primitive, b: Drawn): boolean {
  if (a.shape !== b.shape || a.ink !== b.ink || a.weight !== b.weight || a.dash !== b.dash) return false;
  return b.shape === "line" || (a.shape === "area" && a.fill === b.fill && a.hatch === b.hatch);
}

const isSameText = (a: TextPrimitive, b: TextPrimitive): boolean =>
  a.text === b.text &&
  a.at.x === b.at.x &&
  a.at.y === b.at.y &&
  a.ink === b.ink &&
  a.bold === b.bold &&
  a.size === b.size &&
  a.anchor === b.anchor &&
  a.turn === b.turn &&
  a.halo === b.halo;

function isSamePath(a: readonly PathStep[], b: readonly PathStep[]): boolean {
  if (a === b) return true;
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i += 1) if (!isSameStep(a[i]!, b[i]!)) return false;
  return true;
}

function isSameStep(a: PathStep, b: PathStep): boolean {
  if (a.to !== b.to) return false;
  if (a.to === "close" || b.to === "close") return true;
  if (a.at.x !== b.at.x || a.at.y !== b.at.y) return false;
  if (a.to !== "curve" || b.to !== "curve") return true;
  return a.c1.x === b.c1.x && a.c1.y === b.c1.y && a.c2.x === b.c2.x && a.c2.y === b.c2.y;
}

function paintGroup(
  element: SVGElement,
  parts: readonly Primitive[],
  clip: { readonly x: number; readonly y: number; readonly width: number; readonly height: number } | undefined,
  pen: number,
): void {
  if (!clip) {
    put(element, "clip-path", undefined);
    paint(element, parts, pen);
    return;
  }
  // A nested svg clips by itself and needs no id.
  const frame = elementAt(element, 0, "svg");
  while (element.childNodes.length > 1) element.lastChild?.remove();
  put(frame, "overflow", "hidden");
  for (const side of ["x", "y", "width", "height"] as const) put(frame, side, short(clip[side]));
  put(frame, "viewBox", `${short(clip.x)} ${short(clip.y)} ${short(clip.width)} ${short(clip.height)}`);
  paint(frame, parts, pen);
}

function paintText(element: SVGElement, part: TextPrimitive, pen: number): void {
  const type = TYPES[part.size];
  put(
    element,
    "class",
    `${CLASSES.text} ${CLASSES.ink(part.ink)} ${CLASSES.size(part.size)}${part.halo === "none" ? "" : ` ${CLASSES.halo(part.halo)}`}`,
  );
  put(element, "x", short(part.at.x));
  put(element, "y", short(part.at.y));
  put(element, "text-anchor", part.anchor === "start" ? undefined : part.anchor);
  put(element, "font-size", short(type.size * pen));
  put(element, "font-weight", String(part.bold ? type.boldWeight : type.weight));
  put(element, "stroke-width", part.halo === "none" ? undefined : short(HALO * pen));
  const turn = (part.turn * 180) / Math.PI;
  put(element, "transform", turn === 0 ? undefined : `rotate(${short(turn)} ${short(part.at.x)} ${short(part.at.y)})`);
  if (element.dataset["text"] === part.text) return;
  element.dataset["text"] = part.text;
  element.replaceChildren(
    ...textParts(part.text).map(({ text, fraction }) => {
      if (!fraction) return document.createTextNode(text);
      const span = document.createElementNS(SVG, "tspan");
      span.setAttribute("class", CLASSES.fraction);
      span.textContent = text;
      return span;
    }),
  );
}

function elementAt(parent: SVGElement, index: number, tag: string): SVGElement {
  const there = parent.childNodes[index];
  if (there instanceof SVGElement && there.localName === tag) return there;
  const made = document.createElementNS(SVG, tag) as SVGElement;
  if (there) there.replaceWith(made);
  else parent.append(made);
  return made;
}

/** What was last put on an element: reading it back from the page would cost more than remembering. */
const lastPut = new WeakMap<SVGElement, Map<string, string | undefined>>();

function put(element: SVGElement, name: string, value: string | undefined): void {
  let known = lastPut.get(element);
  if (!known) {
    known = new Map();
    lastPut.set(element, known);
  }
  if (known.get(name) === value) return;
  known.set(name, value);
  if (value === undefined) element.removeAttribute(name);
  else element.setAttribute(name, value);
}

function pathText(path: readonly PathStep[]): string {
  let text = "";
  for (const step of path) {
    switch (step.to) {
      case "move":
        text += `M${short(step.at.x)} ${short(step.at.y)}`;
        break;
      case "line":
        text += `L${short(step.at.x)} ${short(step.at.y)}`;
        break;
      case "curve":
        text += `C${short(step.c1.x)} ${short(step.c1.y)} ${short(step.c2.x)} ${short(step.c2.y)} ${short(step.at.x)} ${short(step.at.y)}`;
        break;
      case "close":
        text += "Z";
        break;
    }
  }
  return text;
}

/** A twentieth of a sheet unit is finer than the eye. */
const short = (value: number): string => String(Math.round(value * 20) / 20);
