import type { Position, Vec3 } from "@armwright/engine";
import { dragged, flattest } from "./drag.ts";
import type { Eye } from "./eye.ts";
import { type Frame, stateOf } from "./frame.ts";
import { type DesignGrip, gripNow, gripsOf, toDesign } from "./grips.ts";
import { STATE } from "./kit/materials.ts";
import type { GripMarks } from "./parts/grip-marks.ts";
import type { HoldAxes } from "./parts/hold-axes.ts";
import type { DragWay, Grip, SceneOptions } from "./types.ts";

/** A point is taken hold of within this distance, CSS px: a 48 px target. */
const REACH = 24;

interface Holding {
  readonly grip: DesignGrip;
  readonly way: Exclude<DragWay, "view">;
  readonly position: Position;
  readonly from: Vec3;
  readonly x: number;
  readonly y: number;
  point: Vec3;
}

/** The points of the car that can be taken hold of, and the one that is being dragged. */
export class Hand {
  way: DragWay = "view";
  private readonly eye: Eye;
  private readonly marks: GripMarks;
  private readonly axes: HoldAxes;
  private readonly options: SceneOptions;
  private frame: Frame | null = null;
  private grips: readonly DesignGrip[] = [];
  private holding: Holding | null = null;

  constructor(eye: Eye, marks: GripMarks, axes: HoldAxes, options: SceneOptions) {
    this.eye = eye;
    this.marks = marks;
    this.axes = axes;
    this.options = options;
  }

  show(frame: Frame): void {
    const all = frame.options.allGrips ?? false;
    const { moreGrips } = frame.options;
    const before = this.frame;
    const isSame = before?.study === frame.study && before.options.moreGrips === moreGrips;
    if (!isSame || (before.options.allGrips ?? false) !== all) {
      this.grips = [...gripsOf(frame.study, all), ...(moreGrips ?? [])];
    }
    this.frame = frame;
    const held = this.held();
    this.marks.begin();
    for (const grip of this.grips) {
      if (grip !== held) this.marks.put(gripNow(frame.position, grip), stateOf(frame, grip.path));
    }
    if (held) this.marks.put(gripNow(frame.position, held), STATE.held);
    this.marks.end();
    this.axes.hold(held ? gripNow(frame.position, held) : null);
  }

  held(): DesignGrip | undefined {
    const held = this.frame?.options.held;
    return held === undefined ? undefined : this.grips.find(({ path }) => path === held);
  }

  all(): readonly Grip[] {
    const { frame } = this;
    return frame ? this.grips.map((grip) => shown(frame.position, grip)) : [];
  }

  pick(x: number, y: number): Grip | null {
    const found = this.nearest(x, y);
    return found && this.frame ? shown(this.frame.position, found) : null;
  }

  isOverSomething(x: number, y: number): boolean {
    return this.axes.pick(this.eye, x, y) !== null || this.nearest(x, y) !== null;
  }

  /** The path of the next point, or the one before, in the order of the document. */
  neighbour(step: 1 | -1): string | null {
    const count = this.grips.length;
    const now = this.grips.findIndex(({ path }) => path === this.frame?.options.held);
    const next = now < 0 ? (step > 0 ? 0 : count - 1) : (now + step + count) % count;
    return this.grips[next]?.path ?? null;
  }

  /** Begins a drag of the point at this place, or along the arrow there; false where there is neither. */
  grab(x: number, y: number): boolean {
    const { frame } = this;
    if (!frame) return false;
    const axis = this.axes.pick(this.eye, x, y);
    const grip = axis ? this.held() : this.nearest(x, y);
    if (!grip) return false;
    const way = axis ?? (this.way === "view" ? flattest(this.eye) : this.way);
    // The position is kept: while the point moves the wheel may too, and the hand's own frame must not run away.
    const { position } = frame;
    this.holding = { grip, way, position, from: gripNow(position, grip), x, y, point: grip.point };
    this.options.onSelect?.(grip.path);
    this.options.onDrag?.(grip.path, grip.point, "start");
    return true;
  }

  drag(x: number, y: number): void {
    const { holding } = this;
    if (!holding) return;
    const to = dragged(this.eye, holding.from, x - holding.x, y - holding.y, holding.way);
    if (!to) return;
    holding.point = toDesign(holding.position, holding.grip.on, to);
    this.options.onDrag?.(holding.grip.path, holding.point, "move");
  }

  letGo(phase: "end" | "cancel"): void {
    const { holding } = this;
    if (!holding) return;
    this.holding = null;
    this.options.onDrag?.(holding.grip.path, phase === "end" ? holding.point : holding.grip.point, phase);
  }

  private nearest(x: number, y: number): DesignGrip | null {
    const { frame, eye } = this;
    if (!frame) return null;
    const spot = { x: 0, y: 0, depth: 0 };
    const { held } = frame.options;
    let best: DesignGrip | null = null;
    let least = REACH;
    for (const grip of this.grips) {
      eye.spotOf(gripNow(frame.position, grip), spot);
      // What is held goes first, then what is nearer to the eye where two lie over one another.
      const nearer = Math.max(-1, Math.min(1, spot.depth)) * 0.5 + (grip.path === held ? 6 : 0);
      const away = Math.hypot(spot.x - x, spot.y - y) - nearer;
      if (away < least) {
        least = away;
        best = grip;
      }
    }
    return best;
  }
}

const shown = (position: Position, grip: DesignGrip): Grip => ({
  path: grip.path,
  label: grip.label,
  at: gripNow(position, grip),
});
