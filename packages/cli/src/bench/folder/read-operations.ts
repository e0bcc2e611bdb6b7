import type { FieldValue } from "@armwright/engine/document";
import { type FieldOperation, isDangerous } from "./operation.ts";

export type OperationsReading =
  | { readonly ok: true; readonly client: string; readonly operations: readonly FieldOperation[] }
  | { readonly ok: false; readonly because: string };

const ID = /^[A-Za-z0-9_-]{8,64}$/;
const MOST = 500;
const LONGEST_PATH = 400;
const DEEPEST_VALUE = 12;
const LONGEST_TEXT = 10_000;

export const isId = (value: unknown): value is string => typeof value === "string" && ID.test(value);

/** Takes a message apart; nothing of it is believed before it has been looked at. */
export function readOperations(message: unknown): OperationsReading {
  const refuse = (because: string): OperationsReading => ({ ok: false, because });
  if (!isFields(message) || !isId(message["client"])) return refuse("expected { client, operations }");
  const list = message["operations"];
  if (!Array.isArray(list) || list.length === 0 || list.length > MOST)
    return refuse(`expected 1 to ${MOST} operations`);
  const operations: FieldOperation[] = [];
  for (const each of list as unknown[]) {
    if (!isFields(each) || !isId(each["id"])) return refuse("an operation has no id of 8 to 64 letters and digits");
    const { id, path, value, remove, was, item } = each;
    if (typeof path !== "string" || path.length > LONGEST_PATH) return refuse(`operation ${id} has no path`);
    if (remove !== undefined && typeof remove !== "boolean") return refuse(`operation ${id}: remove is true or absent`);
    if ((value === undefined) !== (remove === true)) return refuse(`operation ${id} needs a value, or remove: true`);
    if (item !== undefined && typeof item !== "string") return refuse(`operation ${id}: item is a name`);
    for (const content of [value, was]) {
      const wrong = wrongValue(content, 0);
      if (wrong) return refuse(`operation ${id}: ${wrong}`);
    }
    operations.push({
      id,
      path,
      ...(remove === true ? { remove } : { value: value as FieldValue }),
      ...(was === undefined ? {} : { was: was as FieldValue }),
      ...(item === undefined ? {} : { item }),
    });
  }
  return { ok: true, client: message["client"], operations };
}

function wrongValue(value: unknown, depth: number): string | undefined {
  if (depth > DEEPEST_VALUE) return "the value nests too deep";
  if (typeof value === "string") return value.length > LONGEST_TEXT ? "the text is too long" : undefined;
  if (typeof value !== "object" || value === null) return undefined;
  for (const [name, field] of Object.entries(value)) {
    if (isDangerous(name)) return `the name ${name} is not allowed`;
    const wrong = wrongValue(field, depth + 1);
    if (wrong) return wrong;
  }
  return undefined;
}

const isFields = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);
