import { browserItems, type Items, memoryItems, storageItems } from "./items.ts";
import { serverCalls } from "./server-calls.ts";
import { serverSource } from "./server-source.ts";
import type { DocumentSource } from "./source.ts";

/** The folder that was served at this address at the last visit. */
const SERVED = "armwright:served";

export type Chosen =
  | { readonly ok: true; readonly source: DocumentSource }
  /** The server is there and does not know this device: the page to go to. */
  | { readonly ok: false; readonly why: "must pair"; readonly goTo: string };

/**
 * The bench that serves this page, where there is one, also while it is out of reach; else this browser's storage.
 * A page that was ever served from here is a bench's: its cars are never sought in the browser.
 */
export async function chooseSource(
  base = "./",
  items: Items = browserItems(),
  fetchIt?: typeof fetch,
): Promise<Chosen> {
  const asking = fetchIt ?? ((...asked: Parameters<typeof fetch>) => fetch(...asked));
  const session = sessionItems();
  const known = items.get(`${SERVED}:${base}`);
  const answer = await serverCalls(base, "", "1", asking).ready();
  if (!answer.ok && answer.status === 401) return { ok: false, why: "must pair", goTo: `${base}pair` };
  const folder = answer.ok && answer.body.armwright === "bench" ? answer.body.folder : known;
  if (folder === undefined) {
    // A page that a bench serves never needs what keeps cars in the browser.
    const [{ browserSource }, { browserShelf }] = await Promise.all([
      import("./browser-source.ts"),
      import("./shelf.ts"),
    ]);
    return { ok: true, source: browserSource({ items, shelf: await browserShelf() }) };
  }
  items.set(`${SERVED}:${base}`, folder);
  return { ok: true, source: serverSource({ base, folder, items, session, fetch: asking }) };
}

function sessionItems(): Items {
  try {
    return storageItems(sessionStorage);
  } catch {
    return memoryItems();
  }
}
