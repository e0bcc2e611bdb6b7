// Makes the stored pictures of the book's sheets anew (packages/book/test/pictures). Look at each before it is kept.
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

const { status } = spawnSync(
  process.execPath,
  ["node_modules/vitest/vitest.mjs", "run", "--project", "unit", "packages/book/test/pictures"],
  {
    cwd: fileURLToPath(new URL("..", import.meta.url)),
    env: { ...process.env, STORE_SHEET_PICTURES: "1" },
    stdio: "inherit",
  },
);
process.exitCode = status ?? 1;
