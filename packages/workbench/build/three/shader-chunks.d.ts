declare module "three/src/renderers/shaders/ShaderChunk/*.glsl.js" {
  const text: string;
  export default text;
}
