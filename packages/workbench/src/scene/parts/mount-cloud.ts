import { type BodyId, type Position, placeOn, type Vec3 } from "@armwright/engine";
import { BufferAttribute, BufferGeometry, DynamicDrawUsage, Points, ShaderMaterial } from "three";
import type { Inks } from "../kit/materials.ts";

/** Places of a mount, on the bodies that carry them; `shares`: how large each dot is, above 0…1. */
export interface CloudPicture {
  readonly points: readonly Vec3[];
  readonly shares: readonly number[];
  readonly on?: readonly BodyId[];
}

/** Px of the look across the smallest and the largest dot. */
const SMALLEST = 2.2;
const LARGEST = 5.6;

/** Everywhere that a mount may be, as dots in ink: the more partners a place has, the larger its dot. */
export class MountCloud {
  readonly object: Points<BufferGeometry, ShaderMaterial>;
  private clouds: readonly CloudPicture[] = [];
  private position = new BufferAttribute(new Float32Array(0), 3);

  constructor(inks: Inks) {
    this.object = new Points(new BufferGeometry(), dotMaterial(inks));
    this.object.frustumCulled = false;
    this.object.matrixAutoUpdate = false;
    this.object.renderOrder = 8;
    this.object.visible = false;
  }

  show(clouds: readonly CloudPicture[], now: Position | undefined): void {
    if (clouds !== this.clouds) {
      this.clouds = clouds;
      const count = clouds.reduce((sum, { points }) => sum + points.length, 0);
      this.object.geometry.dispose();
      this.object.geometry = new BufferGeometry();
      this.position = new BufferAttribute(new Float32Array(3 * count), 3);
      this.position.setUsage(DynamicDrawUsage);
      const shares = Float32Array.from(clouds.flatMap((cloud) => cloud.shares));
      this.object.geometry.setAttribute("position", this.position);
      this.object.geometry.setAttribute("share", new BufferAttribute(shares, 1));
      this.object.visible = count > 0;
    }
    this.place(now);
  }

  /** Puts the dots where their bodies are now. */
  place(now: Position | undefined): void {
    let i = 0;
    for (const { points, on } of this.clouds) {
      points.forEach((point, n) => {
        const body = on?.[n];
        const at = now && body !== undefined ? placeOn(now, point, body) : point;
        this.position.setXYZ(i, at.x, at.y, at.z);
        i += 1;
      });
    }
    this.position.needsUpdate = true;
  }

  dispose(): void {
    this.object.geometry.dispose();
    this.object.material.dispose();
  }
}

const dotMaterial = (inks: Inks): ShaderMaterial =>
  new ShaderMaterial({
    uniforms: inks.uniforms,
    transparent: true,
    depthTest: false,
    depthWrite: false,
    vertexShader: /* glsl */ `
      attribute float share;
      uniform float pen;
      void main() {
        gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
        gl_PointSize = mix(${SMALLEST.toFixed(1)}, ${LARGEST.toFixed(1)}, share) * pen;
      }`,
    fragmentShader: /* glsl */ `
      uniform vec3 paper, ink;
      void main() {
        float r = length(gl_PointCoord - 0.5);
        if (r > 0.5) discard;
        gl_FragColor = vec4(mix(paper, ink, 0.72), 1.0);
      }`,
  });
