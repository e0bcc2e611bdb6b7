// Lets CalculiX (ccx) solve the frames of frames.json with 16 and 32 B31 elements a member, extrapolates, and writes
// calculix.json: the movements of every free node, mm, vehicle axes as in frames.json. Run by rebuild.sh.
import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";

const [, , source, work, target] = process.argv;
const { young, frames } = JSON.parse(readFileSync(source, "utf8"));

const subtract = (a, b) => a.map((value, i) => value - b[i]);
const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const unit = (a) => a.map((value) => value / Math.hypot(...a));

/** A direction square to the member, for the section's first axis: any will do, the sections are square. */
function across(along) {
  const way = unit(along);
  const helper = Math.abs(way[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
  return unit(cross(way, helper));
}

function inputOf(frame, elementsEach) {
  const number = new Map(Object.keys(frame.nodes).map((id, index) => [id, index + 1]));
  const nodes = [...Object.values(frame.nodes)].map((at, index) => [index + 1, ...at]);
  const lines = [];
  const sections = [];
  let element = 0;
  frame.members.forEach(([from, to, side], member) => {
    const a = frame.nodes[from];
    const b = frame.nodes[to];
    let last = number.get(from);
    const name = `M${member}`;
    lines.push(`*ELEMENT, TYPE=B31, ELSET=${name}`);
    for (let k = 1; k <= elementsEach; k += 1) {
      let next = number.get(to);
      if (k < elementsEach) {
        next = nodes.length + 1;
        nodes.push([next, ...a.map((value, i) => value + ((b[i] - value) * k) / elementsEach)]);
      }
      element += 1;
      lines.push(`${element}, ${last}, ${next}`);
      last = next;
    }
    sections.push(
      `*BEAM SECTION, ELSET=${name}, MATERIAL=STEEL, SECTION=RECT`,
      `${side}, ${side}`,
      across(subtract(b, a))
        .map((value) => value.toFixed(12))
        .join(", "),
    );
  });
  return [
    "*NODE, NSET=ALL",
    ...nodes.map(([id, ...at]) => `${id}, ${at.map((value) => value.toFixed(9)).join(", ")}`),
    ...lines,
    "*MATERIAL, NAME=STEEL",
    "*ELASTIC",
    `${young}, 0.0`,
    ...sections,
    "*NSET, NSET=SHOWN",
    ...[...number.values()].map(String),
    "*BOUNDARY",
    ...frame.clamps.map((id) => `${number.get(id)}, 1, 6`),
    "*STEP",
    "*STATIC",
    "*CLOAD",
    ...Object.entries(frame.loads).flatMap(([id, force]) =>
      force.map((value, axis) => `${number.get(id)}, ${axis + 1}, ${value}`),
    ),
    "*NODE PRINT, NSET=SHOWN",
    "U",
    "*END STEP",
    "",
  ].join("\n");
}

function movements(frame, elementsEach) {
  const job = join(work, "frame");
  writeFileSync(`${job}.inp`, inputOf(frame, elementsEach));
  execFileSync("ccx", ["-i", "frame"], { cwd: work, stdio: "pipe" });
  const ids = Object.keys(frame.nodes);
  const found = {};
  for (const line of readFileSync(`${job}.dat`, "utf8").split("\n")) {
    const numbers = line.trim().split(/\s+/).map(Number);
    if (numbers.length === 4 && numbers.every(Number.isFinite)) found[ids[numbers[0] - 1]] = numbers.slice(1);
  }
  return found;
}

const results = frames.map((frame) => {
  const coarse = movements(frame, 16);
  const fine = movements(frame, 32);
  const free = Object.keys(frame.nodes).filter((id) => !frame.clamps.includes(id));
  // The error of a linear element goes with the square of its length.
  const extrapolated = Object.fromEntries(
    free.map((id) => [id, fine[id].map((value, i) => value + (value - coarse[id][i]) / 3)]),
  );
  return { name: frame.name, movements: extrapolated };
});
const text = results.map((result) => `    ${JSON.stringify(result)}`).join(",\n");
writeFileSync(
  target,
  `{\n  "program": "CalculiX 2.20, B31, 16 and 32 elements a member, extrapolated",\n  "frames": [\n${text}\n  ]\n}\n`,
);
