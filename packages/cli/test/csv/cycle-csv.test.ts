import { moveThrough, quantitiesOf, rowAt } from "@armwright/engine";
import { describe, expect, it } from "vitest";
import { cycleCsv } from "../../src/csv/cycle-csv.ts";
import { carOf, movedOf, SAMPLES } from "../documents.ts";

/** RFC 4180, read by hand: quotes double inside quotes, records end with CRLF. */
function parseCsv(text: string): readonly (readonly string[])[] {
  const records: string[][] = [];
  let record: string[] = [];
  let field = "";
  let quoted = false;
  for (let i = 0; i < text.length; i += 1) {
    const letter = text[i]!;
    if (quoted) {
      if (letter !== '"') field += letter;
      else if (text[i + 1] === '"') {
        field += '"';
        i += 1;
      } else quoted = false;
    } else if (letter === '"') quoted = true;
    else if (letter === "," || (letter === "\r" && text[i + 1] === "\n")) {
      record.push(field);
      field = "";
      if (letter === ",") continue;
      records.push(record);
      record = [];
      i += 1;
    } else field += letter;
  }
  return records;
}

describe.each(SAMPLES)("the cycle of $name as CSV", ({ text }) => {
  const car = carOf(text);
  const made = movedOf(car).study;
  const cycle = moveThrough(made.corner, [-0.1, -0.02, 0, 0.03, 0.1]);

  it("is read back to twelve figures in SI", () => {
    const [head, ...rows] = parseCsv(cycleCsv({ study: made, cycle }, null, "SI"));
    const quantities = quantitiesOf(made.corner);
    expect(head).toHaveLength(quantities.length + 1);
    expect(head![0]).toBe("travel [m]");
    expect(rows).toHaveLength(cycle.travels.length);
    rows.forEach((row, i) => {
      expect(Number(row[0])).toBe(cycle.travels[i]);
      quantities.forEach(({ read, id }, q) => {
        const value = read(rowAt(cycle, i), made.corner);
        const cell = row[q + 1]!;
        expect(head![q + 1]!.split(" [")[0]).toBe(id);
        if (value === null) expect(cell).toBe("");
        else expect(Math.abs(Number(cell) - value)).toBeLessThanOrEqual(Math.max(1e-12, 1e-11 * Math.abs(value)));
      });
    });
  });

  it("has the document's units in its head and a full row a travel", () => {
    const [head, ...rows] = parseCsv(cycleCsv({ study: made, cycle }, null, car.units));
    expect(head![0]).toBe(car.units === "metric" ? "travel [mm]" : "travel [in]");
    expect(head).toContain("camber [deg]");
    const unit = car.units === "metric" ? 0.001 : 0.0254;
    expect(Number(rows[4]![0])).toBeCloseTo(0.1 / unit, 9);
    for (const row of rows) {
      expect(row).toHaveLength(head!.length);
      for (const cell of row) expect(cell).toMatch(/^(-?\d+(\.\d+)?(e-\d+)?)?$/);
      expect(row).not.toContain("-0");
    }
  });
});

it("quotes an id that holds a comma or a quote", () => {
  const made = movedOf(carOf(SAMPLES[0]!.text)).study;
  const odd = { ...made, quantities: [{ ...made.quantities[0]!, id: 'a "b", c' }] };
  const csv = cycleCsv({ study: odd, cycle: moveThrough(made.corner, [0]) }, null, "SI");
  expect(csv.split("\r\n")[0]).toBe('travel [m],"a ""b"", c [m]"');
  expect(parseCsv(csv)[0]).toEqual(["travel [m]", 'a "b", c [m]']);
});

it("leaves empty on one side what only the other has", () => {
  const left = movedOf(carOf(SAMPLES[0]!.text)).study;
  const right = { ...left, quantities: left.quantities.slice(0, 2) };
  const cycle = moveThrough(left.corner, [0]);
  const [head, ofLeft, ofRight] = parseCsv(cycleCsv({ study: left, cycle }, { study: right, cycle }, "SI"));
  expect([head![0], ofLeft![0], ofRight![0]]).toEqual(["side", "left", "right"]);
  expect(ofRight!.slice(1, 4)).toEqual(ofLeft!.slice(1, 4));
  expect(ofRight!.slice(4).join("")).toBe("");
  expect(ofRight).toHaveLength(head!.length);
});
