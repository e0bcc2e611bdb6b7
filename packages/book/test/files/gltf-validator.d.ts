/** What the tests use of the Khronos validator, which brings no types of its own. */
declare module "gltf-validator" {
  export function validateBytes(bytes: Uint8Array): Promise<{
    readonly issues: { readonly messages: readonly unknown[] };
    readonly info: { readonly drawCallCount: number };
  }>;
}
