import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { told } from "../fake-io.ts";

const read = (name: string) => readFileSync(new URL(`../../../../examples/${name}`, import.meta.url), "utf8");
const DEMO = read("brittlebush.car.json");
const survey = (car: string, ...words: string[]) =>
  told(["survey", "my.car.json", ...words], { files: { "my.car.json": car } });

describe("survey of the example", () => {
  it("names the slip, places the points, and says what to tape next", async () => {
    const { code, out, err } = await survey(DEMO);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toContain("gearbox flange to left frame tube, front: reads 17 3/4, the others say 18 3/4.");
    expect(out).toContain("Perhaps a slip of 1 in");
    expect(out).toMatch(/^hub face +0 +0\.\d\d +35 9\/16 +0\.\d\d +15 3\/4/m);
    expect(out).toMatch(/^1\. shock upper to hub face \(put off so far\): should read 25/m);
    expect(out).not.toMatch(/NaN|undefined|Infinity/);
  });

  it("as JSON carries the covariance of all points", async () => {
    const { out } = await survey(DEMO, "--json");
    const made = JSON.parse(out);
    expect(made.covariance).toHaveLength(3 * made.points.length);
    expect(made.suspicions).toHaveLength(1);
  });

  it("works before there is a car, and says what nothing tells", async () => {
    const bare = JSON.parse(DEMO);
    bare.survey.readings = [];
    const { code, out, err } = await survey(JSON.stringify(bare));
    expect(code).toBe(0);
    expect(err).toContain("no car yet");
    expect(out).toContain("How far forward the hub face is cannot be told.");
  });

  it("asks for a survey where there is none", async () => {
    const { code, err } = await survey(read("saltbush.car.json"));
    expect(code).not.toBe(0);
    expect(err).toContain("The document has no survey");
  });
});
