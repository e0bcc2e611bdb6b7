/** What a build consists of: its name and its files, relative to the page's folder. */
export interface Build {
  readonly version: string;
  readonly files: readonly string[];
}

/**
 * The service worker's script. It fetches every file of the build once, answers from these, gives the page to every
 * visit, and leaves the server's own addresses alone. Another build has another version, is fetched beside the old one,
 * and takes over when the page says so or when the last page of the old one is closed.
 */
export const serviceWorkerSource = ({ version, files }: Build): string => `// Made by the build.
const CACHE = ${JSON.stringify(`armwright-${version}`)};
const FILES = ${JSON.stringify(["./", ...files])};
const home = new URL("./", self.location.href);
const known = new Set(FILES.map((file) => new URL(file, home).href));

self.addEventListener("install", (event) => {
  event.waitUntil(
    caches.open(CACHE).then((cache) => cache.addAll(FILES.map((file) => new Request(new URL(file, home), { cache: "reload" })))),
  );
});

self.addEventListener("activate", (event) => {
  const clear = async () => {
    for (const name of await caches.keys()) {
      if (name.startsWith("armwright-") && name !== CACHE) await caches.delete(name);
    }
    await self.clients.claim();
  };
  event.waitUntil(clear());
});

self.addEventListener("message", (event) => {
  if (event.data === "take over") self.skipWaiting();
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const address = new URL(request.url);
  if (request.method !== "GET" || address.origin !== home.origin || !address.pathname.startsWith(home.pathname)) return;
  const path = address.pathname.slice(home.pathname.length);
  if (/^(?:api|pair)(?:[/.]|$)/.test(path)) return;
  const plain = address.origin + address.pathname;
  if (request.mode === "navigate") event.respondWith(kept(home.href, request));
  else if (known.has(plain)) event.respondWith(kept(plain, request));
});

async function kept(address, request) {
  const cache = await caches.open(CACHE);
  return (await cache.match(address)) ?? fetch(request);
}
`;
