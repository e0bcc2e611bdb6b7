import type { DocumentSource } from "../sync/index.ts";

const BROUGHT = "armwright.demo-brought";

/** On the very first visit to a page without a server the demo car stands on the bench; taken away, it stays away. */
export async function bringDemo(source: DocumentSource): Promise<void> {
  if ((await source.list()).cars.length > 0 || wasBrought()) return;
  const { default: text } = await import("../../../../examples/saltbush.car.json?raw");
  await source.importText("saltbush", text);
}

function wasBrought(): boolean {
  try {
    const before = localStorage.getItem(BROUGHT);
    localStorage.setItem(BROUGHT, "yes");
    return before !== null;
  } catch {
    return false;
  }
}
