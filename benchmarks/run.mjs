// Builds the engine and the benchmark, then runs it: node benchmarks/run.mjs
import { spawnSync } from "node:child_process";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
const root = dirname(here);
const typescript = createRequire(import.meta.url).resolve("typescript/package.json");
const built = spawnSync(process.execPath, [join(dirname(typescript), "bin/tsc"), "--build", here], {
  cwd: root,
  stdio: "inherit",
});
if (built.status !== 0) {
  console.error("The benchmark does not build.");
  process.exit(1);
}
await import("./dist/main.js");
console.log("\nThe page in Chromium");
await import("./drag.mjs");
await import("./size.mjs");
