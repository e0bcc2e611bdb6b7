import { BackSide, Color, DoubleSide, type Plane, ShaderMaterial, Vector2 } from "three";
import type { Tokens } from "./tokens.ts";

/** How a solid stands out: as the others, in hand, or at its limit. */
export const STATE = { plain: 0, held: 1, stop: 2 } as const;
export type State = (typeof STATE)[keyof typeof STATE];

/** What all materials of a scene share: changing one of these changes them all. */
export interface Inks {
  readonly uniforms: {
    readonly paper: { value: Color };
    readonly ink: { value: Color };
    readonly pencil: { value: Color };
    readonly stop: { value: Color };
    readonly hold: { value: Color };
    /** Canvas in device pixels. */
    readonly canvas: { value: Vector2 };
    /** Device pixels a px of the look. */
    readonly pen: { value: number };
    /** Device pixels a metre: the scene is drawn without perspective. */
    readonly scale: { value: number };
  };
}

export function makeInks(): Inks {
  const colour = () => ({ value: new Color() });
  return {
    uniforms: {
      paper: colour(),
      ink: colour(),
      pencil: colour(),
      stop: colour(),
      hold: colour(),
      canvas: { value: new Vector2(1, 1) },
      pen: { value: 1 },
      scale: { value: 1 },
    },
  };
}

export function setInks({ uniforms }: Inks, tokens: Tokens): void {
  uniforms.paper.value.copy(tokens.paper);
  uniforms.ink.value.copy(tokens.ink);
  uniforms.pencil.value.copy(tokens.pencil);
  uniforms.stop.value.copy(tokens.stop);
  uniforms.hold.value.copy(tokens.hold);
}

const COLOURS = /* glsl */ `
  uniform vec3 paper, ink, stop, hold;
  vec3 inkOf(float state) {
    return state < 0.5 ? ink : state < 1.5 ? hold : stop;
  }
`;

/** A flat face of paper with its own creases inked; faces turned away from the light are a shade darker. */
export const fillMaterial = (inks: Inks, cut: readonly Plane[] = []): ShaderMaterial =>
  new ShaderMaterial({
    uniforms: inks.uniforms,
    clipping: cut.length > 0,
    clippingPlanes: [...cut],
    polygonOffset: true,
    polygonOffsetFactor: 1,
    polygonOffsetUnits: 2,
    vertexShader: /* glsl */ `
      attribute vec2 crease;
      attribute float state;
      varying vec2 vCrease;
      varying vec3 vFacing;
      varying float vState;
      #include <clipping_planes_pars_vertex>
      void main() {
        vec4 mvPosition = modelViewMatrix * instanceMatrix * vec4(position, 1.0);
        mat3 place = mat3(instanceMatrix);
        vec3 size = vec3(dot(place[0], place[0]), dot(place[1], place[1]), dot(place[2], place[2]));
        vFacing = mat3(modelViewMatrix) * (place * (normal / size));
        vCrease = crease;
        vState = state;
        gl_Position = projectionMatrix * mvPosition;
        #include <clipping_planes_vertex>
      }`,
    fragmentShader: /* glsl */ `
      ${COLOURS}
      uniform float pen;
      varying vec2 vCrease;
      varying vec3 vFacing;
      varying float vState;
      #include <clipping_planes_pars_fragment>
      void main() {
        #include <clipping_planes_fragment>
        vec3 facing = normalize(vFacing);
        float light = dot(facing, normalize(vec3(-0.45, 0.75, 0.55)));
        float shade = 1.0 - smoothstep(-0.06, 0.02, light);
        vec3 line = inkOf(vState);
        vec3 face = mix(paper, line, vState > 0.5 ? 0.24 : 0.0);
        face = mix(face, ink, 0.085 * shade);
        vec2 pixels = (1.0 - abs(vCrease)) / max(fwidth(vCrease), vec2(1e-5));
        float edge = 1.0 - smoothstep(0.45 * pen - 0.35, 0.45 * pen + 0.65, min(pixels.x, pixels.y));
        gl_FragColor = vec4(mix(face, line, edge), 1.0);
      }`,
  });

/** The outline: the far side of the solid, blown up by `width` px of the look. */
export const outlineMaterial = (inks: Inks, width: number, cut: readonly Plane[] = []): ShaderMaterial =>
  new ShaderMaterial({
    uniforms: { ...inks.uniforms, width: { value: width } },
    clipping: cut.length > 0,
    clippingPlanes: [...cut],
    side: BackSide,
    vertexShader: /* glsl */ `
      attribute vec3 hull;
      attribute float state;
      uniform vec2 canvas;
      uniform float pen, width;
      varying float vState;
      #include <clipping_planes_pars_vertex>
      void main() {
        vec4 mvPosition = modelViewMatrix * instanceMatrix * vec4(position, 1.0);
        mat3 place = mat3(instanceMatrix);
        vec3 size = vec3(dot(place[0], place[0]), dot(place[1], place[1]), dot(place[2], place[2]));
        vec3 out3 = mat3(modelViewMatrix) * (place * (hull / size));
        vState = state;
        gl_Position = projectionMatrix * mvPosition;
        float across = length(out3.xy);
        // A little behind the faces, so that thin walls do not let their own far side through.
        gl_Position.z += 4e-4;
        if (across > 1e-6) gl_Position.xy += out3.xy / across * (width * pen * 2.0) / canvas;
        #include <clipping_planes_vertex>
      }`,
    fragmentShader: /* glsl */ `
      ${COLOURS}
      varying float vState;
      #include <clipping_planes_pars_fragment>
      void main() {
        #include <clipping_planes_fragment>
        gl_FragColor = vec4(inkOf(vState), 1.0);
      }`,
  });

/** A face that is cut through: dense 45° hatching, or solid ink where what is cut is thin. */
export const sectionMaterial = (inks: Inks, isSolid: boolean): ShaderMaterial =>
  new ShaderMaterial({
    uniforms: { ...inks.uniforms, solid: { value: isSolid ? 1 : 0 } },
    side: DoubleSide,
    vertexShader: /* glsl */ `
      attribute vec2 crease;
      varying vec2 vCrease;
      void main() {
        vCrease = crease;
        gl_Position = projectionMatrix * modelViewMatrix * instanceMatrix * vec4(position, 1.0);
      }`,
    fragmentShader: /* glsl */ `
      ${COLOURS}
      uniform float pen, solid;
      varying vec2 vCrease;
      void main() {
        float at = mod(gl_FragCoord.x + gl_FragCoord.y, 7.0 * pen);
        float hatch = 1.0 - smoothstep(0.4 * pen, 0.4 * pen + 1.0, abs(at - 3.5 * pen) * 0.7071);
        vec2 pixels = (1.0 - abs(vCrease)) / max(fwidth(vCrease), vec2(1e-5));
        float edge = 1.0 - smoothstep(1.4 * pen - 0.5, 1.4 * pen + 0.5, min(pixels.x, pixels.y));
        gl_FragColor = vec4(mix(paper, ink, max(solid, max(edge, hatch * 0.75))), 1.0);
      }`,
  });
