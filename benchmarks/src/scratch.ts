import { makeCorner, writeRow } from "../../packages/engine/dist/cycle/corner.js";
import { moveThrough, stations } from "../../packages/engine/dist/cycle/cycle.js";
import { designState } from "../../packages/engine/dist/linkage/motion-state.js";
import { CProgram, compileC } from "./c-program.js";
import { BUMP, benchmarkCar, DROOP, POSITIONS } from "./cars.js";
import { constantsForC } from "./constants.js";

const kinds = ["h-arm", "double-a-arm", "five-link"] as const;
const travels = stations(DROOP, BUMP, POSITIONS);
const corners = kinds.map((k) => makeCorner(benchmarkCar(k)));
console.log(compileC());
const state = designState(),
  row = new Float64Array(64);
const design = designState();
const best: Record<string, number> = {};
const note = (name: string, d: number) => {
  best[name] = Math.min(best[name] ?? 1e9, d);
};
const time = (name: string, f: () => void, n: number) => {
  const t = performance.now();
  for (let i = 0; i < n; i++) f();
  note(name, ((performance.now() - t) * 1e3) / n);
};
const cs = corners.map((c) => new CProgram(c.kind.kind, constantsForC(c, travels)));
for (let r = 0; r < 40; r++)
  for (let ci = 0; ci < 3; ci++) {
    const c = corners[ci]!;
    const k = c.kind.kind;
    note(k + " C", ((await cs[ci]!.time(200)) * 1e6) / 200);
    time(
      k + " solve",
      () => {
        state.set(design);
        for (let i = 0; i < travels.length; i++) c.mechanism.solve(travels[i]!, state);
      },
      200,
    );
    time(
      k + " solve+row",
      () => {
        state.set(design);
        for (let i = 0; i < travels.length; i++) {
          c.mechanism.solve(travels[i]!, state);
          writeRow(c, state, row);
        }
      },
      200,
    );
    time(
      k + " moveThrough",
      () => {
        moveThrough(c, travels);
      },
      200,
    );
  }
for (let ci = 0; ci < 3; ci++) {
  const c = corners[ci]!;
  const cy = moveThrough(c, travels);
  let s = 0,
    its = 0;
  state.set(design);
  for (let i = 0; i < travels.length; i++) {
    its += c.mechanism.solve(travels[i]!, state);
    for (let k = 0; k < cy.width; k++) s += cy.table[i * cy.width + k]! * (1 + ((i * 7 + k * 3) % 11));
  }
  const cc = await cs[ci]!.sum();
  console.log(
    c.kind.kind,
    cy.travels.length,
    s.toPrecision(15),
    its,
    cc.sum.toPrecision(15),
    cc.iterations,
    Math.abs(cc.sum / s - 1),
  );
  cs[ci]!.close();
}
for (const k in best) console.log(k.padEnd(30), best[k]!.toFixed(2));
