import { fileURLToPath } from "node:url";
import type { Plugin } from "vite";

const source = (path: string): string => fileURLToPath(new URL(`../${path}`, import.meta.url));

/** The page's workers: name of the built file, and source. */
const WORKERS: Readonly<Record<string, string>> = {
  "job-worker": source("src/jobs/job.worker.ts"),
  "mesh-worker": source("src/scene/mesh/mesh.worker.ts"),
};

const STARTED = /new Worker\(new URL\("\.\/(\w+)\.worker\.ts", import\.meta\.url\)/g;

/**
 * Workers are entries of the same build as the page, so that engine and geometry are in it once and not once more for each.
 * A worker's own file lies beside the page under a plain name and is asked for anew at each visit; what it imports has hashed
 * names like everything else.
 */
export function sharedWorkers(): Plugin {
  return {
    name: "armwright-shared-workers",
    apply: "build",
    enforce: "pre",
    config: () => ({
      build: {
        // In a worker there is no document that what will be needed could be named in.
        modulePreload: false as const,
        rolldownOptions: {
          input: { index: source("index.html"), ...WORKERS },
          output: {
            entryFileNames: ({ name }: { readonly name: string }) =>
              name in WORKERS ? "[name].js" : "assets/[name]-[hash].js",
          },
        },
      },
    }),
    transform: (code) =>
      STARTED.test(code) ? { code: code.replace(STARTED, 'new Worker("./$1-worker.js"'), map: null } : undefined,
    transformIndexHtml: {
      order: "post",
      // The page itself can: the browser then fetches what its first script imports together with it.
      handler: (_, { bundle = {}, chunk }) => {
        const found = new Set(chunk?.imports ?? []);
        for (const file of found) {
          const part = bundle[file];
          if (part?.type === "chunk") for (const inner of part.imports) found.add(inner);
        }
        return [...found].map((file) => ({
          tag: "link",
          attrs: { rel: "modulepreload", href: `./${file}`, crossorigin: true },
          injectTo: "head" as const,
        }));
      },
    },
  };
}
