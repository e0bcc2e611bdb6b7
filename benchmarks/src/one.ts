import { makeCorner, writeRow } from "../../packages/engine/dist/cycle/corner.js";
import { stations } from "../../packages/engine/dist/cycle/cycle.js";
import { designState } from "../../packages/engine/dist/linkage/motion-state.js";
import { benchmarkCar, BUMP, DROOP, POSITIONS } from "./cars.js";
const travels = stations(DROOP, BUMP, POSITIONS);
const names = (process.argv[2] ?? "h-arm").split(",") as "h-arm"[];
const row = new Float64Array(64);
const best: Record<string, number> = {};
const time = (name: string, f: () => void, n: number) => {
  const t = performance.now(); for (let i = 0; i < n; i++) f(); const d = (performance.now() - t) * 1e3 / n;
  best[name] = Math.min(best[name] ?? 1e9, d);
};
const corners = names.map((n) => makeCorner(benchmarkCar(n)));
const state = designState();
const statesOf = corners.map((c) => [...travels].map((t) => { const s = designState(); c.mechanism.solve(t, s); return s; }));
for (let r = 0; r < 100; r++) corners.forEach((c, k) => {
  const states = statesOf[k]!;
  time(`${names[k]} row`, () => { for (let i = 0; i < 41; i++) writeRow(c, states[i]!, row); }, 200);
  time(`${names[k]} solve`, () => { for (let i = 0; i < 41; i++) c.mechanism.solve(travels[i]!, state); }, 200);
  time(`${names[k]} both`, () => { for (let i = 0; i < 41; i++) { c.mechanism.solve(travels[i]!, state); writeRow(c, state, row); } }, 200);
});
for (const k in best) console.log(k.padEnd(30), best[k]!.toFixed(2));
