import { fileURLToPath } from "node:url";
import type { Plugin } from "vite";

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** Modules of three's renderer, by the folder and name they have in its sources, that our scene never puts to work. */
const UNUSED: readonly string[] = [
  "shaders/ShaderChunk",
  "shaders/ShaderLib",
  "shaders/UniformsLib",
  "shaders/DFGLUTData",
  "webgl/WebGLBackground",
  "webgl/WebGLEnvironments",
  "webgl/WebGLLights",
  "webgl/WebGLMaterials",
  "webgl/WebGLMorphtargets",
  "webgl/WebGLOutput",
  "webgl/WebGLShadowMap",
  "webgl/WebGLTextures",
  "webgl/WebGLUniformsGroups",
  "webgl/WebGLUtils",
  "webxr/WebXRManager",
];

/** Bare `three` is taken from its sources, so that what nobody imports is left out; use beside the plugin. */
export const THREE_SOURCES = { find: /^three$/, replacement: here("../../../node_modules/three/src/Three.js") };

/**
 * The scene draws shaders of its own, without lights, shadows, textures, reflections or headsets. What three has for those
 * is replaced by the little that its renderer asks of it (`three/unused.ts`). Made for the pinned release of three; a test
 * draws the scene with it and without it and compares the pictures.
 */
export function leanThree(): Plugin {
  return {
    name: "armwright-lean-three",
    enforce: "pre",
    async resolveId(source, importer, options) {
      if (!importer || !/[\\/]three[\\/]src[\\/]/.test(importer) || !source.startsWith(".")) return undefined;
      const found = await this.resolve(source, importer, { ...options, skipSelf: true });
      const path = found?.id.replaceAll("\\", "/").replace(/\.js$/, "") ?? "";
      return UNUSED.some((name) => path.endsWith(`/three/src/renderers/${name}`)) ? here("./three/unused.ts") : found;
    },
  };
}
