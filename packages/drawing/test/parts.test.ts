import { describe, expect, test } from "vitest";
import { drawRear, drawTop, fitRear, fitTop, type GapNow, svgText, textParts, viewFromBehind } from "../src/index.ts";
import { lengthOf, strapCurve } from "../src/parts/strap.ts";
import { gapOf } from "../src/path.ts";
import { flat, positionAt, startingStudy, textsOf } from "./cars.ts";

describe("strap", () => {
  test("hangs in a curve of its own length, and is straight when tight", () => {
    const a = { x: 0, y: 0 };
    for (const b of [
      { x: 100, y: 0 },
      { x: -60, y: 80 },
      { x: 0, y: 100 },
      { x: 3, y: -90 },
    ]) {
      for (const slack of [0.01, 0.1, 0.5]) {
        const length = gapOf(a, b) * (1 + slack);
        expect(lengthOf(strapCurve(a, b, length))).toBeCloseTo(length, 6);
      }
      expect(lengthOf(strapCurve(a, b, gapOf(a, b)))).toBeCloseTo(gapOf(a, b), 9);
    }
    // Level, it sags: down is larger y.
    expect(Math.max(...strapCurve(a, { x: 100, y: 0 }, 120).map(({ y }) => y))).toBeGreaterThan(20);
  });
});

describe("shock", () => {
  const pieces = (spring: "none" | "one" | "two"): number => {
    const study = startingStudy("h-arm", "inch-pound", (document) => {
      const { springs: _, ...shock } = document.shock!;
      const main = { rate: 300, freeLength: 12, solidLength: 6 };
      const springs = { main, ...(spring === "two" && { tender: { ...main, rate: 250, freeLength: 8 } }) };
      return { ...document, shock: spring === "none" ? shock : { ...shock, springs } };
    });
    const { parts } = drawRear(study, positionAt(study, 0), fitRear(study, 720, 620));
    return flat(parts).filter(({ layer }) => layer === "shock").length;
  };

  test("shows no coil where the car has no springs, and one more ring where it has two", () => {
    // Shaft, body and two eyes.
    expect(pieces("none")).toBe(4);
    expect(pieces("two")).toBeGreaterThan(4 + 3);
    expect(pieces("two") - pieces("one")).toBe(1);
  });
});

describe("keep-outs", () => {
  const study = startingStudy("h-arm", "inch-pound", (document) => ({
    ...document,
    keepOuts: [
      { shape: "box", name: "fuel tank", centre: { x: 0, y: 6, z: 30 }, size: { x: 20, y: 10, z: 8 } },
      { shape: "half-space", name: "firewall", point: { x: 26, y: 0, z: 20 }, normal: "rearward" },
      { shape: "half-space", name: "floor", point: { x: 0, y: 0, z: 39 }, normal: "down" },
    ],
  }));
  const position = positionAt(study, 0);

  test("a box shows as its outline with its name; a face square to the sight does not show, one cut by the section does", () => {
    const sheet = fitRear(study, 720, 620);
    const drawing = drawRear(study, position, sheet);
    const areas = flat(drawing.parts).filter((part) => part.shape === "area" && part.layer === "keep-out");
    expect(areas.map(({ meaning }) => meaning)).toEqual(["fuel tank", "floor"]);
    const view = viewFromBehind(sheet);
    const corner = view.at({ x: 0, y: 11 * 0.0254, z: 34 * 0.0254 });
    const box = areas[0];
    const spots = box?.shape === "area" ? box.path.flatMap((step) => (step.to === "close" ? [] : [step.at])) : [];
    expect(Math.min(...spots.map((spot) => gapOf(spot, corner)))).toBeLessThan(1e-6);
    expect(textsOf(drawing).map(({ text }) => text)).toContain("fuel tank");
  });

  test("the firewall shows from above", () => {
    const sheet = fitTop(study, 400, 600);
    const names = flat(drawTop(study, position, sheet).parts)
      .filter((part) => part.shape === "area" && part.layer === "keep-out")
      .map(({ meaning }) => meaning);
    expect(names).toContain("fuel tank");
  });
});

describe("trouble", () => {
  const study = startingStudy("h-arm", "inch-pound");

  test("a joint past its limit is tinted, ringed and told; before it nothing is red", () => {
    const past = study.travel.droop.limits.find(({ id }) => id === "outer-joint")!.travel - 0.002;
    const drawing = drawRear(study, positionAt(study, past), fitRear(study, 720, 620));
    expect(
      flat(drawing.parts).some((part) => part.layer === "shaft" && part.shape === "area" && part.ink === "stop"),
    ).toBe(true);
    expect(textsOf(drawing).some(({ text, ink }) => text === "outer U-joint at its limit" && ink === "stop")).toBe(
      true,
    );
    const sound = drawRear(study, positionAt(study, 0), fitRear(study, 720, 620));
    expect(flat(sound.parts).filter((part) => part.ink === "stop")).toEqual([]);
  });

  test("a fouling spot is ringed where it is, with its order on the tape", () => {
    const limit = study.travel.bump.limits.find(({ code }) => code === "clearance")!;
    const spotOnCar = { x: 0, y: 0.6, z: 0.8 };
    const gap: GapNow = { id: limit.id.replace("clearance:", ""), label: limit.label, gap: -0.003, at: spotOnCar };
    const sheet = fitRear(study, 720, 620);
    const drawing = drawRear(study, positionAt(study, 0.1), sheet, { gaps: [gap] });
    const at = viewFromBehind(sheet).at(spotOnCar);
    const ring = flat(drawing.parts).find(
      (part) => part.layer === "trouble" && part.shape === "area" && part.fill === "none",
    );
    const first = ring?.shape === "area" ? ring.path[0] : undefined;
    // A circle's path starts at its right: nine px out.
    expect(first?.to === "move" && first.at.x).toBeCloseTo(at.x + 9, 9);
    expect(first?.to === "move" && first.at.y).toBeCloseTo(at.y, 9);
    const order = study.travel.bump.limits.filter(({ nature }) => nature === "hard").indexOf(limit) + 1;
    const words = textsOf(drawing).map(({ text }) => text);
    expect(words).toContain(String(order));
    expect(words).toContain("1/8 into one another");
  });

  test("what is held is violet, and nothing else is", () => {
    const drawing = drawRear(study, positionAt(study, 0), fitRear(study, 720, 620), {
      held: "linkage.upperLink.outer",
    });
    const held = flat(drawing.parts).filter((part) => "ink" in part && part.ink === "hold");
    expect(held.length).toBeGreaterThan(0);
    expect(new Set(held.map(({ layer }) => layer))).toEqual(new Set(["pivot"]));
  });
});

describe("words", () => {
  test("fractions are parted from what is before and after them", () => {
    expect(textParts("12 3/16 slack")).toEqual([
      { text: "12", fraction: false },
      { text: "3\u204416", fraction: true, isBehindWhole: true },
      { text: " slack", fraction: false },
    ]);
    expect(textParts("\u22121/4")).toEqual([
      { text: "\u2212", fraction: false },
      { text: "1\u20444", fraction: true },
    ]);
    expect(textParts("H-arm 18")).toEqual([{ text: "H-arm 18", fraction: false }]);
    expect(textParts("2024/16/4")).toEqual([{ text: "2024/16/4", fraction: false }]);
    expect(textParts("")).toEqual([{ text: "", fraction: false }]);
  });

  test("an SVG sets them in class q, escapes names, and carries its tokens when asked", () => {
    const study = startingStudy("h-arm", "inch-pound", (document) => ({
      ...document,
      keepOuts: [
        { shape: "box", name: 'a <tank> & "pump"', centre: { x: 0, y: 5, z: 32 }, size: { x: 9, y: 10, z: 10 } },
      ],
    }));
    const svg = svgText(drawRear(study, positionAt(study, 0), fitRear(study, 720, 620)), {
      theme: "both",
      label: "from behind",
    });
    expect(svg).toContain('10<tspan font-size="0.6em"> </tspan><tspan class="q">1\u20442</tspan>');
    expect(svg).toContain("a &lt;tank&gt; &amp; &quot;pump&quot;");
    expect(svg).not.toContain("<tank>");
    expect(svg).toContain("--stop:#B3271A");
    expect(svg).toContain("prefers-color-scheme:dark");
    // Whole numbers of opened and closed groups, and every hatch that is used is defined.
    expect(svg.split("<g ").length).toBe(svg.split("</g>").length);
    for (const [, id] of svg.matchAll(/url\(#([^)]+)\)/g)) expect(svg).toContain(`id="${id}"`);
  });
});
