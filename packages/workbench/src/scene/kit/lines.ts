import type { Vec3 } from "@armwright/engine";
import {
  type Color,
  DoubleSide,
  DynamicDrawUsage,
  Float32BufferAttribute,
  InstancedBufferGeometry,
  InstancedInterleavedBuffer,
  InterleavedBufferAttribute,
  Mesh,
  type Plane,
  ShaderMaterial,
  Vector4,
} from "three";
import type { Inks } from "./materials.ts";

/** Line, gap, line, gap in px of the look; no gaps draw it whole. */
export const DASH = {
  solid: [1, 0, 1, 0],
  ghost: [14, 4, 4, 4],
  keepOut: [7, 5, 7, 5],
  dots: [1.6, 4.4, 1.6, 4.4],
  stitch: [5, 4, 5, 4],
  hinge: [12, 4, 3, 4],
} as const;

export interface LineLook {
  readonly colour: Color;
  /** px of the look. */
  readonly width: number;
  readonly dash?: readonly [number, number, number, number];
  /** Drawn over everything. */
  readonly isOver?: boolean;
  readonly cut?: readonly Plane[];
}

const PER_SEGMENT = 8;

/** Lines of one look, all of one width on the screen however near. Refilled between `begin` and `end`. */
export class Lines {
  readonly mesh: Mesh<InstancedBufferGeometry, ShaderMaterial>;
  private data: Float32Array;
  private buffer: InstancedInterleavedBuffer;
  private count = 0;
  private run = 0;
  private readonly last = { x: 0, y: 0, z: 0 };

  constructor(inks: Inks, look: LineLook, capacity = 64) {
    const geometry = new InstancedBufferGeometry();
    geometry.setAttribute("position", new Float32BufferAttribute([0, -1, 0, 1, -1, 0, 1, 1, 0, 0, 1, 0], 3));
    geometry.setIndex([0, 1, 2, 0, 2, 3]);
    this.data = new Float32Array(capacity * PER_SEGMENT);
    this.buffer = interleaved(this.data);
    this.mesh = new Mesh(geometry, lineMaterial(inks, look));
    this.mesh.frustumCulled = false;
    this.mesh.matrixAutoUpdate = false;
    if (look.isOver) this.mesh.renderOrder = 10;
    this.bind();
  }

  begin(): void {
    this.count = 0;
  }

  end(): void {
    this.mesh.geometry.instanceCount = this.count;
    this.mesh.visible = this.count > 0;
    this.buffer.needsUpdate = true;
  }

  /** Begins a chain of segments, along which the dashes run on. */
  move(at: Vec3): void {
    this.last.x = at.x;
    this.last.y = at.y;
    this.last.z = at.z;
    this.run = 0;
  }

  line(to: Vec3): void {
    if ((this.count + 1) * PER_SEGMENT > this.data.length) this.grow();
    const { last, data } = this;
    const i = this.count * PER_SEGMENT;
    const dx = to.x - last.x;
    const dy = to.y - last.y;
    const dz = to.z - last.z;
    data[i] = last.x;
    data[i + 1] = last.y;
    data[i + 2] = last.z;
    data[i + 3] = this.run;
    this.run += Math.sqrt(dx * dx + dy * dy + dz * dz);
    data[i + 4] = to.x;
    data[i + 5] = to.y;
    data[i + 6] = to.z;
    data[i + 7] = this.run;
    last.x = to.x;
    last.y = to.y;
    last.z = to.z;
    this.count += 1;
  }

  segment(from: Vec3, to: Vec3): void {
    this.move(from);
    this.line(to);
  }

  /** A circle about `centre`, spanned by two of its radii. */
  circle(centre: Vec3, a: Vec3, b: Vec3, pieces = 40): void {
    const spot = (i: number): Vec3 => {
      const c = Math.cos((2 * Math.PI * i) / pieces);
      const s = Math.sin((2 * Math.PI * i) / pieces);
      return { x: centre.x + a.x * c + b.x * s, y: centre.y + a.y * c + b.y * s, z: centre.z + a.z * c + b.z * s };
    };
    this.move(spot(0));
    for (let i = 1; i <= pieces; i += 1) this.line(spot(i));
  }

  dispose(): void {
    this.mesh.geometry.dispose();
    this.mesh.material.dispose();
  }

  private grow(): void {
    const data = new Float32Array(this.data.length * 2);
    data.set(this.data);
    this.data = data;
    this.buffer = interleaved(data);
    this.bind();
  }

  private bind(): void {
    const { geometry } = this.mesh;
    geometry.setAttribute("from", new InterleavedBufferAttribute(this.buffer, 4, 0));
    geometry.setAttribute("to", new InterleavedBufferAttribute(this.buffer, 4, 4));
  }
}

function interleaved(data: Float32Array): InstancedInterleavedBuffer {
  const buffer = new InstancedInterleavedBuffer(data, PER_SEGMENT, 1);
  buffer.setUsage(DynamicDrawUsage);
  return buffer;
}

const lineMaterial = (
  inks: Inks,
  { colour, width, dash = DASH.solid, isOver = false, cut = [] }: LineLook,
): ShaderMaterial =>
  new ShaderMaterial({
    uniforms: {
      ...inks.uniforms,
      colour: { value: colour },
      width: { value: width },
      dash: { value: new Vector4(...dash) },
    },
    clipping: cut.length > 0,
    clippingPlanes: [...cut],
    side: DoubleSide,
    depthTest: !isOver,
    depthWrite: !isOver,
    transparent: isOver,
    vertexShader: /* glsl */ `
      attribute vec4 from, to;
      uniform vec2 canvas;
      uniform float pen, width, scale;
      varying float vRun;
      #include <clipping_planes_pars_vertex>
      void main() {
        vec4 a = projectionMatrix * modelViewMatrix * vec4(from.xyz, 1.0);
        vec4 b = projectionMatrix * modelViewMatrix * vec4(to.xyz, 1.0);
        vec2 way = (b.xy - a.xy) * canvas;
        float size = length(way);
        vec2 dir = size > 1e-6 ? way / size : vec2(1.0, 0.0);
        float half_ = 0.5 * width * pen;
        vec4 at = position.x < 0.5 ? a : b;
        vec2 shift = (vec2(-dir.y, dir.x) * position.y + dir * (position.x < 0.5 ? -1.0 : 1.0) * 0.8) * half_;
        at.xy += shift * 2.0 / canvas;
        // A hair nearer than the face that the line lies on.
        at.z -= 1.5e-4;
        // Dashes keep their length on the screen along lines that run across it.
        vRun = (position.x < 0.5 ? from.w : to.w) * scale / pen;
        gl_Position = at;
        vec4 mvPosition = modelViewMatrix * vec4(position.x < 0.5 ? from.xyz : to.xyz, 1.0);
        #include <clipping_planes_vertex>
      }`,
    fragmentShader: /* glsl */ `
      uniform vec3 colour;
      uniform vec4 dash;
      varying float vRun;
      #include <clipping_planes_pars_fragment>
      void main() {
        #include <clipping_planes_fragment>
        float at = mod(vRun, dash.x + dash.y + dash.z + dash.w);
        bool inGap = (at > dash.x && at < dash.x + dash.y) || at > dash.x + dash.y + dash.z;
        if (inGap && dash.y > 0.0) discard;
        gl_FragColor = vec4(colour, 1.0);
      }`,
  });
