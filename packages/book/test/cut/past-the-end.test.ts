import { study } from "@armwright/engine";
import { expect, test } from "vitest";
import { carOfDocument, exampleDocument } from "../../../engine/test/example-documents.ts";
import { cutList } from "../../src/cut/cut-list.ts";
import { copeTemplates } from "../../src/sheets/template-sheets.ts";

const { strength: _, ...bare } = exampleDocument("greasewood") as ReturnType<typeof exampleDocument> & {
  readonly strength?: unknown;
};
const { corner } = study(carOfDocument(bare));
const list = cutList(corner);

test("an A-arm's apex: the second tube's cope lies where the first tube has ended with its bung, and the papers say so", () => {
  const rear = list.lines.find(({ piece }) => piece.name === "lower arm, rear tube")!;
  const front = list.lines.find(({ piece }) => piece.name === "lower arm, front tube")!;
  if (rear.piece.to.kind !== "cope" || front.piece.to.kind !== "bung") throw new Error("another apex than was thought");
  // By hand: both axes aim at the ball, and the front tube ends a set-back (7/8 thread: two diameters, 1 3/4 in) short of it.
  // Tubes of one size under an angle touch first where the cut is deepest, at the crotch: r (1 + cos) ÷ sin from the ball.
  const { angle } = rear.piece.to;
  const radius = front.piece.diameter / 2;
  const crotch = (radius * (1 + Math.cos(angle))) / Math.sin(angle);
  const blunt = (radius * (Math.cos(angle) - 1)) / Math.sin(angle);
  expect(front.piece.to.setBack.length / 0.0254).toBeCloseTo(1.75, 9);
  expect(blunt).toBeLessThan(front.piece.to.setBack.length);
  expect(crotch).toBeGreaterThan(front.piece.to.setBack.length);
  expect(rear.piece.to.pastEndOf).toEqual([front.piece.id]);
  const template = copeTemplates(list, corner.car.units).find(({ number }) => number === rear.toTemplate)!;
  const words = template.parts.flatMap((part) => (part.shape === "text" ? [part.text] : [])).join(" ");
  expect(words).toContain(`PAST THE END of tube ${front.number}`);
});

test("a cross tube in the middle of an arm ends on whole tubes, and nothing is said", () => {
  const cross = list.lines.find(({ piece }) => piece.name.includes("cross tube"))!;
  for (const end of [cross.piece.from, cross.piece.to]) expect(end.kind === "cope" && end.pastEndOf).toEqual([]);
});

test("two tubes of one name are told apart by their numbers", () => {
  const truss = cutList(study(carOfDocument(exampleDocument("saltbush"))).corner);
  const twins = truss.lines.filter(({ piece }) =>
    truss.lines.some((other) => other.piece !== piece && other.piece.name === piece.name),
  );
  for (const { piece } of truss.lines) {
    for (const end of [piece.from, piece.to]) {
      if (end.kind !== "cope") continue;
      const found = end.onto.map(({ id }) => truss.lines.filter((line) => line.piece.id === id));
      for (const lines of found) expect(lines).toHaveLength(1);
    }
  }
  expect(twins.length).toBeGreaterThan(1);
});
