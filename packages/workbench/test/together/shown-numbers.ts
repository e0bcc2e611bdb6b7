import { formatLength, formatValue, type LimitReport, type Study, sayFinding, solveAt, study } from "@armwright/engine";
import { readCarDocument } from "@armwright/engine/document";
import type { Locator, Page } from "playwright-core";

/** What the page shows of a car, in plain text: to be laid beside what the engine says of the same document. */
export interface ShownNumbers {
  /** `droop: name | at | spare` of everything that stops the wheel, in the page's order. */
  readonly stops: readonly string[];
  readonly findings: readonly string[];
  /** Of every step: `step: name | value` at ride height. */
  readonly results: readonly string[];
}

const STEPS = ["Stance", "Spindle", "Arms", "Driveshaft", "Travel", "Shock", "Room"] as const;

/** The engine's study of a document's text. */
export function studyOf(text: string): Study {
  const reading = readCarDocument(text);
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  return study(reading.car);
}

/** Reads all of it off the page, choosing each step in turn. */
export async function shownNumbers(page: Page): Promise<ShownNumbers> {
  const stops = await shownStops(page);
  const findings = await plainTexts(page.locator(".findings-list .finding"));
  const results: string[] = [];
  for (const step of STEPS) {
    await page.locator("nav.order button", { hasText: step }).click();
    await page.locator(".sheet-head h2", { hasText: step }).waitFor();
    for (const [name, value] of await shownResults(page)) results.push(`${step}: ${name} | ${value}`);
  }
  return { stops, findings, results };
}

/** The page's list of what stops the wheel, all of it. */
export async function shownStops(page: Page): Promise<readonly string[]> {
  const more = page.locator(".farther button[aria-expanded=false]");
  while ((await more.count()) > 0) await more.first().click();
  const rows: string[] = [];
  let direction = "";
  for (const row of await page.locator(".stops-table tr:not(.farther)").all()) {
    const cells = await plainTexts(row.locator("th, td"));
    const head = /^what stops it in (\w+)$/.exec(cells[0] ?? "");
    if (head) direction = head[1] ?? "";
    // The order stands on a pennant before the name.
    else rows.push(`${direction}: ${(cells[0] ?? "").replace(/^[\d!]+/, "")} | ${cells[1]} | ${cells[2]}`);
  }
  return rows;
}

/** Results of the chosen step at the present travel: name and value. */
export async function shownResults(page: Page): Promise<ReadonlyMap<string, string>> {
  const names = await plainTexts(page.locator(".results li button > span:first-child"));
  const values = await plainTexts(page.locator(".results li b"));
  return new Map(names.map((name, index) => [name, values[index] ?? ""]));
}

/** The same, of the stops and findings, as the engine has it; a result is asked for by its name. */
export function engineNumbers(study: Study): {
  readonly stops: readonly string[];
  readonly findings: readonly string[];
  readonly result: (label: string, travel?: number) => string;
} {
  const signed = (metres: number): string => formatLength(metres, "inch-pound", { sign: true });
  const limitRow = (direction: string, { label, travel, travelLeft }: LimitReport): string =>
    `${direction}: ${label} | ${signed(travel)} | ${formatLength(travelLeft, "inch-pound")}`;
  return {
    stops: (["droop", "bump"] as const).flatMap((direction) => {
      const { stop, limits } = study.travel[direction];
      const name = { strap: "strap", "bump-stop": "bump stop solid", shock: "shock", travel: "travel aimed at" };
      const hard = limits.filter(({ nature }) => nature === "hard");
      return [
        `${direction}: ${name[stop.by]} | ${signed(stop.travel)} | `,
        ...hard.map((limit) => limitRow(direction, limit)),
      ];
    }),
    findings: study.findings.map((finding) => {
      const { sentence, remedy } = sayFinding(finding, "inch-pound");
      return plain(`${sentence} ${remedy}`);
    }),
    result: (label, travel = 0) => {
      const quantity = study.quantities.find((each) => each.label === label);
      const solved = solveAt(study.corner, travel);
      if (!quantity || !solved) throw new Error(`the engine knows no ${label} at ${travel} m`);
      const value = quantity.read(solved.row, study.corner);
      return value === null ? "none" : formatValue(value, quantity.dimension, "inch-pound", { sign: quantity.signed });
    },
  };
}

/** Texts as they are seen, in the engine's spelling: `12 3/16`, a hyphen for minus, `deg`. */
export async function plainTexts(locator: Locator): Promise<readonly string[]> {
  const texts = await locator.evaluateAll((elements) =>
    elements.map((element) => {
      const copy = element.cloneNode(true) as Element;
      // How sure a number is stands behind it, and is held against the engine by itself.
      for (const aside of copy.querySelectorAll(".unseen, .within")) aside.remove();
      for (const fraction of copy.querySelectorAll(".q")) fraction.prepend(" ");
      return copy.textContent ?? "";
    }),
  );
  return texts.map(plain);
}

const plain = (text: string): string =>
  text
    .replaceAll("\u2044", "/")
    .replaceAll("\u2212", "-")
    .replaceAll("\u00b0", " deg")
    .replace(/\s+/g, " ")
    .replace(/([+-]) (?=\d+\/)/g, "$1")
    .trim();
