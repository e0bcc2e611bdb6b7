import type { Dimension, Landing, LandingHistory, UnitSystem } from "@armwright/engine";
import { numberOut, unitName } from "../units-out.ts";

const COLUMNS: readonly (readonly [keyof LandingHistory, string, Dimension])[] = [
  ["travel", "travel", "length"],
  ["bodyHeight", "body height", "length"],
  ["wheelHeight", "tyre above ground", "length"],
  ["wheelLoad", "wheel load", "force"],
  ["shockForce", "shock force", "force"],
  ["shockSpeed", "shock speed", "speed"],
  ["stopForce", "bump stop force", "force"],
  ["strapForce", "strap force", "force"],
];
const GRAVITY = 9.80665;

/** The whole history, a row for each of the solver's steps. */
export function landingCsv({ history }: Landing, units: UnitSystem): string {
  const head = [
    "time [s]",
    ...COLUMNS.map(([, name, dimension]) => `${name} [${unitName(dimension, units)}]`),
    "body acceleration [g]",
  ];
  const rows = Array.from(history.time, (time, i) =>
    [
      Number(time.toPrecision(9)),
      ...COLUMNS.map(([key, , dimension]) => Number(numberOut(history[key][i]!, dimension, units).toPrecision(7))),
      Number((history.bodyAcceleration[i]! / GRAVITY).toPrecision(6)),
    ].join(","),
  );
  return `${[head.join(","), ...rows].join("\r\n")}\r\n`;
}
