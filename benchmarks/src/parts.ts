import { carryAll } from "../../packages/engine/dist/cycle/carried-list.js";
import { makeCorner } from "../../packages/engine/dist/cycle/corner.js";
import { stations } from "../../packages/engine/dist/cycle/cycle.js";
import { writeRodEndSwings } from "../../packages/engine/dist/cycle/rod-end-swing.js";
import { writeShockMotion } from "../../packages/engine/dist/cycle/shock-motion.js";
import { writeTravelStops } from "../../packages/engine/dist/cycle/travel-stops.js";
import { writeWheelAttitude } from "../../packages/engine/dist/cycle/wheel-attitude.js";
import { writeShaftMotion } from "../../packages/engine/dist/driveline/shaft-motion.js";
import { designState } from "../../packages/engine/dist/linkage/motion-state.js";
import { BUMP, benchmarkCar, DROOP, POSITIONS } from "./cars.js";

const kinds = ["h-arm", "double-a-arm", "five-link"] as const;
const travels = stations(DROOP, BUMP, POSITIONS);
const corners = kinds.map((k) => makeCorner(benchmarkCar(k)));
const row = new Float64Array(64);
const best: Record<string, number> = {};
const time = (name: string, f: () => void, n: number) => {
  const t = performance.now();
  for (let i = 0; i < n; i++) f();
  const d = ((performance.now() - t) * 1e3) / n;
  best[name] = Math.min(best[name] ?? 1e9, d);
};
const states = corners.map((c) =>
  [...travels].map((t) => {
    const s = designState();
    c.mechanism.solve(t, s);
    return s;
  }),
);
for (let r = 0; r < 60; r++)
  corners.forEach((c, ci) => {
    const k = c.kind.kind;
    const ss = states[ci]!;
  time(k + " carry", () => { for (const s of ss) carryAll(c.carried, s); }, 100);
    time(
      k + " attitude",
      () => {
        for (const s of ss) writeWheelAttitude(c.attitude, s, row);
      },
      100,
    );
    time(
      k + " shock",
      () => {
        for (const s of ss) writeShockMotion(c.shock!, s, row);
      },
      100,
    );
    time(
      k + " shaft",
      () => {
        for (const s of ss) writeShaftMotion(c.shaft!, s, row);
      },
      100,
    );
    time(
      k + " stops",
      () => {
        for (const s of ss) writeTravelStops(c.stops, c.carried.now, row);
      },
      100,
    );
    time(
      k + " rodEnds",
      () => {
        for (const s of ss) writeRodEndSwings(c.rodEnds, s, c.carried.now, row);
      },
      100,
    );
  });
for (const k in best) console.log(k.padEnd(30), best[k]!.toFixed(2));
