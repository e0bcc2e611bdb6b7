import { createScanner, type Node, type ParseError, parseTree, printParseErrorCode } from "jsonc-parser";
import type { Fault } from "./fault.ts";
import { formatPath, type Path } from "./path.ts";

export interface Place {
  readonly line: number;
  readonly column: number;
}

export interface JsonText {
  /** The plain value; undefined where the text is not JSON. */
  readonly value: unknown;
  /** Broken JSON, or keys given twice. */
  readonly faults: readonly Fault[];
  /** Where the value (or the key) of a path stands; of the nearest part that is there, where it is missing. */
  readonly locate: (path: Path, what?: "key" | "value") => Place;
}

/** Deeper than any car document, and shallow enough for any recursive reader. */
const DEEPEST = 32;

/** Reads strict JSON (no comments, no trailing commas), keeping where everything stands. Never throws. */
export function readJsonText(text: string): JsonText {
  const body = text.startsWith("\ufeff") ? ` ${text.slice(1)}` : text;
  const places = placesIn(body);
  const nowhere = (faults: readonly Fault[]): JsonText => ({ value: undefined, faults, locate: () => places(0) });

  const deep = tooDeepAt(body);
  if (deep !== undefined)
    return nowhere([{ code: "nested-too-deep", path: "", ...places(deep), expected: String(DEEPEST) }]);

  const errors: ParseError[] = [];
  const tree = parseTree(body, errors, { disallowComments: true, allowTrailingComma: false });
  if (errors.length > 0 || !tree) return nowhere(syntaxFaults(body, errors, places));

  const faults: Fault[] = [];
  const offsets = new Map<string, { key: number; value: number }>();
  const value = plainValue(tree, [], tree.offset, offsets, (path, offset) => {
    faults.push({ code: "duplicate-key", path: formatPath(path), ...places(offset) });
  });
  return { value, faults, locate: locator(offsets, places) };
}

function locator(offsets: ReadonlyMap<string, { key: number; value: number }>, places: (offset: number) => Place) {
  return (path: Path, what: "key" | "value" = "value"): Place => {
    for (let length = path.length; length >= 0; length--) {
      const found = offsets.get(formatPath(path.slice(0, length)));
      if (found) return places(length === path.length ? found[what] : found.value);
    }
    return places(0);
  };
}

/** The node's value as plain data; a key given twice keeps its first value and is reported. */
function plainValue(
  node: Node,
  path: Path,
  key: number,
  offsets: Map<string, { key: number; value: number }>,
  twice: (path: Path, offset: number) => void,
): unknown {
  offsets.set(formatPath(path), { key, value: node.offset });
  if (node.type === "array") {
    return (node.children ?? []).map((child, index) =>
      plainValue(child, [...path, index], child.offset, offsets, twice),
    );
  }
  if (node.type !== "object") return node.value as unknown;
  const entries = new Map<string, unknown>();
  for (const property of node.children ?? []) {
    const [name, value] = property.children ?? [];
    if (!name || !value) continue;
    const field = String(name.value);
    if (entries.has(field)) twice([...path, field], name.offset);
    else entries.set(field, plainValue(value, [...path, field], name.offset, offsets, twice));
  }
  // fromEntries defines each field, so that a key such as __proto__ is a field like any other.
  return Object.fromEntries(entries);
}

/** Where brackets nest deeper than a document may, found without recursion. */
function tooDeepAt(text: string): number | undefined {
  const scanner = createScanner(text, true);
  let depth = 0;
  for (;;) {
    scanner.scan();
    const offset = scanner.getTokenOffset();
    if (offset >= text.length) return undefined;
    const mark = scanner.getTokenLength() === 1 ? text[offset] : undefined;
    if (mark === "{" || mark === "[") depth++;
    if (mark === "}" || mark === "]") depth--;
    if (depth > DEEPEST) return offset;
  }
}

const EXPECTED: Readonly<Record<string, string>> = {
  InvalidSymbol: "a number, a text in double quotes, true or false",
  InvalidNumberFormat: "a number such as 12.5 or 0.5",
  PropertyNameExpected: "a field's name in double quotes",
  ValueExpected: "a value",
  ColonExpected: "a colon after the field's name",
  CommaExpected: "a comma between this and the one before",
  CloseBraceExpected: "a closing brace }",
  CloseBracketExpected: "a closing bracket ]",
  EndOfFileExpected: "nothing more after the last closing brace",
  InvalidCommentToken: "no comments: JSON has none",
  UnexpectedEndOfComment: "no comments: JSON has none",
  UnexpectedEndOfString: "a closing double quote on the same line",
  UnexpectedEndOfNumber: "the rest of the number",
  InvalidUnicode: "four hexadecimal digits after \\u",
  InvalidEscapeCharacter: 'one of " \\ / b f n r t u after a backslash',
  InvalidCharacter: "a plain character: write it as an escape",
};

/** One fault a line: what follows the first on a line is mostly its echo. */
function syntaxFaults(
  text: string,
  errors: readonly ParseError[],
  places: (offset: number) => Place,
): readonly Fault[] {
  if (text.trim() === "")
    return [{ code: "bad-json", path: "", ...places(0), found: "nothing", expected: "an object in braces" }];
  const byLine = new Map<number, Fault>();
  for (const error of errors) {
    const place = places(error.offset);
    if (byLine.has(place.line)) continue;
    const found = text.slice(error.offset, error.offset + Math.max(1, error.length));
    const name = printParseErrorCode(error.error);
    const trailing = /^[}\]]/.test(found) && /,\s*$/.test(text.slice(0, error.offset));
    byLine.set(place.line, {
      code: "bad-json",
      path: "",
      ...place,
      found: found.trim() === "" ? "the end" : firstWords(found),
      expected: trailing ? `no comma before ${found.slice(0, 1)}` : (EXPECTED[name] ?? "JSON"),
    });
  }
  return [...byLine.values()];
}

/** The text as it stands there, its first line, cut short where long. */
const firstWords = (found: string): string => {
  const line = found.split("\n", 1)[0] ?? "";
  return line.length > 40 ? `${line.slice(0, 39)}…` : line;
};

function placesIn(text: string): (offset: number) => Place {
  const starts = [0];
  for (let index = text.indexOf("\n"); index !== -1; index = text.indexOf("\n", index + 1)) starts.push(index + 1);
  return (offset) => {
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if ((starts[middle] ?? 0) <= offset) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: offset - (starts[low] ?? 0) + 1 };
  };
}
