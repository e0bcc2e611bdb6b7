import { createHash } from "node:crypto";
import { lstat, readFile, realpath } from "node:fs/promises";
import { extname, join, sep } from "node:path";

const KINDS: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".map": "application/json; charset=utf-8",
  ".webmanifest": "application/manifest+json; charset=utf-8",
  ".svg": "image/svg+xml; charset=utf-8",
  ".png": "image/png",
  ".woff2": "font/woff2",
  ".woff": "font/woff",
  ".ttf": "font/ttf",
  ".wasm": "application/wasm",
  ".txt": "text/plain; charset=utf-8",
};

/** A file of the built page; undefined where there is none, it is no plain file, or it lies elsewhere. */
export async function pageFile(
  app: string,
  segments: readonly string[],
  seen: string | undefined,
): Promise<Response | undefined> {
  const asked = segments.length === 0 ? ["index.html"] : segments;
  const path = join(app, ...asked);
  const kind = KINDS[extname(path)];
  const stat = kind ? await lstat(path).catch(() => undefined) : undefined;
  if (!kind || !stat?.isFile()) return undefined;
  if (!(await realpath(path)).startsWith((await realpath(app)) + sep)) return undefined;
  const bytes = await readFile(path);
  const tag = `"${createHash("sha256").update(bytes).digest("base64url").slice(0, 22)}"`;
  // The build puts a hash of the content into the names under assets/.
  const cache = asked[0] === "assets" ? "private, max-age=31536000, immutable" : "no-cache";
  const headers = { "Content-Type": kind, "Cache-Control": cache, ETag: tag };
  return seen === tag ? new Response(null, { status: 304, headers }) : new Response(bytes, { headers });
}
