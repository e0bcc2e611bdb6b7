// What three's renderer asks of its modules for lights, shadows, textures, reflections and headsets in a scene that has
// none of them: see lean-three.ts.
import { BackSide, Color, type ColorRepresentation } from "three";
import clipping_planes_fragment from "three/src/renderers/shaders/ShaderChunk/clipping_planes_fragment.glsl.js";
import clipping_planes_pars_fragment from "three/src/renderers/shaders/ShaderChunk/clipping_planes_pars_fragment.glsl.js";
import clipping_planes_pars_vertex from "three/src/renderers/shaders/ShaderChunk/clipping_planes_pars_vertex.glsl.js";
import clipping_planes_vertex from "three/src/renderers/shaders/ShaderChunk/clipping_planes_vertex.glsl.js";
import colorspace_pars_fragment from "three/src/renderers/shaders/ShaderChunk/colorspace_pars_fragment.glsl.js";

const nothing = (): void => undefined;

/** Only these are included by the scene's shaders; the last one by three itself. */
export const ShaderChunk = {
  clipping_planes_fragment,
  clipping_planes_pars_fragment,
  clipping_planes_pars_vertex,
  clipping_planes_vertex,
  colorspace_pars_fragment,
};

/** No material is one of three's own. */
export const ShaderLib = {};
export const UniformsLib = {};
export const getDFGLUT = (): null => null;

interface ClearState {
  readonly buffers: { readonly color: { setClear(r: number, g: number, b: number, a: number, isPre: boolean): void } };
}

/** A canvas cleared to one colour; nothing is drawn behind the scene. */
export function WebGLBackground(
  _renderer: unknown,
  _environments: unknown,
  state: ClearState,
  _objects: unknown,
  alpha: boolean,
  isPremultiplied: boolean,
) {
  const colour = new Color(0);
  let opacity = alpha ? 0 : 1;
  const put = (): void => state.buffers.color.setClear(colour.r, colour.g, colour.b, opacity, isPremultiplied);
  return {
    getClearColor: (): Color => colour,
    setClearColor(to: ColorRepresentation, a = 1): void {
      colour.set(to);
      opacity = a;
      put();
    },
    getClearAlpha: (): number => opacity,
    setClearAlpha(a: number): void {
      opacity = a;
      put();
    },
    render: put,
    addToRenderList: nothing,
    dispose: nothing,
  };
}

export const WebGLEnvironments = unused(() => ({ get: () => null, dispose: nothing }));

const NO_LIGHTS = [
  "ambient probe sun sunShadow sunShadowMap sunShadowMatrix sunShadowCascade directional directionalShadow",
  "directionalShadowMap directionalShadowMatrix spot spotLightMap spotShadow spotShadowMap spotLightMatrix rectArea",
  "point pointShadow pointShadowMap pointShadowMatrix hemi",
].flatMap((names) => names.split(" "));

export const WebGLLights = unused(() => ({
  setup: nothing,
  setupView: nothing,
  state: {
    version: 0,
    hash: {},
    ...Object.fromEntries(NO_LIGHTS.map((name) => [name, []])),
    rectAreaLTC1: null,
    rectAreaLTC2: null,
    numSpotLightShadowsWithMaps: 0,
    numLightProbes: 0,
  },
}));

/** A material's uniforms are all its own: nothing is copied into them. */
export const WebGLMaterials = unused(() => ({
  refreshFogUniforms: nothing,
  refreshMaterialUniforms(_: unknown, material: { uniformsNeedUpdate: boolean }): void {
    material.uniformsNeedUpdate = false;
  },
}));

export const WebGLMorphtargets = unused(() => ({ update: nothing }));
export const WebGLShadowMap = unused(() => ({
  enabled: false,
  autoUpdate: false,
  needsUpdate: false,
  type: BackSide,
  render: nothing,
}));
export const WebGLUniformsGroups = unused(() => ({ bind: nothing, update: nothing, dispose: nothing }));
export const WebGLUtils = unused(() => ({ convert: () => null }));

/** Nothing samples a texture; units are counted before every draw. */
export const WebGLTextures = unused(() => ({
  getTextureUnits: () => 0,
  setTextureUnits: nothing,
  resetTextureUnits: nothing,
  dispose: nothing,
}));

export const WebGLOutput = unused(() => {
  throw new Error("bug in the scene: it draws to the canvas itself");
});

export const WebXRManager = unused(() => ({
  enabled: false,
  isPresenting: false,
  addEventListener: nothing,
  removeEventListener: nothing,
  setAnimationLoop: nothing,
  getEnvironmentBlendMode: () => "opaque",
  dispose: nothing,
}));

/** Something to be called with `new`. */
function unused(make: () => object): new () => object {
  return function made(this: object) {
    Object.assign(this, make());
  } as unknown as new () => object;
}
