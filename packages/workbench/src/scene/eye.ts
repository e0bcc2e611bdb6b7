import type { Vec3 } from "@armwright/engine";
import { OrthographicCamera, Vector3 } from "three";
import type { SceneView } from "./types.ts";

/** Half of what fits on a desktop's screen when nothing has been shown yet, m. */
const START_SPAN = 1.4;
const FARTHEST = 20;
const NEAREST_SCALE = 60;
const FARTHEST_SCALE = 20_000;

/** Direction from the middle of the view to the eye: azimuth from forward toward left, and elevation, rad. */
interface Direction {
  readonly azimuth: number;
  readonly elevation: number;
}

export const VIEWS: Readonly<Record<SceneView, Direction>> = {
  behind: { azimuth: Math.PI, elevation: 0 },
  above: { azimuth: Math.PI, elevation: Math.PI / 2 },
  left: { azimuth: Math.PI / 2, elevation: 0 },
  "three-quarter": { azimuth: Math.PI + 0.62, elevation: 0.42 },
};

/** A ball that should be in the frame. */
export interface Ball {
  readonly at: Vec3;
  readonly radius: number;
}

/** Where the scene is looked at from: without perspective, as on a drawing, so that lengths across the view are true. */
export class Eye {
  readonly camera = new OrthographicCamera(-1, 1, 1, -1, 0.1, 2 * FARTHEST);
  /** CSS px. */
  width = 1;
  height = 1;
  /** CSS px a metre. */
  scale = 400 / START_SPAN;
  readonly target = new Vector3(0, 0.6, 0.45);
  private azimuth = VIEWS["three-quarter"].azimuth;
  private elevation = VIEWS["three-quarter"].elevation;
  readonly right = new Vector3();
  readonly up = new Vector3();
  /** From the target toward the eye. */
  readonly back = new Vector3();

  constructor() {
    this.camera.matrixAutoUpdate = false;
    this.place();
  }

  resize(width: number, height: number): void {
    this.width = Math.max(1, width);
    this.height = Math.max(1, height);
    this.place();
  }

  state() {
    return {
      azimuth: this.azimuth,
      elevation: this.elevation,
      scale: this.scale,
      x: this.target.x,
      y: this.target.y,
      z: this.target.z,
    };
  }

  /** Part of the way from one state to another, straight; turning goes the shorter way round. */
  between(from: EyeState, to: EyeState, fraction: number): void {
    const mix = (a: number, b: number): number => a + (b - a) * fraction;
    let turn = (to.azimuth - from.azimuth) % (2 * Math.PI);
    if (turn > Math.PI) turn -= 2 * Math.PI;
    if (turn < -Math.PI) turn += 2 * Math.PI;
    this.azimuth = from.azimuth + turn * fraction;
    this.elevation = mix(from.elevation, to.elevation);
    this.scale = from.scale * (to.scale / from.scale) ** fraction;
    this.target.set(mix(from.x, to.x), mix(from.y, to.y), mix(from.z, to.z));
    this.place();
  }

  look({ azimuth, elevation }: Direction): void {
    this.azimuth = azimuth;
    this.elevation = elevation;
    this.place();
  }

  orbit(right: number, up: number): void {
    this.azimuth += right;
    this.elevation = Math.min(Math.PI / 2, Math.max(-Math.PI / 2, this.elevation + up));
    this.place();
  }

  pan(right: number, down: number): void {
    this.target.addScaledVector(this.right, -right / this.scale).addScaledVector(this.up, down / this.scale);
    this.place();
  }

  /** Nearer or farther; the spot under `x`, `y` (CSS px) stays where it is. */
  zoom(factor: number, x = this.width / 2, y = this.height / 2): void {
    const before = this.scale;
    this.scale = Math.min(FARTHEST_SCALE, Math.max(NEAREST_SCALE, this.scale * factor));
    const shift = 1 / before - 1 / this.scale;
    this.target
      .addScaledVector(this.right, (x - this.width / 2) * shift)
      .addScaledVector(this.up, -(y - this.height / 2) * shift);
    this.place();
  }

  /** Brings all balls into the frame, looking the same way; `margin`: CSS px kept free all round. */
  fit(balls: readonly Ball[], margin: number): void {
    if (balls.length === 0) return;
    let [left, right, low, high, near, far] = [Infinity, -Infinity, Infinity, -Infinity, Infinity, -Infinity];
    for (const { at, radius } of balls) {
      const x = dot(this.right, at);
      const y = dot(this.up, at);
      const z = dot(this.back, at);
      left = Math.min(left, x - radius);
      right = Math.max(right, x + radius);
      low = Math.min(low, y - radius);
      high = Math.max(high, y + radius);
      near = Math.min(near, z);
      far = Math.max(far, z);
    }
    const free = (size: number): number => Math.max(40, size - 2 * margin);
    this.scale = Math.min(free(this.width) / (right - left), free(this.height) / (high - low));
    this.target
      .set(0, 0, 0)
      .addScaledVector(this.right, (left + right) / 2)
      .addScaledVector(this.up, (low + high) / 2)
      .addScaledVector(this.back, (near + far) / 2);
    this.place();
  }

  /** CSS px from the upper left corner, and how much nearer than the target, m. */
  spotOf(point: Vec3, out: { x: number; y: number; depth: number }): void {
    const dx = point.x - this.target.x;
    const dy = point.y - this.target.y;
    const dz = point.z - this.target.z;
    out.x = this.width / 2 + (this.right.x * dx + this.right.y * dy + this.right.z * dz) * this.scale;
    out.y = this.height / 2 - (this.up.x * dx + this.up.y * dy + this.up.z * dz) * this.scale;
    out.depth = this.back.x * dx + this.back.y * dy + this.back.z * dz;
  }

  /** The line of sight through a place of the canvas: a point well before everything, and the way on from there. */
  rayAt(x: number, y: number): [origin: Vec3, direction: Vec3] {
    const { target, right, up, back } = this;
    const u = (x - this.width / 2) / this.scale;
    const v = -(y - this.height / 2) / this.scale;
    const at = (axis: "x" | "y" | "z"): number =>
      target[axis] + right[axis] * u + up[axis] * v + back[axis] * (FARTHEST / 2);
    return [
      { x: at("x"), y: at("y"), z: at("z") },
      { x: -back.x, y: -back.y, z: -back.z },
    ];
  }

  private place(): void {
    const { camera, right, up, back, target } = this;
    const flat = Math.cos(this.elevation);
    back.set(flat * Math.cos(this.azimuth), flat * Math.sin(this.azimuth), Math.sin(this.elevation));
    right.set(-Math.sin(this.azimuth), Math.cos(this.azimuth), 0);
    up.crossVectors(back, right);
    camera.matrix.makeBasis(right, up, back);
    camera.matrix.setPosition(target.x + back.x * FARTHEST, target.y + back.y * FARTHEST, target.z + back.z * FARTHEST);
    camera.matrixWorldNeedsUpdate = true;
    camera.right = this.width / 2 / this.scale;
    camera.left = -camera.right;
    camera.top = this.height / 2 / this.scale;
    camera.bottom = -camera.top;
    camera.near = FARTHEST - 6;
    camera.far = FARTHEST + 6;
    camera.updateProjectionMatrix();
  }
}

export type EyeState = ReturnType<Eye["state"]>;

const dot = (a: Vector3, b: Vec3): number => a.x * b.x + a.y * b.y + a.z * b.z;
