import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

// Tests run on the sources, so that a failing line points at what was written.
const source = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const alias = [
  { find: /^@armwright\/engine\/document$/, replacement: source("./packages/engine/src/document/index.ts") },
  { find: /^@armwright\/([a-z]+)$/, replacement: source("./packages/$1/src/index.ts") },
];
const BROWSER = "packages/*/test/**/*.browser.test.ts";

export default defineConfig({
  test: {
    // All cores: by itself it would leave one free, which on two cores is half of them.
    maxWorkers: "100%",
    reporters: ["default", "./tools/plain-reporter.ts"],
    projects: [
      {
        resolve: { alias },
        test: { name: "unit", include: ["packages/*/test/**/*.test.ts"], exclude: [BROWSER], testTimeout: 60_000 },
      },
      {
        resolve: { alias },
        // One page at a time: the browser is heavier than the tests.
        test: { name: "browser", include: [BROWSER], testTimeout: 90_000, hookTimeout: 90_000, fileParallelism: false },
      },
    ],
  },
});
