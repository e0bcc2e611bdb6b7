// biome-ignore-all lint/style/noRestrictedImports: this runs in the build, not in the page.
import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import type { Plugin } from "vite";
import { markPng } from "./icon.ts";
import { ICON_SIZES, manifest } from "./manifest.ts";
import { serviceWorkerSource } from "./service-worker-source.ts";

export const SERVICE_WORKER = "service-worker.js";

/**
 * Makes the built page installable and able to start without a network: writes the manifest, the icons and a service
 * worker that knows every file of the build, and names them in the page's head.
 */
export function offline(): Plugin {
  let publicFolder = "";
  return {
    name: "armwright-offline",
    apply: "build",
    enforce: "post",
    configResolved: (config) => {
      publicFolder = config.publicDir;
    },
    transformIndexHtml: () => [
      // The manifest is asked for like everything else: with the cookie of a paired device.
      link({ rel: "manifest", href: "./manifest.webmanifest", crossorigin: "use-credentials" }),
      link({ rel: "apple-touch-icon", href: "./icon-180.png" }),
      meta("theme-color", "#F3EEE2", "(prefers-color-scheme: light)"),
      meta("theme-color", "#0F2234", "(prefers-color-scheme: dark)"),
    ],
    generateBundle(_, bundle) {
      const made = new Map<string, string | Uint8Array>([["manifest.webmanifest", JSON.stringify(manifest, null, 2)]]);
      for (const size of ICON_SIZES) made.set(`icon-${size}.png`, markPng(size));
      for (const [fileName, source] of made) this.emitFile({ type: "asset", fileName, source });
      const contents = new Map<string, string | Uint8Array>([...publicFiles(publicFolder), ...made]);
      for (const [file, part] of Object.entries(bundle)) {
        if (!file.endsWith(".map")) contents.set(file, part.type === "chunk" ? part.code : part.source);
      }
      this.emitFile({ type: "asset", fileName: SERVICE_WORKER, source: serviceWorkerSource(buildOf(contents)) });
    },
  };
}

/** Names a build by its files' names and contents: the same for the same files. */
export function buildOf(contents: ReadonlyMap<string, string | Uint8Array>): {
  readonly version: string;
  readonly files: readonly string[];
} {
  const files = [...contents.keys()].filter((file) => file !== SERVICE_WORKER && file !== "index.html").sort();
  const hash = createHash("sha256");
  for (const file of [...files, "index.html"])
    hash
      .update(`${file}\0`)
      .update(contents.get(file) ?? "")
      .update("\0");
  return { version: hash.digest("hex").slice(0, 16), files };
}

function publicFiles(folder: string): readonly (readonly [string, Uint8Array])[] {
  if (folder === "" || !existsSync(folder)) return [];
  const names = readdirSync(folder, { recursive: true }).map(String);
  return names
    .filter((name) => statSync(join(folder, name)).isFile())
    .map((name) => [name.replaceAll("\\", "/"), readFileSync(join(folder, name))]);
}

const link = (attrs: Record<string, string>) => ({ tag: "link", attrs, injectTo: "head" as const });
const meta = (name: string, content: string, media: string) => ({
  tag: "meta",
  attrs: { name, content, media },
  injectTo: "head" as const,
});
