import { study } from "@armwright/engine";
import { describe, expect, test } from "vitest";
import { carOfDocument, exampleDocument } from "../../../engine/test/example-documents.ts";
import { cutList } from "../../src/cut/cut-list.ts";
import { hardware } from "../../src/cut/hardware.ts";
import { hardwareCsv } from "../../src/files/cut-list-csv.ts";

const { strength: _, ...bare } = exampleDocument("saltbush") as ReturnType<typeof exampleDocument> & {
  readonly strength?: unknown;
};
const linesOf = (document: unknown) => {
  const { corner } = study(carOfDocument(document));
  const cuts = cutList(corner);
  return {
    lines: hardware(
      corner,
      cuts.lines.map(({ piece }) => piece),
    ),
    csv: hardwareCsv(cuts, corner),
  };
};

/** Bolts of a grade through pairs of tabs, one tab thicker, a gusset under the bump stop's pad. */
const strong = {
  ...bare,
  strength: {
    bolts: {
      all: { size: "5/8-18", grade: "8", shear: "double" },
      "strap.upper": { size: "1/2-20", grade: "8", shear: "double" },
    },
    tabs: {
      all: { thickness: "1/4", width: 2, edgeDistance: 1 },
      "shock.lower": { thickness: "3/16", width: 2, edgeDistance: 1 },
    },
    tubes: { lowerArm: { wall: 0.12, gusset: { at: "bumpStop.strikes", thickness: "3/16", depth: 2, reach: 3 } } },
  },
};

describe("bill of materials", () => {
  const { lines, csv } = linesOf(strong);
  const pieces = (name: RegExp): number =>
    lines.filter((line) => name.test(line.name)).reduce((sum, { count }) => sum + count, 0);
  const at = (where: string) => lines.filter((line) => line.where.includes(where));

  test("a rod end, a jam nut, a bung and a bolt for each of six pivots, both sides", () => {
    for (const name of [/^rod end/, /^jam nut/, /^bung/]) expect(pieces(name), String(name)).toBe(12);
    // Six pivots, two eyes of the shock, two tabs of the strap.
    expect(pieces(/^bolt/)).toBe(20);
  });

  test("grip by hand: two tabs of 1/4 and the 3/4 ball of a 5/8 rod end is 1 1/4", () => {
    const [bolt] = at("lower arm, inner front").filter(({ name }) => name.startsWith("bolt"));
    expect(bolt).toMatchObject({ name: "bolt, grade 8, lock nut, washers", size: "5/8-18" });
    expect(bolt!.note).toContain("grip 1 1/4 in and the spacers");
  });

  test("the strap's bolt is its own; the shock's lower tabs are their own", () => {
    expect(at("strap, upper tab").find(({ name }) => name.startsWith("bolt"))!.size).toBe("1/2-20");
    const [shock] = at("shock, lower mount").filter(({ name }) => name.startsWith("bolt"));
    expect(shock!.note).toContain("3/8 in of tab");
  });

  test("tabs: a pair at each bolted place, counted once, holes by their bolts", () => {
    expect(pieces(/^tab/)).toBe(2 * 2 * 10);
    const lower = at("shock, lower mount").find(({ name }) => name.startsWith("tab"))!;
    expect(lower.count).toBe(4);
    expect(lower.size).toContain("plate 3/16");
    expect(at("strap, upper tab").find(({ name }) => name.startsWith("tab"))!.size).toContain("hole 1/2");
  });

  test("strap, bump stop, strike plate, gusset, shock, springs and half shaft, two of each", () => {
    for (const name of [
      /^limit strap/,
      /^bump stop/,
      /^strike plate/,
      /^gusset under bump stop/,
      /^shock$/,
      /spring$/,
      /^half shaft/,
    ]) {
      const found = lines.filter((line) => name.test(line.name));
      expect(found.length, String(name)).toBeGreaterThan(0);
      for (const { count } of found) expect(count).toBe(2);
    }
    expect(lines.find(({ name }) => name === "limit strap")!.size).toContain("23 7/8 in");
  });

  test("what is not entered is said, never guessed silently; no names of fields", () => {
    const { lines: plain } = linesOf(bare);
    const bolts = plain.filter(({ name }) => name.startsWith("bolt"));
    for (const { name, note } of bolts) {
      expect(name).toContain("grade not entered");
      expect(note).toContain("grip: the tabs");
    }
    for (const { where, name } of [...plain, ...lines]) expect(`${where} ${name}`).not.toMatch(/[a-z][A-Z]|\w\.\w/);
  });

  test("the CSV has the same lines", () => {
    const rows = csv.trim().split("\r\n");
    expect(rows).toHaveLength(lines.length + 1);
    expect(rows.filter((row) => row.includes("grade 8")).length).toBe(
      lines.filter(({ name }) => name.includes("grade 8")).length,
    );
  });
});
