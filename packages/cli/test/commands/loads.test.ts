import { readFileSync } from "node:fs";
import { allCaseForces, type CaseForces, caseGround, study } from "@armwright/engine";
import { readCarDocument } from "@armwright/engine/document";
import { describe, expect, it } from "vitest";
import { told } from "../fake-io.ts";
import { inForce, inInches, inMillimetres, rowOf, sectionOf } from "./report-rows.ts";

const CAR = "my.car.json";
const read = (name: string): string => readFileSync(new URL(`../../../../examples/${name}`, import.meta.url), "utf8");
const loads = (text: string, ...words: string[]) => told(["loads", CAR, ...words], { files: { [CAR]: text } });

function casesOf(text: string): readonly CaseForces[] {
  const reading = readCarDocument(text);
  if (!reading.ok) throw new Error("the example does not read");
  return allCaseForces(caseGround(study(reading.car))!);
}

const size = ({ x, y, z }: { x: number; y: number; z: number }): number => Math.hypot(x, y, z);
const forcesOf = ({ balance, loadCase }: CaseForces) => {
  if (!balance.ok) throw new Error(`${loadCase.name} has no balance`);
  return balance.forces;
};

describe.each([
  ["saltbush", "inch-pound"],
  ["juniper", "metric"],
] as const)("the cases of %s, %s", (name, units) => {
  const text = read(`${name}.car.json`);
  const cases = casesOf(text);
  const travel = units === "metric" ? inMillimetres : inInches;
  const force = inForce(units);

  it("each with its travel, its factors, what holds the wheel and with what force", async () => {
    const { code, out, err } = await loads(text);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    const lines = sectionOf(out, "LOAD CASES");
    expect(cases.length).toBe(10);
    for (const each of cases) {
      const { loadCase, held } = each;
      const row = rowOf(lines, loadCase.name).replace(/^\(g of what (is )?/, "");
      const carrier = held.carrier.replace("-", " ");
      const carried = forcesOf(each).struts.find((strut) => strut.name === held.carrier)!.magnitude;
      const factors = [loadCase.vertical, loadCase.inward]
        .filter((g) => g !== 0)
        .map((g) => (g > 0 ? "+" : "") + g.toFixed(2));
      expect(row.startsWith(`${travel(held.travel)} ${factors.join(" ")}`), `${loadCase.name}: ${row}`).toBe(true);
      expect(row.endsWith(` ${carrier} ${force(carried)}`), `${loadCase.name}: ${row}`).toBe(true);
    }
  });

  it("the most at each joint: force, its part along the hinge, and the case", async () => {
    const { out } = await loads(text);
    const lines = sectionOf(out, "MOST AT EACH JOINT");
    const pivots = forcesOf(cases[0]!).joints.map(({ pivot, label }) => ({ pivot, label }));
    expect(pivots.length).toBe(6);
    const told: { readonly line: number; readonly force: number }[] = [];
    for (const { pivot, label } of pivots) {
      const all = cases.map((each) => ({
        name: each.loadCase.name,
        joint: forcesOf(each).joints.find((joint) => joint.pivot === pivot)!,
      }));
      const worst = all.reduce((a, b) => (size(b.joint.worst) > size(a.joint.worst) ? b : a));
      const along = Math.abs(worst.joint.undecided);
      const cells = [force(size(worst.joint.worst)), ...(along > 0.5 ? [force(along)] : []), worst.name];
      expect(rowOf(lines, label)).toBe(cells.join(" "));
      told.push({ line: lines.findIndex((line) => line.startsWith(label)), force: size(worst.joint.worst) });
    }
    told.sort((a, b) => a.line - b.line);
    expect(told.map((each) => each.force)).toEqual(told.map((each) => each.force).sort((a, b) => b - a));
    expect(out).toMatch(/which of them takes the force along the line, statics cannot\s+tell/);
  });

  it("the most that a link is pulled and pushed", async () => {
    const { out } = await loads(text);
    const lines = sectionOf(out, "LINKS");
    const all = cases.map((each) => ({ name: each.loadCase.name, ...forcesOf(each).links[0]! }));
    const pulled = all.reduce((a, b) => (b.tension > a.tension ? b : a));
    const pushed = all.reduce((a, b) => (b.tension < a.tension ? b : a));
    expect(pulled.tension).toBeGreaterThan(0);
    expect(pushed.tension).toBeLessThan(0);
    expect(rowOf(lines, pulled.label)).toBe(
      `${force(pulled.tension)} ${pulled.name} ${force(-pushed.tension)} ${pushed.name}`,
    );
  });

  it("one case whole: every joint by its three parts, links, struts", async () => {
    const rock = cases.find(({ loadCase }) => loadCase.name === "rock from the front")!;
    const { out } = await loads(text, "--case", "rock from");
    const { joints, links, struts } = forcesOf(rock);
    const lines = sectionOf(out, "JOINTS: FORCE ON THE OUTBOARD PART");
    for (const { label, force: f, undecided } of joints) {
      const parts = [f.x, f.y, f.z, size(f)].map(force).join(" ");
      const along = Math.abs(undecided) > 1e-9 ? ` 0 to ${force(undecided)}` : "";
      expect(rowOf(lines, label)).toBe(`${parts}${along}`);
    }
    const unit = units === "metric" ? "N" : "lb";
    const { tension, label } = links[0]!;
    expect(out).toContain(`${label}: ${force(Math.abs(tension))} ${unit} ${tension >= 0 ? "pulled" : "pushed"}`);
    expect(out).toContain(`shock: ${force(struts[0]!.magnitude)} ${unit} pushed`);
  });
});

describe("loads", () => {
  it("another travel is another position: what the shock holds follows", async () => {
    const at = async (travel: string) => {
      const { out } = await loads(read("saltbush.car.json"), "--case", "vertical", "--at", travel);
      return Number(/shock: (\d+) lb/.exec(out)![1]);
    };
    // The motion ratio rises in bump: the same load asks less of the shock.
    expect(await at("-4")).toBeGreaterThan((await at("4")) + 100);
  });

  it("refuses a case that is not there, a travel that is none, and a car without its weight", async () => {
    const text = read("saltbush.car.json");
    const unknown = await loads(text, "--case", "meteorite");
    expect(unknown.code).toBe(2);
    expect(unknown.err).toContain('"meteorite" is not one of this car\'s cases: "vertical bump", ');
    expect((await loads(text, "--at", "high")).code).toBe(2);
    const { weights: _, ...light } = JSON.parse(text);
    const weightless = await loads(JSON.stringify(light));
    expect(weightless.code).toBe(2);
    expect(weightless.err).toContain("weights.corner is missing");
  });

  it("a car without its shock is told what is missing, never that it holds itself", async () => {
    const document = JSON.parse(read("saltbush.car.json"));
    delete document.shock;
    const { code, out } = await loads(JSON.stringify(document));
    const lines = sectionOf(out, "CASES TO MIND").join(" ").replace(/\s+/g, " ");
    expect(code).toBe(0);
    expect(lines).toContain("the document has no shock to hold the wheel");
    expect(lines).not.toContain("holds instead");
    // Without its stop too, the stop is what a case on the stop lacks; with a shock, that holds instead.
    delete document.bumpStop;
    delete document.stops;
    const bare = (await loads(JSON.stringify(document))).out.replace(/\s+/g, " ");
    expect(bare).toContain("the document has no bump stop to hold the wheel");
    const { bumpStop: _, stops: __, ...stopless } = JSON.parse(read("saltbush.car.json"));
    expect((await loads(JSON.stringify(stopless))).out.replace(/\s+/g, " ")).toContain(
      "the car has no bump stop: the shock holds instead",
    );
  });

  it("as JSON in the document's units", async () => {
    const [case0] = casesOf(read("saltbush.car.json"));
    const made = JSON.parse((await loads(read("saltbush.car.json"), "--json")).out);
    const shock = JSON.stringify(made).match(/"name":"shock"[^}]*/)![0];
    const told = Number(/-?\d+\.\d+/.exec(shock)![0]);
    expect(told).toBeCloseTo(forcesOf(case0!).struts[0]!.magnitude / 4.4482216152605, 1);
  });
});
