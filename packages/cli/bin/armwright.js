#!/usr/bin/env node
import { existsSync } from "node:fs";

const main = new URL("../dist/main.js", import.meta.url);
if (existsSync(main)) {
  await import(main.href);
} else {
  process.stderr.write("Armwright is not built yet. In its folder run: npm run build\n");
  process.exitCode = 2;
}
