import { type compareStudies, type Finding, type Study, sayFinding, unitOf } from "@armwright/engine";
import type { CarDocument } from "@armwright/engine/document";
import { type Page, section } from "../text/page.ts";
import { plain } from "../text/plain.ts";
import { markTravel } from "../text/say.ts";
import { type Column, table } from "../text/table.ts";
import { hang } from "../text/wrap.ts";
import { limitLines } from "./compare-limits.ts";
import { partLines } from "./compare-parts.ts";
import { quantityLines } from "./compare-quantities.ts";
import { fieldDifferences } from "./field-differences.ts";
import { GRAVITY } from "./findings.ts";

export type Comparison = ReturnType<typeof compareStudies>;

export interface Side {
  /** How it was named on the command line. */
  readonly name: string;
  readonly document: CarDocument;
  readonly study: Study;
}

export interface Compared {
  readonly a: Side;
  readonly b: Side;
  readonly comparison: Comparison;
}

/** What differs between two cars and what it does, in the first one's units. */
export function compareReport({ a, b, comparison }: Compared, page: Page): string {
  const isOtherKind = a.study.car.linkage.kind !== b.study.car.linkage.kind;
  const title = (lead: string, { name, study }: Side) =>
    hang(lead, `${study.car.name} (${plain(name)})`, page.width).map(page.bold);
  const isMixed = a.study.car.units !== b.study.car.units;
  const lines = [
    ...title("A  ", a),
    ...title("B  ", b),
    ...(isMixed ? ["Results are in A's units; fields are as each document has them."] : []),
    ...section(page, "What came into trouble, and out of it", troubleLines(comparison, page)),
    ...section(page, "What differs in the documents", fieldLines(a, b, page)),
    ...section(page, "Where the travel ends", stopLines(comparison, page)),
    ...section(page, "What stops the wheel", limitLines(comparison, a.study, b.study, page)),
    ...section(page, "What the wheel does, over the travel of both", quantityLines(comparison, page)),
    ...(isOtherKind ? section(page, "What has to be made, one side", partLines(comparison, page)) : []),
  ];
  return `${lines.join("\n")}\n`;
}

function troubleLines({ findings }: Comparison, page: Page): readonly string[] {
  const told = (lead: string, list: readonly Finding[], loud: (line: string) => string) =>
    list
      .filter(({ gravity }) => gravity !== "note")
      .flatMap((finding) =>
        hang(`${lead}  ${GRAVITY[finding.gravity]}  `, sayFinding(finding, page.units).sentence, page.width).map(
          finding.gravity === "must" ? loud : (line) => line,
        ),
      );
  const lines = [
    ...told("new ", findings.appeared, (line) => page.bold(page.red(line))),
    ...told("gone", findings.gone, page.bold),
  ];
  return lines.length === 0 ? ["Nothing."] : lines;
}

/** With more rows than this the documents are different cars, not one car changed. */
const MOST_FIELDS = 40;

function fieldLines(a: Side, b: Side, page: Page): readonly string[] {
  const differences = fieldDifferences(a.document, b.document);
  if (differences.length === 0) return ["Nothing."];
  const rows = differences.slice(0, MOST_FIELDS).map((each) => ({ cells: [each.path, each.a ?? "-", each.b ?? "-"] }));
  const columns: readonly Column[] = [
    { head: ["field"], align: "left", gives: true },
    { head: ["A"], align: "left", gives: true },
    { head: ["B"], align: "left", gives: true },
  ];
  const rest = differences.length - rows.length;
  return [...table(columns, rows, page.width), ...(rest > 0 ? [`and ${rest} more fields.`] : [])];
}

function stopLines({ stops }: Comparison, page: Page): readonly string[] {
  const length = unitOf("length", page.units);
  const columns: readonly Column[] = [
    { head: ["", ""], align: "left" },
    { head: ["A", length], align: "mark" },
    { head: ["B", length], align: "mark" },
    { head: ["B less A", length], align: "mark" },
  ];
  const mark = (travel: number) => markTravel(travel, page.units);
  const rows = stops.map(({ direction, a, b }) => ({ cells: [direction, mark(a), mark(b), mark(b - a)] }));
  return table(columns, rows, page.width);
}
