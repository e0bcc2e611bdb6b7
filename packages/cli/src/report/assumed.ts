import { type Assumption, formatValue, type Study } from "@armwright/engine";
import { meaningOf, parsePath } from "@armwright/engine/document";
import type { Page } from "../text/page.ts";
import { hang } from "../text/wrap.ts";

interface Group {
  readonly study: Study;
  readonly first: Assumption;
  readonly value: string;
  count: number;
}

/** What was left out of the document and put in for it, in words; the same for several parts is told once. */
export function assumedLines(sides: readonly Study[], page: Page): readonly string[] {
  const groups = new Map<string, Group>();
  const told = new Set<string>();
  for (const study of sides) {
    for (const first of study.car.assumed) {
      const value = formatValue(first.value, first.dimension, page.units);
      // Both sides of a car assume the same of what they share.
      if (told.has(`${first.path} ${value}`)) continue;
      told.add(`${first.path} ${value}`);
      const key = JSON.stringify([ofAny(first.path), value, first.because]);
      const group = groups.get(key);
      if (group) group.count += 1;
      else groups.set(key, { study, first, value, count: 1 });
    }
  }
  return [...groups.values()].flatMap(({ study, first, value, count }) => [
    ...hang("", `${whatOf(first.path, count, study)}: ${value}`, page.width),
    ...hang("   ", `${first.because} (${count === 1 ? first.path : ofAny(first.path)})`, page.width),
  ]);
}

/** The same place of any part: `rodEnds[…].boltOn`. */
const ofAny = (path: string): string => path.replace(/\[[^\]]*\]/g, "[…]");

/** Several of a kind, by the section that holds them. */
const SEVERAL: Readonly<Record<string, string>> = { rodEnds: "rod ends", keepOuts: "keep-outs", links: "links" };

/** `Toe at ride height (wheel)`, `Which part holds the bolt, 5 rod ends`. */
function whatOf(path: string, count: number, study: Study): string {
  const steps = (parsePath(path) ?? []).map(String);
  const leaf = meaningOf(path);
  const what = leaf && !leaf.startsWith("`") ? clause(leaf) : `what ends ${inWords(steps.at(-1) ?? path)}`;
  const several = count === 1 ? undefined : steps.map((step) => SEVERAL[step]).find((word) => word !== undefined);
  if (several) return capital(`${what}, ${count} ${several}`);
  return capital(`${what} (${holderOf(steps.slice(0, -1), study)})`);
}

/** The part that a field belongs to, in words. */
function holderOf(steps: readonly string[], { car, corner }: Study): string {
  const [section, name, ...rest] = steps[0] === "right" ? steps.slice(1) : steps;
  const side = steps[0] === "right" ? "right " : "";
  const own = (): string => {
    if (section === "rodEnds") return `rod end, ${corner.pivots.find(({ id }) => id === name)?.label ?? name}`;
    if (section === "keepOuts") return car.keepOuts[Number(name)]?.name ?? "keep-out";
    const { linkage } = car;
    if (section === "linkage" && name === "links" && linkage.kind === "five-link") {
      return `link ${linkage.links[Number(rest[0])]?.name ?? ""}`.trim();
    }
    const words = [section, name, ...rest].flatMap((step) => (step === undefined ? [] : [inWords(step)]));
    return (section === "linkage" ? words.slice(1) : words).join(", ") || "linkage";
  };
  return `${side}${own()}`;
}

/** The first clause of a meaning: `Most that it may tilt`. */
function clause(meaning: string): string {
  const first = /^[^.;:,]+/.exec(meaning)?.[0] ?? meaning;
  return lower(first.replace(/^The part that /, "which part "));
}

/** `yokePhase` as `yoke phase`. */
const inWords = (name: string): string => lower(name.replace(/([a-z])([A-Z])/g, "$1 $2")).toLowerCase();

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
