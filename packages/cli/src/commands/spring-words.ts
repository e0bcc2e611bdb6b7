import { parseLength, ROAD_CLASSES, type RoadClass, type UnitSystem } from "@armwright/engine";
import { Refusal } from "../refusal.ts";

type Values = ReadonlyMap<string, string>;

/** A length named on the command line, m; undefined where it is not. */
export function lengthFrom(values: Values, name: string, units: UnitSystem, sign: "any" | "positive" = "any") {
  const text = values.get(name);
  if (text === undefined) return undefined;
  const parsed = parseLength(text, units);
  if (parsed.ok && Math.abs(parsed.metres) <= 10 && (sign === "any" || parsed.metres > 0)) return parsed.metres;
  throw new Refusal(
    `--${name}: ${JSON.stringify(text)} is not a length${sign === "any" ? "" : " above zero"} such as 3/4.`,
  );
}

export function numberFrom(values: Values, name: string, least: number, most: number): number | undefined {
  const text = values.get(name);
  if (text === undefined) return undefined;
  const value = /^\d+(\.\d+)?$/.test(text.trim()) ? Number(text) : Number.NaN;
  if (value >= least && value <= most) return value;
  throw new Refusal(`--${name}: ${JSON.stringify(text)} is not a number from ${least} to ${most}.`);
}

/** Frequencies aimed at, Hz: `1.0-1.3` or `1.0 to 1.3`. */
export function bandFrom(values: Values): { readonly from: number; readonly to: number } | undefined {
  const text = values.get("frequency");
  if (text === undefined) return undefined;
  const match = /^(\d+(?:\.\d+)?)\s*(?:-|to)\s*(\d+(?:\.\d+)?)$/.exec(text.trim());
  const from = Number(match?.[1]);
  const to = Number(match?.[2]);
  if (match && from > 0 && from < to && to <= 10) return { from, to };
  throw new Refusal(`--frequency: ${JSON.stringify(text)} is not a window such as 1.0-1.3, in Hz.`);
}

export function roadFrom(values: Values): RoadClass {
  const text = (values.get("road") ?? "D").toUpperCase();
  const road = ROAD_CLASSES.find((each) => each === text);
  if (road) return road;
  throw new Refusal(
    `--road: ${JSON.stringify(text)} is no class: ${ROAD_CLASSES.join(", ")} (D: bad dirt road, from memory).`,
  );
}
