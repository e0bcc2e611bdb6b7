import {
  type AreaPrimitive,
  CLASSES,
  DASHES,
  GAP_SIZE,
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

/** What stands on the page for a primitive: nothing is read back from the page, which would cost more than remembering. */
interface Painted {
  readonly element: SVGElement;
  readonly put: Map<string, string | undefined>;
  readonly children: Painted[];
  part: Primitive | null;
  pen: number;
}

const roots = new WeakMap<SVGElement, Painted>();

/**
 * Makes the children of an SVG element those of the drawing, changing only what differs from what was painted before:
 * while a point is dragged most of a drawing is new numbers in the same elements. `pen`: sheet units a px of the look.
 */
export function paint(parent: SVGElement, parts: readonly Primitive[], pen: number): void {
  let root = roots.get(parent);
  if (!root) {
    parent.replaceChildren();
    root = painted(parent);
    roots.set(parent, root);
  }
  paintChildren(root, parts, pen);
}

const painted = (element: SVGElement): Painted => ({ element, put: new Map(), children: [], part: null, pen: 0 });

function paintChildren(parent: Painted, parts: readonly Primitive[], pen: number): void {
  for (let i = 0; i < parts.length; i += 1) paintPart(childFor(parent, i, parts), parts[i]!, pen);
  for (const { element } of parent.children.splice(parts.length)) element.remove();
}

/** How far ahead a primitive's own element is looked for, where others came or went before it. */
const LOOK_AHEAD = 8;

/** The element for the primitive at `index`: its own one of before where that is near, so that its neighbours keep theirs. */
function childFor(parent: Painted, index: number, parts: readonly Primitive[]): Painted {
  const { children } = parent;
  const part = parts[index]!;
  const there = children[index];
  if (!there || isAkin(there.part, part)) return there ?? insert(parent, index, part);
  const most = Math.min(children.length, index + LOOK_AHEAD);
  for (let i = index + 1; i < most; i += 1) {
    const later = children[i]!;
    if (!isAkin(later.part, part)) continue;
    for (const { element } of children.splice(index, i - index)) element.remove();
    return later;
  }
  return insert(parent, index, part);
}

function isAkin(before: Primitive | null, part: Primitive): boolean {
  if (before === null || before.shape !== part.shape || before.layer !== part.layer) return false;
  if (before.meaning !== part.meaning || before.shape === "group" || part.shape === "group") {
    return before.meaning === part.meaning;
  }
  return before.ink === part.ink;
}

function insert(parent: Painted, index: number, part: Primitive): Painted {
  const tag = part.shape === "group" ? "g" : part.shape === "text" ? "text" : "path";
  const made = painted(document.createElementNS(SVG, tag) as SVGElement);
  parent.element.insertBefore(made.element, parent.children[index]?.element ?? null);
  parent.children.splice(index, 0, made);
  return made;
}

function paintPart(to: Painted, part: Primitive, pen: number): void {
  if (to.part === part && to.pen === pen) return;
  const same = to.pen === pen ? to.part : null;
  to.part = part;
  to.pen = pen;
  if (same?.meaning !== part.meaning || !same) put(to, "data-meaning", part.meaning);
  switch (part.shape) {
    case "line":
    case "area":
      if (!same || !hasSameLook(same, part)) paintLook(to, part, pen);
      if (!same || (same.shape !== "line" && same.shape !== "area") || !isSamePath(same.path, part.path)) {
        put(to, "d", pathText(part.path));
      }
      return;
    case "text":
      if (same?.shape !== "text" || !isSameText(same, part)) paintText(to, part, pen);
      return;
    case "group":
      put(to, "class", `${CLASSES.group} ${CLASSES.layer(part.layer)}`);
      put(to, "role", part.label === undefined ? undefined : "img");
      put(to, "aria-label", part.label);
      paintGroup(to, part.parts, part.clip, pen);
      return;
  }
}

type Drawn = LinePrimitive | AreaPrimitive;

function paintLook(element: Painted, part: Drawn, pen: number): void {
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
  to: Painted,
  parts: readonly Primitive[],
  clip: { readonly x: number; readonly y: number; readonly width: number; readonly height: number } | undefined,
  pen: number,
): void {
  const isFramed = to.children[0]?.element.localName === "svg";
  if (isFramed !== (clip !== undefined)) for (const { element } of to.children.splice(0)) element.remove();
  if (!clip) {
    paintChildren(to, parts, pen);
    return;
  }
  // A nested svg clips by itself and needs no id.
  let frame = to.children[0];
  if (!frame) {
    frame = painted(document.createElementNS(SVG, "svg") as SVGElement);
    to.element.append(frame.element);
    to.children.push(frame);
  }
  put(frame, "overflow", "hidden");
  for (const side of ["x", "y", "width", "height"] as const) put(frame, side, short(clip[side]));
  put(frame, "viewBox", `${short(clip.x)} ${short(clip.y)} ${short(clip.width)} ${short(clip.height)}`);
  paintChildren(frame, parts, pen);
}

function paintText(to: Painted, part: TextPrimitive, pen: number): void {
  const type = TYPES[part.size];
  put(
    to,
    "class",
    `${CLASSES.text} ${CLASSES.ink(part.ink)} ${CLASSES.size(part.size)}${part.halo === "none" ? "" : ` ${CLASSES.halo(part.halo)}`}`,
  );
  put(to, "x", short(part.at.x));
  put(to, "y", short(part.at.y));
  put(to, "text-anchor", part.anchor === "start" ? undefined : part.anchor);
  put(to, "font-size", short(type.size * pen));
  put(to, "font-weight", String(part.bold ? type.boldWeight : type.weight));
  put(to, "stroke-width", part.halo === "none" ? undefined : short(HALO * pen));
  const turn = (part.turn * 180) / Math.PI;
  put(to, "transform", turn === 0 ? undefined : `rotate(${short(turn)} ${short(part.at.x)} ${short(part.at.y)})`);
  if (to.put.get("text") === part.text) return;
  to.put.set("text", part.text);
  to.element.replaceChildren(
    ...textParts(part.text).flatMap(({ text, fraction, isBehindWhole }): Node[] => {
      if (!fraction) return [document.createTextNode(text)];
      const span = spanOf(text);
      span.setAttribute("class", CLASSES.fraction);
      if (!isBehindWhole) return [span];
      const gap = spanOf(" ");
      gap.setAttribute("font-size", `${GAP_SIZE}em`);
      return [gap, span];
    }),
  );
}

function spanOf(words: string): SVGTSpanElement {
  const span = document.createElementNS(SVG, "tspan");
  span.textContent = words;
  return span;
}

function put({ element, put: known }: Painted, name: string, value: string | undefined): void {
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
