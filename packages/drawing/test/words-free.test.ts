import { placeMember } from "@armwright/engine";
import { describe, expect, test } from "vitest";
import { boxOfText, drawRear, fitRear, viewFromBehind } from "../src/index.ts";
import { CASES, overlapOf, positionAt, startingStudy, textsOf, travelsOf } from "./cars.ts";

const SIZES = [
  [620, 560],
  [1000, 620],
  [400, 380],
] as const;

for (const { kind, system } of CASES) {
  describe(`words in the view from behind: ${kind}, ${system}`, () => {
    const study = startingStudy(kind, system);

    test("no two words overlap, at any position and size", () => {
      for (const [width, height] of SIZES) {
        for (const travel of travelsOf(study)) {
          const drawing = drawRear(study, positionAt(study, travel), fitRear(study, width, height));
          const boxes = textsOf(drawing).map((words) => ({
            words: words.text,
            layer: words.layer,
            box: boxOfText(words, 1),
          }));
          boxes.forEach((a, i) => {
            for (const b of boxes.slice(i + 1)) {
              expect(overlapOf(a.box, b.box), `${a.words} / ${b.words} at ${travel} m on ${width} px`).toBe(0);
            }
          });
        }
      }
    });

    test("no dimension and no note lies on a member or in the tyre", () => {
      for (const travel of travelsOf(study)) {
        const position = positionAt(study, travel);
        const sheet = fitRear(study, 620, 560);
        const view = viewFromBehind(sheet);
        const words = textsOf(drawRear(study, position, sheet)).filter(
          ({ layer }) => layer === "dimension" || layer === "note",
        );
        const wheel = view.at(position.wheelCentre);
        const half = {
          x: (study.car.wheel.sectionWidth / 2) * sheet.scale,
          y: study.car.wheel.loadedRadius * sheet.scale,
        };
        for (const text of words) {
          const box = boxOfText(text, 1);
          const tyre = {
            x: wheel.x - half.x * 0.9,
            y: wheel.y - half.y * 0.9,
            width: half.x * 1.8,
            height: half.y * 1.8,
          };
          expect(overlapOf(box, tyre), `${text.text} in the tyre`).toBe(0);
          for (const member of study.corner.members) {
            const [a, b] = placeMember(position, member).map(view.at) as [typeof wheel, typeof wheel];
            for (let i = 0; i <= 40; i += 1) {
              const at = { x: a.x + ((b.x - a.x) * i) / 40, y: a.y + ((b.y - a.y) * i) / 40 };
              const inside = at.x > box.x && at.x < box.x + box.width && at.y > box.y && at.y < box.y + box.height;
              expect(inside, `${text.text} on ${member.label} at ${travel} m`).toBe(false);
            }
          }
        }
      }
    });
  });
}

test("the main measures are there where there is room for them", () => {
  const study = startingStudy("h-arm", "inch-pound");
  const words = textsOf(drawRear(study, positionAt(study, 0), fitRear(study, 720, 620))).map(({ text }) => text);
  // Half-track 36 1/8 (contact of a wheel leaning in by half a degree), belly rail 10 1/2 over ground: the document's own.
  expect(words).toContain("10 1/2");
  expect(words.some((word) => word.startsWith("36 1/8"))).toBe(true);
  expect(words.some((word) => /^H-arm 18 1\/16$/.test(word))).toBe(true);
  expect(words).toContain("shock");
  expect(words.some((word) => word.endsWith("slack"))).toBe(true);
});
