// Writes what is made from the program itself: docs/ (JSON Schema and field reference of the car document, JSON Schema of
// the study) and the demo car's study in the README. Run: npm run docs. With --check it writes nothing and exits 1 where a file is out of date.
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const PAGES = [
  ["car.schema.json", ["schema"]],
  ["car-document.md", ["schema", "--reference"]],
  ["study.schema.json", ["schema", "--study"]],
];

const armwright = fileURLToPath(new URL("../packages/cli/bin/armwright.js", import.meta.url));
const isCheck = process.argv.includes("--check");
let isCurrent = true;

mkdirSync(new URL("../docs/", import.meta.url), { recursive: true });
for (const [name, words] of PAGES) keep(`docs/${name}`, run(words));
keep("README.md", readmeWithStudy());
if (isCheck && !isCurrent) process.exit(1);

function run(words) {
  const { stdout, stderr, status } = spawnSync(process.execPath, [armwright, ...words], { encoding: "utf8" });
  if (status === 0) return stdout;
  console.error(stderr);
  process.exit(status ?? 1);
}

/** The README with what stops the demo car's wheel, as the command prints it, between its two marks. */
function readmeWithStudy() {
  const readme = readFileSync(new URL("../README.md", import.meta.url), "utf8");
  const report = run(["study", fileURLToPath(new URL("../examples/saltbush.car.json", import.meta.url))]);
  const excerpt = report.slice(report.indexOf("WHAT STOPS THE WHEEL"), report.indexOf("FINDINGS")).trimEnd();
  const begin = "<!-- study of the demo car: begin (npm run docs) -->";
  const end = "<!-- study of the demo car: end -->";
  const [before, rest] = readme.split(begin);
  const after = rest.split(end)[1];
  return `${before}${begin}\n\`\`\`\n${excerpt}\n\`\`\`\n${end}${after}`;
}

function keep(name, text) {
  const file = new URL(`../${name}`, import.meta.url);
  if (existsSync(file) && readFileSync(file, "utf8") === text) return;
  isCurrent = false;
  if (isCheck) console.error(`${name} is out of date: npm run docs`);
  else writeFileSync(file, text);
}
