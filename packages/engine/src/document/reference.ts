import type { z } from "zod";
import { sayTypical, sayUnit } from "./field-words.ts";
import { DIRECTION_WORDS, type FieldFacts, fieldFacts } from "./fields.ts";
import { carSchema } from "./schema.ts";
import { fieldsOf, formsOf, isList, itemOf, onlyValue, required, wordsOf } from "./schema-walk.ts";

/** The reference of the car document as Markdown tables: a heading a section, a row a field. */
export function carReference(): string {
  const fields = fieldsOf(carSchema("inch-pound")) ?? new Map<string, z.core.$ZodType>();
  const top: Row[] = [];
  const sections: string[] = [];
  for (const [name, field] of fields) {
    const { schema, optional } = required(field);
    if (isBranch(schema)) sections.push(sectionText(name, schema, optional));
    else top.push(row(name, schema, optional));
  }
  return [table(top), ...sections].join("\n\n").concat("\n");
}

interface Row {
  readonly cells: readonly string[];
}

const COLUMNS = ["Field", "Meaning", "Unit or words", "Typical", "When left out"];

function sectionText(name: string, schema: z.core.$ZodType, optional: boolean): string {
  const meaning = fieldFacts.get(schema)?.meaning ?? "";
  const heading = `## ${name}\n\n${meaning}${optional ? " May be left out." : ""}`;
  // The right side repeats sections that have their own heading.
  if (name === "right") return `${heading} Holds: ${[...(fieldsOf(schema)?.keys() ?? [])].join(", ")}.`;
  const item = itemOf(schema);
  const whole = item ?? schema;
  const prefix = item ? (isList(schema) ? `${name}[n]` : `${name}[pivot]`) : name;
  const several = formsOf(whole);
  if (!several) return `${heading}\n\n${table(rowsOf(prefix, whole))}`;
  const forms = several.forms.map((form) => {
    const tell = fieldsOf(form)?.get(several.by);
    const title = `### ${several.by}: ${tell ? String(onlyValue(tell)) : ""}\n\n${fieldFacts.get(form)?.meaning ?? ""}`;
    return `${title}\n\n${table(rowsOf(prefix, form))}`;
  });
  return [heading, ...forms].join("\n\n");
}

/** Rows of a section's fields, those of sections inside it after the field's own row; a point is one row. */
function rowsOf(prefix: string, schema: z.core.$ZodType): readonly Row[] {
  return [...(fieldsOf(schema) ?? [])].flatMap(([name, field]) => {
    const { schema: inner, optional } = required(field);
    const path = `${prefix}.${name}`;
    const own = row(path, inner, optional);
    if (isPoint(inner)) {
      const on = fieldsOf(inner)?.get("on");
      return on ? [own, row(`${path}.on`, required(on).schema, required(on).optional)] : [own];
    }
    const item = itemOf(inner);
    if (item) return [own, ...rowsOf(`${path}[n]`, item)];
    return fieldsOf(inner) ? [own, ...rowsOf(path, inner)] : [own];
  });
}

function row(path: string, schema: z.core.$ZodType, optional: boolean): Row {
  const facts: FieldFacts = fieldFacts.get(schema) ?? { meaning: "" };
  const { dimension, typical, assumed } = facts;
  const left = assumed ? `${assumed.words}: ${assumed.because}` : optional ? "nothing" : "not to be left out";
  const usual = dimension !== undefined && typical ? sayTypical(typical, dimension) : "";
  return { cells: [`\`${path}\``, facts.meaning, unitOrWords(schema, facts), usual, left] };
}

function unitOrWords(schema: z.core.$ZodType, facts: FieldFacts): string {
  if (facts.dimension !== undefined) return sayUnit(facts.dimension);
  if (facts.form === "direction") return `${DIRECTION_WORDS.map((word) => `\`${word}\``).join(", ")} or \`{x, y, z}\``;
  if (facts.form === "thread") return "thread size";
  if (isPoint(schema)) return "`{x, y, z}`, in or mm";
  if (isList(schema)) return "list";
  if (fieldsOf(schema)) return "section";
  const only = onlyValue(schema);
  if (only !== undefined) return `\`${String(only)}\``;
  const words = wordsOf(schema);
  return words ? words.map((word) => `\`${word}\``).join(", ") : "text";
}

/** x, y, z and at most the body that the point is on, or its name. */
const isPoint = (schema: z.core.$ZodType): boolean => {
  const names = [...(fieldsOf(schema)?.keys() ?? [])];
  return names.includes("x") && names.every((name) => ["x", "y", "z", "on"].includes(name));
};

const isBranch = (schema: z.core.$ZodType): boolean =>
  fieldsOf(schema) !== undefined || formsOf(schema) !== undefined || itemOf(schema) !== undefined;

function table(rows: readonly Row[]): string {
  const line = (cells: readonly string[]) => `| ${cells.map((cell) => cell.replace(/\|/g, "\\|")).join(" | ")} |`;
  return [line(COLUMNS), line(COLUMNS.map(() => "---")), ...rows.map((each) => line(each.cells))].join("\n");
}
