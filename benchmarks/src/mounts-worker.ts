import { parentPort, workerData } from "node:worker_threads";
import { makeCorner } from "../../packages/engine/dist/cycle/corner.js";
import { makeSink, scanLower } from "../../packages/engine/dist/mounts/scan.js";
import { makeSearch } from "../../packages/engine/dist/mounts/search.js";

// One part of the search, again each time it is asked.
const { car, request, part, parts } = workerData;
const search = makeSearch(makeCorner(car), request);
parentPort?.on("message", () => {
  const sink = makeSink(search);
  for (let lower = part; lower < search.lower.length; lower += parts) scanLower(search, 0, lower, sink);
  parentPort?.postMessage({ tested: sink.tested, feasible: sink.upper.length });
});
parentPort?.postMessage("ready");
