import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

// Tests run on the sources, so that a failing line points at what was written.
const source = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const alias = [
  { find: /^@armwright\/([a-z]+)$/, replacement: source("./packages/$1/src/index.ts") },
  { find: /^@armwright\/engine\/document$/, replacement: source("./packages/engine/src/document/index.ts") },
];

export default defineConfig({
  resolve: { alias },
  test: {
    reporters: ["default", "./tools/plain-reporter.ts"],
    include: ["packages/*/test/**/*.test.ts", "reference/**/*.test.ts"],
    testTimeout: 30_000,
  },
});
