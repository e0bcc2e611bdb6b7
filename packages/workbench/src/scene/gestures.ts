import type { Axis } from "./types.ts";

/** What the hand may ask of the scene. Places are CSS px from the canvas's upper left corner. */
export interface GestureTargets {
  /** Begins a drag of a point at this place; false where there is none. */
  grab(x: number, y: number): boolean;
  drag(x: number, y: number): void;
  release(): void;
  giveUp(): void;
  orbit(right: number, up: number): void;
  pan(right: number, down: number): void;
  zoom(factor: number, x: number, y: number): void;
  /** A touch that did not move. */
  tap(x: number, y: number): void;
  hover(x: number, y: number): void;
  nudge(axis: Axis, sign: 1 | -1): boolean;
  chooseNext(step: 1 | -1): void;
  fit(): void;
}

const TURN = 0.008;
const STILL = 4;
const KEY_TURN = Math.PI / 18;
const KEY_ZOOM = 1.2;

/**
 * Mouse, touch and keys. One finger or the left button turns the view, or drags the point it began on; right or middle
 * button, shift, or a second finger moves it; the wheel and + − come nearer. A pinch works but nothing needs one.
 */
export function listen(canvas: HTMLCanvasElement, targets: GestureTargets): () => void {
  const down = new Map<number, { x: number; y: number }>();
  let doing: "nothing" | "drag" | "orbit" | "pan" = "nothing";
  let travelled = 0;
  const placeOf = (event: PointerEvent | WheelEvent) => {
    const box = canvas.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };

  const onDown = (event: PointerEvent): void => {
    if (event.pointerType === "mouse" && event.button > 2) return;
    canvas.focus({ preventScroll: true });
    canvas.setPointerCapture(event.pointerId);
    const at = placeOf(event);
    down.set(event.pointerId, at);
    if (down.size > 1) {
      if (doing === "drag") targets.giveUp();
      doing = "pan";
      return;
    }
    travelled = 0;
    if (event.button > 0 || event.shiftKey) doing = "pan";
    else doing = targets.grab(at.x, at.y) ? "drag" : "orbit";
  };

  const onMove = (event: PointerEvent): void => {
    const at = placeOf(event);
    const before = down.get(event.pointerId);
    if (!before) {
      targets.hover(at.x, at.y);
      return;
    }
    const dx = at.x - before.x;
    const dy = at.y - before.y;
    travelled += Math.hypot(dx, dy);
    if (down.size === 2) {
      const other = [...down].find(([id]) => id !== event.pointerId)?.[1];
      if (other) {
        const was = Math.hypot(before.x - other.x, before.y - other.y);
        const is = Math.hypot(at.x - other.x, at.y - other.y);
        if (was > 10 && is > 10) targets.zoom(is / was, (at.x + other.x) / 2, (at.y + other.y) / 2);
      }
      targets.pan(dx / 2, dy / 2);
    } else if (doing === "drag") targets.drag(at.x, at.y);
    else if (doing === "pan") targets.pan(dx, dy);
    else if (doing === "orbit" && travelled > STILL) targets.orbit(-dx * TURN, dy * TURN);
    down.set(event.pointerId, at);
  };

  const onUp = (event: PointerEvent): void => {
    if (!down.delete(event.pointerId) || down.size > 0) return;
    const at = placeOf(event);
    if (doing === "drag") targets.release();
    if (doing === "orbit" && travelled <= STILL) targets.tap(at.x, at.y);
    doing = "nothing";
  };

  const onCancel = (event: PointerEvent): void => {
    down.delete(event.pointerId);
    if (doing === "drag") targets.giveUp();
    doing = "nothing";
  };

  const onWheel = (event: WheelEvent): void => {
    event.preventDefault();
    const { x, y } = placeOf(event);
    const lines = event.deltaMode === 1 ? event.deltaY * 20 : event.deltaY;
    targets.zoom(Math.exp(-Math.max(-240, Math.min(240, lines)) * 0.0018), x, y);
  };

  const onKey = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === "Escape" && doing === "drag") {
      targets.giveUp();
      doing = "nothing";
    } else if (!arrow(event, targets) && !letter(event.key, targets, canvas)) return;
    event.preventDefault();
    event.stopPropagation();
  };

  const noMenu = (event: Event): void => event.preventDefault();
  canvas.addEventListener("pointerdown", onDown);
  canvas.addEventListener("pointermove", onMove);
  canvas.addEventListener("pointerup", onUp);
  canvas.addEventListener("pointercancel", onCancel);
  canvas.addEventListener("wheel", onWheel, { passive: false });
  canvas.addEventListener("keydown", onKey);
  canvas.addEventListener("contextmenu", noMenu);
  return () => {
    canvas.removeEventListener("pointerdown", onDown);
    canvas.removeEventListener("pointermove", onMove);
    canvas.removeEventListener("pointerup", onUp);
    canvas.removeEventListener("pointercancel", onCancel);
    canvas.removeEventListener("wheel", onWheel);
    canvas.removeEventListener("keydown", onKey);
    canvas.removeEventListener("contextmenu", noMenu);
  };
}

/** Arrows move what is held (left and right: across the car, up and down: height, with shift: fore and aft), or turn the view. */
function arrow(event: KeyboardEvent, targets: GestureTargets): boolean {
  const ways: Readonly<Record<string, readonly [number, number]>> = {
    ArrowLeft: [-1, 0],
    ArrowRight: [1, 0],
    ArrowUp: [0, 1],
    ArrowDown: [0, -1],
  };
  const way = ways[event.key];
  if (!way) return false;
  const [right, up] = way;
  const sign = right + up > 0 ? 1 : -1;
  // As seen from behind: to the left is out, away from the centreline.
  const moves = right !== 0 ? targets.nudge("y", sign === 1 ? -1 : 1) : targets.nudge(event.shiftKey ? "x" : "z", sign);
  if (!moves) targets.orbit(right * KEY_TURN, up * KEY_TURN);
  return true;
}

function letter(key: string, targets: GestureTargets, canvas: HTMLCanvasElement): boolean {
  const middle = [canvas.clientWidth / 2, canvas.clientHeight / 2] as const;
  if (key === "+" || key === "=") targets.zoom(KEY_ZOOM, ...middle);
  else if (key === "-" || key === "_") targets.zoom(1 / KEY_ZOOM, ...middle);
  else if (key === "Home" || key === "f") targets.fit();
  else if (key === "n") targets.chooseNext(1);
  else if (key === "p") targets.chooseNext(-1);
  else return false;
  return true;
}
