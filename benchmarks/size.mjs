// Script of the built page, gzipped: what is fetched before the car can be seen, and all there is. The same on every machine.
// Run after the page is built: node benchmarks/size.mjs
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";

const APP = fileURLToPath(new URL("../packages/workbench/dist/app", import.meta.url));
/** kB. */
const AIMS = { first: 120, all: 300 };

if (existsSync(APP)) report();
else console.log("Script sizes are left out: the page is not built");

function report() {
  const scripts = [...readdirSync(join(APP, "assets")).map((name) => `assets/${name}`), ...readdirSync(APP)].filter(
    (name) => name.endsWith(".js") && name !== "service-worker.js",
  );
  const kB = (names) => names.reduce((sum, name) => sum + gzipSync(readFileSync(join(APP, name))).length, 0) / 1000;
  const entries = [...readFileSync(join(APP, "index.html"), "utf8").matchAll(/src="\.\/([\w./-]+\.js)"/g)];
  const first = reached(entries.map(([, name]) => name));
  say("before the car can be seen", kB(first), AIMS.first);
  say("all there is, workers and 3D too", kB(scripts), AIMS.all);
  const scene = scripts.filter((name) => /\/scene-/.test(name));
  console.log(`          of it the 3D scene, fetched when asked for: ${kB(scene).toFixed(0)} kB`);
}

/** The scripts, with everything that they import at once. */
function reached(names) {
  const found = new Set(names);
  for (const name of found) {
    const text = readFileSync(join(APP, name), "utf8");
    for (const [, inner] of text.matchAll(/(?:from|import)\s*"\.\/([\w.-]+\.js)"/g)) found.add(`assets/${inner}`);
  }
  return [...found];
}

function say(what, size, aim) {
  console.log(`${size <= aim ? "met    " : "NOT MET"}  script ${what}: ${size.toFixed(0)} kB gzipped (aim ${aim})`);
}
