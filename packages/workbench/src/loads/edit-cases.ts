import { COMMON_CASES, type LoadCase } from "@armwright/engine";
import type { CarDocument, FieldValue } from "@armwright/engine/document";
import { bench, edit } from "../store/bench.ts";

type Entry = Readonly<Record<string, FieldValue>>;

const entriesOf = (document: CarDocument | null): readonly Entry[] =>
  (document?.loads?.cases ?? []) as unknown as readonly Entry[];

/** Which entry of the document changes or adds a case; −1: none. */
export const typedCaseAt = (document: CarDocument | null, name: string): number =>
  entriesOf(document).findIndex((entry) => same(entry["name"], name));

const same = (a: unknown, b: string): boolean => String(a).trim().toLowerCase() === b.trim().toLowerCase();

/** Changes one thing of a case: a small edit where the document has the case already, otherwise an entry of its own. */
export function changeCase(
  { name }: LoadCase,
  field: "vertical" | "inward" | "forward" | "at" | "carrier",
  value: FieldValue,
): void {
  const { document } = bench.getState();
  const at = typedCaseAt(document, name);
  const words = `${name}, ${FIELDS[field]}: ${String(value)}`;
  if (at >= 0) edit([{ path: `loads.cases[${at}].${field}`, value }], words);
  else put([...entriesOf(document), { name, [field]: value }], words);
}

const FIELDS = { vertical: "up", inward: "inward", forward: "forward", at: "wheel at", carrier: "held by" } as const;

/** Takes what the document says of a case away: one of the table is then as it stands there, another is gone. */
export function backToCommon({ name }: Pick<LoadCase, "name">): void {
  const { document } = bench.getState();
  const isOfTable = COMMON_CASES.some((each) => each.name === name);
  put(
    entriesOf(document).filter((entry) => !same(entry["name"], name)),
    isOfTable ? `${name} as common practice` : `${name} taken off`,
  );
}

export function leaveOut({ name }: LoadCase): void {
  const { document } = bench.getState();
  const others = entriesOf(document).filter((entry) => !same(entry["name"], name));
  put([...others, { name, skip: "yes" }], `${name} left out`);
}

export const putBack = (loadCase: LoadCase): void => backToCommon(loadCase);

export const addCase = (name: string): void =>
  put([...entriesOf(bench.getState().document), { name, at: "ride", carrier: "shock", vertical: 2 }], `${name} added`);

/** Peaks of a landing as cases of their own; those of the same name are taken over. */
export function addCases(cases: readonly LoadCase[], words: string, place: (travel: number) => FieldValue): void {
  const others = entriesOf(bench.getState().document).filter((entry) =>
    cases.every(({ name }) => !same(entry["name"], name)),
  );
  const entries = cases.map(
    ({ name, at, carrier, vertical }): Entry => ({
      name,
      at: typeof at === "number" ? place(at) : at,
      carrier,
      vertical: Number(vertical.toFixed(2)),
    }),
  );
  put([...others, ...entries], words);
}

function put(entries: readonly Entry[], words: string): void {
  edit([{ path: "loads.cases", value: entries.length === 0 ? undefined : entries }], words);
}
