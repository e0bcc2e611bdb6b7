import type { Vec3 } from "@armwright/engine";
import { BufferAttribute, BufferGeometry, DynamicDrawUsage, Points, ShaderMaterial } from "three";
import type { Inks, State } from "../kit/materials.ts";

const MOST = 128;

/** Rings on the points that can be taken hold of, over everything: paper, ring and dot, a second ring round what is held. */
export class GripMarks {
  readonly object: Points<BufferGeometry, ShaderMaterial>;
  private readonly position = dynamic(3);
  private readonly state = dynamic(1);
  private count = 0;

  constructor(inks: Inks) {
    const geometry = new BufferGeometry();
    geometry.setAttribute("position", this.position);
    geometry.setAttribute("state", this.state);
    this.object = new Points(geometry, markMaterial(inks));
    this.object.frustumCulled = false;
    this.object.matrixAutoUpdate = false;
    this.object.renderOrder = 20;
  }

  begin(): void {
    this.count = 0;
  }

  put(at: Vec3, state: State): void {
    if (this.count === MOST) return;
    this.position.setXYZ(this.count, at.x, at.y, at.z);
    this.state.setX(this.count, state);
    this.count += 1;
  }

  end(): void {
    this.object.geometry.setDrawRange(0, this.count);
    this.position.needsUpdate = true;
    this.state.needsUpdate = true;
  }

  dispose(): void {
    this.object.geometry.dispose();
    this.object.material.dispose();
  }
}

function dynamic(size: number): BufferAttribute {
  const attribute = new BufferAttribute(new Float32Array(MOST * size), size);
  attribute.setUsage(DynamicDrawUsage);
  return attribute;
}

const markMaterial = (inks: Inks): ShaderMaterial =>
  new ShaderMaterial({
    uniforms: inks.uniforms,
    transparent: true,
    depthTest: false,
    depthWrite: false,
    vertexShader: /* glsl */ `
      attribute float state;
      uniform float pen;
      varying float vState;
      void main() {
        vState = state;
        gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
        gl_PointSize = 26.0 * pen;
      }`,
    fragmentShader: /* glsl */ `
      uniform vec3 paper, ink, stop, hold;
      uniform float pen;
      varying float vState;
      float ring(float r, float at, float width) {
        return 1.0 - smoothstep(width * 0.5 - 0.25, width * 0.5 + 0.35, abs(r - at));
      }
      void main() {
        vec2 p = (gl_PointCoord - 0.5) * 26.0;
        float r = length(p);
        bool held = vState > 0.5 && vState < 1.5;
        vec3 line = held ? hold : vState > 1.5 ? stop : ink;
        float disc = 1.0 - smoothstep(4.6, 5.4, r);
        float mark = max(ring(r, 4.7, held ? 2.2 : 1.5), 1.0 - smoothstep(1.2, 1.9, r));
        float dashes = step(0.0, sin(atan(p.y, p.x) * 8.0));
        if (held) mark = max(mark, ring(r, 9.5, 1.4));
        else mark = max(mark, ring(r, 8.4, 1.0) * dashes * 0.8);
        float cover = max(disc, mark);
        if (cover < 0.02) discard;
        gl_FragColor = vec4(mix(paper, line, mark), cover);
      }`,
  });
