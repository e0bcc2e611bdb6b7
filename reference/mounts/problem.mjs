// Writes the small problems that optimise.py searches: everything a judge of its own needs, as plain numbers.
import { readFileSync, writeFileSync } from "node:fs";
import { readCarDocument } from "../../packages/engine/dist/document/index.js";
import { makeCorner } from "../../packages/engine/dist/index.js";
import { tubeLine } from "../../packages/engine/dist/mounts/grid.js";
import { lowerPath } from "../../packages/engine/dist/mounts/movement.js";
import { makeSearch } from "../../packages/engine/dist/mounts/search.js";
import { requestOf } from "./request.mjs";

const problems = ["saltbush-bare"].map((name) => {
  const text = readFileSync(new URL(`../../examples/${name}.car.json`, import.meta.url), "utf8");
  const { car } = readCarDocument(text);
  const corner = makeCorner(car);
  const request = requestOf(car, corner);
  const search = makeSearch(corner, request);
  const { movement } = search;
  const lines = request.lower.map((zone) => {
    const { from, to, on } = tubeLine(corner, zone);
    const ends = [from, to].map((point) => lowerPath(corner, movement, { point, on, zone: 0 }));
    const arm = corner.arms.find(({ body }) => body === on);
    return {
      at: ends.map((path) => [...path.at]),
      velocity: ends.map((path) => [...path.velocity]),
      bolt: [...Object.values(arm.axis)],
      hinge: [...Object.values(arm.point)],
      body: on,
    };
  });
  const obstacles = search.obstacles.map((each) => ({
    ...each,
    data: [...each.data],
    way: undefined,
    reach: undefined,
  }));
  return { name, request, ride: movement.ride, stations: movement.travels.length, lines, obstacles };
});
writeFileSync(new URL("problems.json", import.meta.url), `${JSON.stringify(problems)}\n`);
