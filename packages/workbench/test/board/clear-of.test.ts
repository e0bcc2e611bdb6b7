import { type Box, drawRear, fitRear, type Primitive } from "@armwright/drawing";
import { study } from "@armwright/engine";
import { readCarValue, startingDocument } from "@armwright/engine/document";
import { expect, test } from "vitest";
import { clearOf } from "../../src/board/clear-of.ts";
import { solvedAt } from "../../src/store/position.ts";

const reading = readCarValue(startingDocument("h-arm", "inch-pound"));
if (!reading.ok) throw new Error("the starting car cannot be read");
const made = study(reading.car);

const flat = (parts: readonly Primitive[]): readonly Primitive[] =>
  parts.flatMap((part) => (part.shape === "group" ? flat(part.parts) : [part]));

test("what is in trouble keeps its ring where its words would run under something", () => {
  const solved = solvedAt(made, 0.03);
  if (!solved) throw new Error("out of range");
  const gaps = [{ id: "shaft:chassis-mesh", label: "half shaft to scan", gap: -0.01, at: { x: 0, y: 0.5, z: 0.4 } }];
  const { parts } = drawRear(made, solved.position, fitRear(made, 600, 500), { gaps });
  const words = flat(parts).find((part) => part.shape === "text" && part.text === "half shaft to scan");
  if (words?.shape !== "text") throw new Error("no words");
  const covered: Box = { x: words.at.x - 2, y: words.at.y - 2, width: 4, height: 4 };
  const left = flat(clearOf(parts, covered));
  expect(left.some((part) => part.shape === "text" && part.text === "half shaft to scan")).toBe(false);
  const rings = (all: readonly Primitive[]) =>
    all.filter((part) => part.shape === "area" && part.layer === "trouble" && part.fill === "none");
  expect(rings(left)).toEqual(rings(flat(parts)));
  expect(rings(left).length).toBe(1);
});
