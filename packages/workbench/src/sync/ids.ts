/** Thirty-two letters that no other page makes. Works on plain http too, where crypto.randomUUID is not there. */
export function freshId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
}
