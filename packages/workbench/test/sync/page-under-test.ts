import { type Items, memoryItems } from "../../src/sync/items.ts";
import { serverSource } from "../../src/sync/server-source.ts";
import type { CarState, DocumentSource, SourceEvent } from "../../src/sync/source.ts";

/** A network between page and server that can be cut, and can lose answers. */
export interface Network {
  isUp: boolean;
  /** What is asked arrives, and its answer is lost. */
  losesAnswers: boolean;
  /** Messages that reached the server. */
  sent: number;
  readonly fetch: typeof fetch;
}

export function network(): Network {
  const streams = new Set<AbortController>();
  const net = {
    losesAnswers: false,
    sent: 0,
    up: true,
    get isUp() {
      return net.up;
    },
    set isUp(isUp: boolean) {
      net.up = isUp;
      if (!isUp) for (const stream of streams) stream.abort();
    },
    fetch: (async (address: string, init: RequestInit = {}) => {
      if (!net.up) throw new TypeError("no network");
      const isStream = String(address).includes("/api/events");
      const cut = new AbortController();
      if (isStream) {
        streams.add(cut);
        init.signal?.addEventListener("abort", () => cut.abort());
      }
      const answer = await fetch(address, isStream ? { ...init, signal: cut.signal } : init);
      if (init.method === "POST") net.sent += 1;
      if (!isStream && (net.losesAnswers || !net.up)) throw new TypeError("the answer was lost");
      return answer;
    }) as typeof fetch,
  };
  return net;
}

export interface Page {
  readonly source: DocumentSource;
  readonly net: Network;
  readonly events: SourceEvent[];
  readonly items: Items;
  readonly session: Items;
  readonly folder: string;
  /** The car as this page shows it: what the last event or call said. */
  car: CarState | undefined;
  readonly get: (path: string) => unknown;
  readonly told: (kind: SourceEvent["kind"]) => readonly SourceEvent[];
  /** The page is loaded anew: only what the browser keeps is there. */
  readonly reload: () => Promise<Page>;
}

/** A page of its own browser that has opened the car; `kept` and `session` are of an earlier load of it. */
export async function page(
  port: number,
  name = "saltbush",
  kept: { readonly items: Items; readonly session: Items; readonly net: Network; readonly folder?: string } = {
    items: memoryItems(new Map(), true),
    session: memoryItems(new Map(), true),
    net: network(),
  },
): Promise<Page> {
  const base = `http://127.0.0.1:${port}/`;
  const folder = kept.folder ?? ((await (await fetch(`${base}api/ready`)).json()) as { folder: string }).folder;
  const source = serverSource({ base, folder, items: kept.items, session: kept.session, fetch: kept.net.fetch });
  const events: SourceEvent[] = [];
  const made: Page = {
    source,
    net: kept.net,
    events,
    items: kept.items,
    session: kept.session,
    folder,
    car: undefined,
    get: (path) =>
      path.split(".").reduce<unknown>((at, step) => (at as Record<string, unknown>)?.[step], made.car?.document),
    told: (kind) => events.filter((event) => event.kind === kind),
    reload: () => {
      source.close();
      return page(port, name, { ...kept, folder });
    },
  };
  source.subscribe((event) => {
    events.push(event);
    if (event.kind === "car" && event.state.name === name) made.car = event.state;
  });
  made.car = await source.open(name);
  return made;
}
