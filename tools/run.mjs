// The two commands: `npm start` and `npm test`, and their parts. Only Node's own modules here, because nothing may be
// installed yet when it begins.
import { spawnSync } from "node:child_process";
import { existsSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const ROOT = fileURLToPath(new URL("..", import.meta.url));
const OLDEST_NODE = [20, 11];

const COMMANDS = {
  start: () => {
    build();
    node("packages/cli/bin/armwright.js", "bench", ...process.argv.slice(3));
  },
  build,
  lint: () => node("node_modules/@biomejs/biome/bin/biome", "ci", "--error-on-warnings"),
  test: () => {
    build();
    COMMANDS.lint();
    node("tools/write-docs.mjs", "--check");
    // One after the other: a browser beside all cores' worth of unit tests would miss its own time limits.
    for (const project of ["unit", "browser"]) {
      node("node_modules/vitest/vitest.mjs", "run", "--project", project, ...process.argv.slice(3));
    }
  },
  docs: () => {
    build();
    node("tools/write-docs.mjs", ...process.argv.slice(3));
  },
  pictures: () => {
    build();
    node("tools/make-pictures.mjs");
  },
  benchmark: () => {
    build();
    node("benchmarks/run.mjs", ...process.argv.slice(3));
  },
};

/** Compiles every package, and bundles the page. */
function build() {
  node("node_modules/typescript/bin/tsc", "--build");
  node("node_modules/vite/bin/vite.js", "build", "packages/workbench", "--logLevel", "warn");
}

function installWhatIsMissing() {
  const marker = join(ROOT, "node_modules", ".package-lock.json");
  const lock = join(ROOT, "package-lock.json");
  const isCurrent = existsSync(marker) && (!existsSync(lock) || statSync(marker).mtimeMs >= statSync(lock).mtimeMs);
  if (isCurrent) return;
  console.log("Installing what is missing (once).");
  if (npm("ci", "--no-audit", "--no-fund") === 0) return;
  console.log("The lock file did not fit; installing without it.");
  if (npm("install", "--no-audit", "--no-fund") !== 0)
    fail("npm could not install the packages; its own words are above.");
}

function npm(...words) {
  // npm's own script, so that no shell is needed; npm sets this when it runs us.
  const script = process.env.npm_execpath;
  const run = script
    ? spawnSync(process.execPath, [script, ...words], { cwd: ROOT, stdio: "inherit" })
    : spawnSync("npm", words, { cwd: ROOT, stdio: "inherit", shell: process.platform === "win32" });
  return run.status ?? 1;
}

/** Runs a script of Node's; ends this process with its exit code where that is not 0. */
function node(script, ...words) {
  const { status } = spawnSync(process.execPath, [join(ROOT, script), ...words], { cwd: ROOT, stdio: "inherit" });
  if (status !== 0) process.exit(status ?? 1);
}

function fail(sentence) {
  console.error(sentence);
  process.exit(1);
}

const [major = 0, minor = 0] = process.versions.node.split(".").map(Number);
if (major < OLDEST_NODE[0] || (major === OLDEST_NODE[0] && minor < OLDEST_NODE[1])) {
  fail(`Armwright needs Node ${OLDEST_NODE.join(".")} or later; this is ${process.versions.node}.`);
}
const command = COMMANDS[process.argv[2]];
if (!command) fail(`tools/run.mjs takes one of: ${Object.keys(COMMANDS).join(", ")}.`);
installWhatIsMissing();
command();
