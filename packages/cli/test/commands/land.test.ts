import { readFileSync } from "node:fs";
import { cornerModel, type Landing, runAxle, runLanding, study, USUAL_GYRATION } from "@armwright/engine";
import { readCarDocument } from "@armwright/engine/document";
import { describe, expect, it } from "vitest";
import { told } from "../fake-io.ts";
import { inForce, inInches, inMillimetres, rowOf, sectionOf } from "./report-rows.ts";

const CAR = "my.car.json";
const G = 9.80665;
const read = (name: string): string => readFileSync(new URL(`../../../../examples/${name}`, import.meta.url), "utf8");
const land = (text: string, ...words: string[]) => told(["land", CAR, ...words], { files: { [CAR]: text } });

/** The metric example with one spring of its own, so that it can land. */
function metricCar(): string {
  const document = JSON.parse(read("juniper.car.json"));
  document.shock.springs = { main: { rate: 60, freeLength: 330, solidLength: 110 }, preload: 0 };
  return JSON.stringify(document);
}

function carOf(text: string) {
  const reading = readCarDocument(text);
  if (!reading.ok) throw new Error("the example does not read");
  const made = study(reading.car);
  const found = cornerModel(made);
  if (!found.ok) throw new Error(found.need);
  return { corner: made.corner, model: found.model };
}

describe.each([
  { units: "inch-pound", text: read("saltbush.car.json"), height: 24 * 0.0254, words: "24", title: "DROP FROM 24 IN" },
  { units: "metric", text: metricCar(), height: 0.3, words: "300", title: "DROP FROM 300 MM" },
] as const)("a drop, $units", ({ units, text, height, words, title }) => {
  const { corner, model } = carOf(text);
  const landing = runLanding(corner, model, { kind: "drop", height });
  const isMetric = units === "metric";
  const travel = isMetric ? inMillimetres : inInches;
  const force = inForce(units);
  const unit = isMetric ? "N" : "lb";
  const speed = (value: number): string =>
    isMetric ? `${value.toFixed(2)} m/s` : `${(value / 0.0254).toFixed(0)} in/s`;

  it("tells travel, bottoming and every peak with its time and travel", async () => {
    const { code, out, err } = await land(text, "--drop", words);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toContain(
      `Travel used: ${travel(landing.travel.bump)} to ${travel(landing.travel.droop)} ${isMetric ? "mm" : "in"};`,
    );
    expect(out).toContain(landing.bottomings === 0 ? "It does not bottom." : "IT BOTTOMS ONCE");
    expect(landing.bottomings).toBe(isMetric ? 0 : 1);
    expect(out).toContain(`Tyre off the ground for ${landing.airTime.toFixed(2)} s in all.`);
    expect(sectionOf(out, title).length).toBeGreaterThan(3);
    const lines = sectionOf(out, "PEAKS");
    const { peaks } = landing;
    const at = ({ time, travel: where }: Landing["peaks"]["wheelLoad"]) => `${time.toFixed(2)} ${travel(where)}`;
    const carried = (model.sprungMass + model.unsprungMass) * G;
    const { wheelLoad, shockForce, shockSpeedIn, shockSpeedOut, stopForce, bodyAcceleration } = peaks;
    expect(rowOf(lines, "wheel load")).toBe(
      `${force(wheelLoad.value)} ${unit} ${(wheelLoad.value / carried).toFixed(1)} times standing ${at(wheelLoad)}`,
    );
    expect(rowOf(lines, "shock")).toBe(`${force(shockForce.value)} ${unit} springs, gas, damper ${at(shockForce)}`);
    expect(rowOf(lines, "shock going in")).toBe(`${speed(shockSpeedIn.value)} ${at(shockSpeedIn)}`);
    expect(rowOf(lines, "shock coming out")).toBe(`${speed(shockSpeedOut.value)} ${at(shockSpeedOut)}`);
    expect(rowOf(lines, "bump stop")).toBe(`${force(stopForce.value)} ${unit} ${at(stopForce)}`);
    expect(rowOf(lines, "body pushed up")).toBe(
      `${(bodyAcceleration.value / G).toFixed(1)} g over standing ${at(bodyAcceleration)}`,
    );
  });

  it("gives the peaks as load cases in g of the wheel's own weight, which read as a document's", async () => {
    const { out } = await land(text, "--drop", words);
    const cases = [...out.matchAll(/^ {2}(\{ "name": .*\})$/gm)].map(([, json]) => JSON.parse(json!));
    expect(cases).toHaveLength(2);
    const carried = (model.sprungMass + model.unsprungMass) * G;
    expect(cases[0].vertical).toBeCloseTo(landing.peaks.wheelLoad.value / carried, 1);
    const document = JSON.parse(text);
    document.loads = { cases };
    const again = await told(["loads", CAR, "--case", cases[0].name], { files: { [CAR]: JSON.stringify(document) } });
    expect({ code: again.code, err: again.err }).toEqual({ code: 0, err: "" });
    expect(
      Number(/On the tyre at the ground: (\d+) /.exec(again.out)![1]) / Number(force(landing.peaks.wheelLoad.value)),
    ).toBeCloseTo(1, 2);
  });

  it("as JSON in the document's units, as CSV with one line a time", async () => {
    const json = JSON.parse((await land(text, "--drop", words, "--json")).out);
    const wheel = JSON.stringify(json).match(/"wheelLoad":\{[^}]*"value":(-?[\d.]+)/);
    expect(Number(wheel![1]) / (landing.peaks.wheelLoad.value / (isMetric ? 1 : 4.4482216152605))).toBeCloseTo(1, 3);
    const csv = (await land(text, "--drop", words, "--csv")).out.trim().split("\n");
    expect(csv.length).toBeGreaterThan(landing.history.time.length);
  });
});

describe("land", () => {
  it("on one wheel: both wheels' peaks and the body's roll", async () => {
    const text = read("saltbush.car.json");
    const { corner, model } = carOf(text);
    const halfTrack = corner.wheelCentre.y;
    const axle = runAxle(
      { left: corner, right: corner },
      { left: model, right: model, halfTrack, gyration: USUAL_GYRATION * halfTrack },
      { kind: "drop", height: 24 * 0.0254, otherLower: 12 * 0.0254 },
    );
    const { code, out } = await land(text, "--drop", "24", "--one-wheel");
    expect(code).toBe(0);
    const force = inForce("inch-pound");
    expect(rowOf(sectionOf(out, "PEAKS, LEFT WHEEL"), "wheel load")).toContain(
      `${force(axle.left.peaks.wheelLoad.value)} lb`,
    );
    expect(rowOf(sectionOf(out, "PEAKS, RIGHT WHEEL"), "wheel load")).toContain(
      `${force(axle.right.peaks.wheelLoad.value)} lb`,
    );
    expect(axle.left.peaks.wheelLoad.value).not.toBe(axle.right.peaks.wheelLoad.value);
    expect(sectionOf(out, "THE BODY").join(" ")).toMatch(/roll/i);
  });

  it("says what is missing of a car that cannot land, and refuses two ways to write", async () => {
    const bare = await land(read("juniper.car.json"), "--drop", "300");
    expect(bare.code).toBe(2);
    expect(bare.err).toContain('The document has no springs: add "springs" to its shock');
    const both = await land(read("saltbush.car.json"), "--json", "--csv");
    expect(both.code).toBe(2);
    expect(both.err).toContain("--csv and --json are two ways to write: keep one.");
  });
});
