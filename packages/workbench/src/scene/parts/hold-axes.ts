import type { Vec3 } from "@armwright/engine";
import { Group } from "three";
import { AXES, seen } from "../drag.ts";
import type { Eye } from "../eye.ts";
import { Lines } from "../kit/lines.ts";
import type { Inks } from "../kit/materials.ts";
import type { Axis } from "../types.ts";

const REACH = 58;
const HEAD = 9;
const NEAR = 16;
/** An axis that points at the eye is not offered, as a share of its length. */
const SHORTEST = 0.25;

/** Three arrows at the held point, one a vehicle axis, of one size on the screen; pulling at one moves along it. */
export class HoldAxes {
  readonly object = new Group();
  private readonly lines: Lines;
  private at: Vec3 | null = null;

  constructor(inks: Inks) {
    this.lines = new Lines(inks, { colour: inks.uniforms.hold.value, width: 2.2, isOver: true }, 16);
    this.object.add(this.lines.mesh);
  }

  hold(at: Vec3 | null): void {
    this.at = at;
  }

  /** Draws the arrows for the view as it is now. */
  place(eye: Eye): void {
    this.lines.begin();
    if (this.at) for (const axis of ["x", "y", "z"] as const) this.arrow(eye, this.at, axis);
    this.lines.end();
  }

  /** The axis whose arrow is at a place of the canvas. */
  pick(eye: Eye, x: number, y: number): Axis | null {
    if (!this.at) return null;
    const spot = { x: 0, y: 0, depth: 0 };
    eye.spotOf(this.at, spot);
    for (const axis of ["x", "y", "z"] as const) {
      const way = seen(eye, AXES[axis]);
      const share = Math.hypot(way.x, way.y);
      if (share < SHORTEST) continue;
      const tipX = spot.x + (way.x / share) * REACH;
      const tipY = spot.y - (way.y / share) * REACH;
      // Along the outer half of the arrow.
      for (const part of [0.55, 0.75, 0.95]) {
        if (Math.hypot(spot.x + (tipX - spot.x) * part - x, spot.y + (tipY - spot.y) * part - y) < NEAR) return axis;
      }
    }
    return null;
  }

  dispose(): void {
    this.lines.dispose();
  }

  private arrow(eye: Eye, at: Vec3, axis: Axis): void {
    const way = seen(eye, AXES[axis]);
    const share = Math.hypot(way.x, way.y);
    if (share < SHORTEST) return;
    const a = AXES[axis];
    // So many metres along the axis look as long as REACH px.
    const size = REACH / (eye.scale * share);
    const point = (along: number, aside: number): Vec3 => {
      // Aside: square to the arrow on the screen.
      const sx = (-way.y / share) * (aside / eye.scale);
      const sy = (way.x / share) * (aside / eye.scale);
      return {
        x: at.x + a.x * along + eye.right.x * sx + eye.up.x * sy,
        y: at.y + a.y * along + eye.right.y * sx + eye.up.y * sy,
        z: at.z + a.z * along + eye.right.z * sx + eye.up.z * sy,
      };
    };
    const head = (HEAD / REACH) * size;
    this.lines.segment(point(size * 0.24, 0), point(size, 0));
    this.lines.segment(point(size - head, HEAD * 0.5), point(size, 0));
    this.lines.segment(point(size - head, -HEAD * 0.5), point(size, 0));
  }
}
