import { readFileSync } from "node:fs";
import { type PartCheck, type StrengthStudy, study, studyStrength } from "@armwright/engine";
import { readCarDocument } from "@armwright/engine/document";
import { describe, expect, it } from "vitest";
import { told } from "../fake-io.ts";
import { inForce, inInches, inMillimetres, rowOf, sectionOf } from "./report-rows.ts";

const CAR = "my.car.json";
const read = (name: string): string => readFileSync(new URL(`../../../../examples/${name}`, import.meta.url), "utf8");
const strength = (text: string, ...words: string[]) =>
  told(["strength", CAR, ...words], { files: { [CAR]: text }, columns: 200 });

function strengthOf(text: string): StrengthStudy {
  const reading = readCarDocument(text);
  if (!reading.ok) throw new Error("the example does not read");
  return studyStrength(study(reading.car))!;
}

/** The demo car with plain tubes and no second one. */
function plainArm(): string {
  const document = JSON.parse(read("saltbush.car.json"));
  document.linkage.lowerArm.diameter = 2;
  document.strength.tubes.lowerArm.wall = 0.188;
  delete document.strength.tubes.lowerArm.under;
  return JSON.stringify(document);
}

/** The metric example with its tubes given. */
function metricArm(): string {
  const document = JSON.parse(read("juniper.car.json"));
  document.strength = {
    tubes: { lowerArm: { wall: 3, material: "4130 N" }, upperLink: { wall: 2.5, material: "DOM 1020" } },
  };
  return JSON.stringify(document);
}

/** Rows of the first table with the lines that their cells run on into: name first, then case, has and may bear. */
function wholeRows(out: string): readonly string[] {
  const rows: string[][] = [];
  const [head, ...lines] = out.slice(out.indexOf("factor  part"), out.indexOf("WHAT ANOTHER SIZE")).split("\n");
  const caseAt = head!.indexOf("in the case");
  for (const line of lines) {
    const cells = /^ *(\d+\.\d\d|–)? {2}(.*)$/.exec(line);
    if (!cells) continue;
    const [first, ...rest] = cells[2]!.trim().split(/ {2,}/);
    if (cells[1] !== undefined) rows.push([cells[1], first!, ...rest]);
    else if (rows.length > 0 && line.startsWith("        ")) {
      const on = rows.at(-1)!;
      on[1] = `${on[1]} ${line.slice(0, caseAt).trim()}`.trim();
      on[2] = `${on[2]} ${line.slice(caseAt).trim()}`.trim();
    }
  }
  return rows.map((cells) => cells.join(" "));
}

/** Three figures, as ksi or MPa, by hand. */
const inStress = (isMetric: boolean) => (pascals: number) =>
  isMetric
    ? `${Number((pascals / 1e6).toPrecision(3))} MPa`
    : `${Number((pascals / 6_894_757.293168361).toPrecision(3))} ksi`;

describe.each([
  ["saltbush, plain tubes", "inch-pound", plainArm()],
  ["juniper", "metric", metricArm()],
] as const)("%s, %s", (_, units, text) => {
  const isMetric = units === "metric";
  const found = strengthOf(text);
  const stress = inStress(isMetric);
  const force = inForce(units);
  const asked = ({ demand, allowable, dimension }: PartCheck): string =>
    dimension === "stress"
      ? `${stress(demand)} ${stress(allowable)}`
      : `${force(demand)} ${isMetric ? "N" : "lb"} ${force(allowable)} ${isMetric ? "N" : "lb"}`;

  it("weakest first: factor, part, place, case, what it has to bear and may bear", async () => {
    const { code, out, err } = await strength(text);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    const rows = wholeRows(out);
    const { checks } = found;
    expect(rows.length).toBeGreaterThanOrEqual(checks.length);
    checks.forEach((check, index) => {
      const row = rows[index]!;
      const factor = check.factor === null ? "–" : check.factor.toFixed(2);
      expect(row.startsWith(`${factor} ${check.label}${check.where === "" ? "" : `, ${check.where}`}: `), row).toBe(
        true,
      );
      if (check.factor === null) return;
      const { vertical } = found.cases.find(({ loadCase }) => loadCase.name === check.loadCase)!.loadCase;
      expect(row.endsWith(asked(check)), row).toBe(true);
      expect(row).toContain(`${check.loadCase}, ${Math.abs(vertical)} g ${vertical > 0 ? "up" : "down"}`);
    });
    expect(checks[0]!.factor!).toBeLessThan(1);
  });

  it("what would make it hold, and what one size up or down would buy, each with its factor", async () => {
    const { out } = await strength(text);
    const help = sectionOf(out, "WHAT WOULD MAKE IT HOLD").join(" ").replace(/\s+/g, " ");
    expect(found.proposals.length).toBeGreaterThan(0);
    const mass = (kg: number) => (isMetric ? `${kg.toFixed(1)} kg` : `${(kg / 0.45359237).toFixed(1)} lb`);
    for (const { kind, weakest, added } of found.proposals) {
      expect(help).toContain(
        `weakest factor then ${weakest.factor!.toFixed(2)} (${weakest.label} ${weakest.where}, ${weakest.loadCase})`,
      );
      expect(help).toContain(`${mass(added)} more (--by ${kind})`);
    }
    const sizes = sectionOf(out, "WHAT ANOTHER SIZE WOULD BUY").slice(2);
    expect(sizes).toHaveLength(found.alternatives.length);
    found.alternatives.forEach(({ size, mass: kg, factor, isPresent }, index) => {
      const tube = isMetric
        ? `${Number((size.diameter * 1000).toFixed(2))} × ${Number((size.wall * 1000).toFixed(2))} mm`
        : `${inInches(size.diameter).slice(1)} × ${(size.wall / 0.0254).toFixed(3).slice(1)} in`;
      expect(sizes[index]!.trim().replace(/\s+/g, " ")).toBe(
        `lower arm ${tube} ${mass(kg)} ${factor!.toFixed(2)}${isPresent ? " as it is" : ""}`,
      );
    });
  });

  it("what it costs the wheel: toe across the tyre, camber", async () => {
    const { out } = await strength(text);
    const lines = sectionOf(out, "WHAT IT COSTS THE WHEEL");
    const reading = readCarDocument(text);
    if (!reading.ok) throw new Error("the example does not read");
    const { freeRadius } = reading.car.wheel;
    expect(found.give.length).toBeGreaterThan(8);
    for (const { loadCase, travel, toe, camber } of found.give) {
      const row = rowOf(lines, loadCase);
      const where = isMetric ? inMillimetres(travel) : inInches(travel);
      const across = 2 * freeRadius * Math.sin(toe);
      const tape = isMetric
        ? inMillimetres(across)
        : `(${across < 0 ? "-" : "+"}${Math.abs(across / 0.0254).toFixed(2)})`;
      const degrees = (camber * 180) / Math.PI;
      const shown = Math.abs(degrees) < 0.05 ? "0.0" : `${degrees > 0 ? "+" : "-"}${Math.abs(degrees).toFixed(1)}`;
      expect(row.startsWith(`${where} `), row).toBe(true);
      if (isMetric || Math.abs(across) > 0.0254 / 64) expect(row, loadCase).toContain(tape);
      expect(row.endsWith(` ${shown}`), row).toBe(true);
    }
  });
});

describe("strength", () => {
  it("speaks of blows as far as they are known: to a power of ten", async () => {
    const { out } = await strength(plainArm());
    const { repeats } = strengthOf(plainArm()).arms[0]!.fatigue!;
    expect(repeats!).toBeGreaterThan(1000);
    expect(repeats!).toBeLessThan(10_000);
    expect(out.replace(/\s+/g, " ")).toContain("a crack has to be reckoned with after some thousands of such blows");
    expect(out).toContain("How often it comes is unknown.");
  });

  it.each(["gusset", "second-tube", "next-size"] as const)("writes a car that holds, by %s", async (way) => {
    const { code, err, files } = await strength(plainArm(), "--apply", "strong.car.json", "--by", way);
    expect(code).toBe(0);
    expect(err).toMatch(/^Wrote strong\.car\.json: lower arm, .*Check clearances/);
    const written = files.get("strong.car.json")!;
    const proposal = strengthOf(plainArm()).proposals.find(({ kind }) => kind === way)!;
    const after = strengthOf(written).arms[0]!.checks[0]!;
    expect(after.factor!).toBeCloseTo(proposal.weakest.factor!, 6);
    expect(after.factor!).toBeGreaterThanOrEqual(1);
  });

  it("says of an arm far too thin what was tried and how far it comes, and refuses that way with it", async () => {
    const document = JSON.parse(read("saltbush.car.json"));
    document.linkage.lowerArm.diameter = 1;
    document.strength.tubes.lowerArm.wall = 0.065;
    delete document.strength.tubes.lowerArm.under;
    const text = JSON.stringify(document);
    const { tried } = strengthOf(text);
    const { out } = await strength(text);
    const help = sectionOf(out, "WHAT WOULD MAKE IT HOLD").join(" ").replace(/\s+/g, " ");
    const far = help.slice(help.indexOf("Tried, and not enough:"));
    expect(tried.map(({ kind }) => kind)).toContain("gusset");
    for (const { weakest } of tried) expect(far).toContain(`weakest factor then ${weakest.factor!.toFixed(2)}`);
    const gusset = tried.find(({ kind }) => kind === "gusset")!.weakest.factor!.toFixed(2);
    const refused = await strength(text, "--apply", "x.car.json", "--by", "gusset");
    expect(refused.code).toBe(2);
    expect(refused.err.replace(/\s+/g, " ")).toContain(`(best: gusset to factor ${gusset})`);
  });

  it("without a way takes the lightest", async () => {
    const { files } = await strength(plainArm(), "--apply", "strong.car.json");
    const [lightest, ...others] = strengthOf(plainArm()).proposals;
    expect(strengthOf(files.get("strong.car.json")!).arms[0]!.mass).toBeCloseTo(lightest!.mass, 6);
    for (const { mass } of others) expect(mass).toBeGreaterThanOrEqual(lightest!.mass);
  });

  it("guards the car that is read, and refuses where nothing is to be done or the way is none", async () => {
    const own = await strength(plainArm(), "--apply", CAR);
    expect(own.code).toBe(2);
    expect(own.err).toContain(`${CAR} is the car document itself`);
    expect(own.files.get(CAR)).toBe(plainArm());
    const sound = await strength(read("saltbush.car.json"), "--apply", "x.car.json");
    expect(sound.code).toBe(2);
    expect(sound.err).toContain("nothing to write");
    expect(sound.files.has("x.car.json")).toBe(false);
    const odd = await strength(plainArm(), "--apply", "x.car.json", "--by", "prayer");
    expect(odd.code).toBe(2);
    expect(odd.err).toContain('"prayer" is none of next-size, gusset, second-tube');
  });

  it("one part alone, and its figures as JSON in SI", async () => {
    const { out } = await strength(read("saltbush.car.json"), "--part", "upperLink");
    expect(out.match(/upper link: /g)).toHaveLength(2);
    expect(out).not.toContain("lower arm, rear tube, at");
    const made = JSON.parse((await strength(read("saltbush.car.json"), "--json")).out);
    const found = strengthOf(read("saltbush.car.json"));
    expect(made.units).toBe("SI");
    expect(made.checks.map(({ demand }: PartCheck) => demand)).toEqual(found.checks.map(({ demand }) => demand));
    expect(made.give).toEqual(found.give);
  });
});
