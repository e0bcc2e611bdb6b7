import { formatLength, parseLength, type Study, solveAt } from "@armwright/engine";
import { readCarDocument } from "@armwright/engine/document";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type UnderTest, until } from "../../../cli/test/bench/bench-under-test.ts";
import { enter, field, ready, takenOut, type Workshop, workshop } from "./bench-in-browser.ts";
import { engineNumbers, plainTexts, shownNumbers, shownResults, shownStops, studyOf } from "./shown-numbers.ts";

let shop: Workshop;
let bench: UnderTest;
beforeAll(async () => {
  shop = await workshop();
  bench = await shop.bench();
});
afterAll(async () => {
  await bench?.end();
  await shop?.close();
});

/** An invented H-arm rear, as it stands on paper: steps of the order of work, places, readings of the tape. */
const PAPER: readonly (readonly [step: string, entries: readonly (readonly [place: string, reading: string])[]])[] = [
  [
    "Spindle",
    [
      ["linkage.lowerArm.outerFront.y", "29 1/2"],
      ["linkage.lowerArm.outerFront.z", "11"],
      ["linkage.lowerArm.outerRear.y", "29 1/2"],
      ["linkage.lowerArm.outerRear.z", "11"],
      ["linkage.upperLink.outer.y", "29 1/4"],
      ["linkage.upperLink.outer.z", "20 1/2"],
    ],
  ],
  [
    "Arms",
    [
      ["linkage.lowerArm.innerFront.y", "11 1/2"],
      ["linkage.lowerArm.innerFront.z", "13"],
      ["linkage.lowerArm.innerRear.y", "11 1/2"],
      ["linkage.lowerArm.innerRear.z", "13"],
      ["linkage.upperLink.inner.y", "13"],
      ["linkage.upperLink.inner.z", "21"],
    ],
  ],
];

const INNER = "linkage.upperLink.inner";
const INCH = 0.0254;
/** What an angle is shown to, degrees. */
const TENTH = 0.1;

test("a new user enters an H-arm rear, finds what stops it, moves the link until camber stays constant, and exports it", async () => {
  const { page, troubles } = await shop.visit(bench.ownLink());
  await ready(page);
  await page.getByRole("button", { name: "Cars" }).click();
  await page.getByRole("button", { name: "New car" }).click();
  await page.getByLabel("H-arm and upper link").check();
  await page.getByLabel("What it is called").fill("Tumbleweed");
  await page.getByLabel("Tyre, height over all").fill("33");
  await page.getByLabel("Track width wanted").fill("72");
  await page.getByLabel("Travel up wanted").fill("7");
  await page.getByLabel("Travel down wanted").fill("6");
  await page.getByRole("button", { name: "Start from a guess" }).click();
  await page.getByRole("heading", { name: "Tumbleweed" }).waitFor();

  for (const [step, entries] of PAPER) {
    await page.locator("nav.order button", { hasText: step }).click();
    for (const [place, reading] of entries) await enter(page, place, reading);
  }
  expect(await page.locator(".fault").count()).toBe(0);

  // What stops it: both ways, and where the first of them leads.
  const onDisk = (): string => bench.onDisk("tumbleweed");
  await until("the file has the last entry", () => onDisk().includes('"inner": { "x": 0, "y": 13, "z": 21 }'));
  const stops = await shownStops(page);
  expect(stops).toEqual(engineNumbers(studyOf(onDisk())).stops);
  const first = page.locator(".stops-table tr.limit.first button").first();
  const [name = ""] = (await plainTexts(first)).map((text) => text.replace(/^\d+/, ""));
  const limit = studyOf(onDisk()).travel.droop.first;
  expect(name).toBe(limit?.label);
  await first.click();
  expect(await tapeReading(page)).toBeCloseTo(limit!.travel / INCH, 2);

  // Camber: read at both stops, a try an inch away, and the rest follows.
  await page.locator("nav.order button", { hasText: "Arms" }).click();
  const start = await camberAtStops(page);
  expect(Math.abs(start.bump - start.ride) + Math.abs(start.droop - start.ride)).toBeGreaterThan(1);
  // First roughly, typed to the half inch; then in the drawing, a sixteenth for each press of an arrow key.
  await straighten(page, "z", 1, tilt, typeRoughly);
  await straighten(page, "y", -1, bow, typeRoughly);
  const typed = [await readField(page, "y"), await readField(page, "z")];
  await straighten(page, "y", -0.5, bow, press);
  await straighten(page, "z", 0.5, tilt, press);
  expect([await readField(page, "y"), await readField(page, "z")]).not.toEqual(typed);
  const held = await camberAtStops(page);
  expect(Math.abs(held.bump - held.ride)).toBeLessThanOrEqual(TENTH + 1e-9);
  expect(Math.abs(held.droop - held.ride)).toBeLessThanOrEqual(TENTH + 1e-9);

  // What is taken out is what was on the page: read anew, it studies the same.
  await page.keyboard.press("0");
  const shown = await shownNumbers(page);
  const text = await takenOut(page);
  expect(readCarDocument(text).ok).toBe(true);
  await until("the file says the same", () => onDisk() === text);
  const exported = studyOf(text);
  const expected = engineNumbers(exported);
  expect(shown.stops).toEqual(expected.stops);
  expect(shown.findings.map((said) => said.replace(/^(?:Must|Mind|Note)\. /, ""))).toEqual(expected.findings);
  for (const line of shown.results) {
    const [, label = "", value] = /^\w+: (.*) \| (.*)$/.exec(line) ?? [];
    expect([label, value]).toEqual([label, expected.result(label)]);
  }
  expect(camberSpread(exported)).toBeLessThan(TENTH);
  await page.locator("nav.order button", { hasText: "Arms" }).click();
  const { inner } = JSON.parse(text).linkage.upperLink;
  for (const axis of ["y", "z"] as const) expect(String(inner[axis])).toBe(await readField(page, axis));
  expect(troubles).toEqual([]);
  await page.context().close();
});

interface Cambers {
  readonly droop: number;
  readonly ride: number;
  readonly bump: number;
}

/** Camber as the sheet shows it with the wheel at each stop and at ride height, degrees. */
async function camberAtStops(page: Page): Promise<Cambers> {
  const at = async (key: string): Promise<number> => {
    await page.locator("svg.tape").focus();
    await page.keyboard.press(key);
    return Number.parseFloat((await shownResults(page)).get("camber") ?? "");
  };
  const [droop, bump, ride] = [await at("End"), await at("Home"), await at("0")];
  expect(await tapeReading(page)).toBe(0);
  return { droop, bump, ride };
}

/** How much more camber the wheel has up than down, and how much more at both ends than between. */
const tilt = ({ bump, droop }: Cambers): number => bump - droop;
const bow = ({ bump, ride, droop }: Cambers): number => (bump + droop) / 2 - ride;

type Axis = "y" | "z";
/** Brings a coordinate of the link's inner point to a place, in. */
type Mover = (page: Page, axis: Axis, to: number) => Promise<void>;

/** Tries a coordinate some way off, and goes to where a straight line through both readings says that it is nought. */
async function straighten(
  page: Page,
  axis: Axis,
  tryBy: number,
  of: (cambers: Cambers) => number,
  move: Mover,
): Promise<void> {
  const from = await inches(page, axis);
  const before = of(await camberAtStops(page));
  if (Math.abs(before) < TENTH / 2) return;
  await move(page, axis, from + tryBy);
  const after = of(await camberAtStops(page));
  // Where no difference is to be read, the point stands as well where it stood.
  await move(page, axis, after === before ? from : from - (before * tryBy) / (after - before));
}

const typeRoughly: Mover = (page, axis, to) =>
  enter(page, `${INNER}.${axis}`, formatLength((Math.round(to * 2) / 2) * INCH, "inch-pound"));

/** Moves the point in the drawing by the arrow keys, a sixteenth each. */
async function press(page: Page, axis: Axis, to: number): Promise<void> {
  const steps = Math.round(to * 16) - Math.round((await inches(page, axis)) * 16);
  await page.locator(`[data-handle="${INNER}"]`).first().focus();
  // From behind, out is to the left.
  const [less, more] = axis === "z" ? ["ArrowDown", "ArrowUp"] : ["ArrowRight", "ArrowLeft"];
  for (let step = 0; step < Math.abs(steps); step += 1) await page.keyboard.press(steps > 0 ? more : less);
  expect(await inches(page, axis)).toBeCloseTo(Math.round(to * 16) / 16, 6);
}

const readField = (page: Page, axis: Axis): Promise<string> => field(page, `${INNER}.${axis}`).inputValue();

async function inches(page: Page, axis: Axis): Promise<number> {
  const parsed = parseLength(await readField(page, axis), "inch-pound");
  if (!parsed.ok) throw new Error("the field holds no length");
  return parsed.metres / INCH;
}

const tapeReading = async (page: Page): Promise<number> =>
  Number(await page.locator("svg.tape").getAttribute("aria-valuenow"));

/** Greatest less least camber from stop to stop, degrees. */
function camberSpread(study: Study): number {
  const camber = study.quantities.find(({ id }) => id === "camber");
  const { droop, bump } = study.travel;
  const values = Array.from({ length: 41 }, (_, index) => {
    const travel = droop.stop.travel + ((bump.stop.travel - droop.stop.travel) * index) / 40;
    return camber?.read(solveAt(study.corner, travel)?.row ?? new Float64Array(), study.corner) ?? Number.NaN;
  });
  return ((Math.max(...values) - Math.min(...values)) * 180) / Math.PI;
}
