import { type FieldValue, formatPath, type Path, valueAt } from "@armwright/engine/document";
import { sameValue } from "./same-value.ts";

/** Told to the one whose value was replaced by a hand that had not seen it. */
export interface Overruled {
  /** The client that is to be told. */
  readonly to: string;
  readonly path: string;
  readonly yours: FieldValue;
  readonly theirs: FieldValue;
  readonly by: "person" | "program";
}

/** One plain value; a section that was written whole is kept as its values. */
interface Write {
  readonly client: string;
  readonly path: Path;
  readonly value: FieldValue;
  readonly at: number;
}

/** Long enough for a phone that was out of reach for a day's work. */
const REMEMBERED = 12 * 3600_000;
/** A program's save of a file it opened long ago undoes more than it means to; later it is a change like any other. */
const FRESH = 600_000;
const MOST = 1000;

/** Who wrote what last, field by field, as far back as it matters for telling them. */
export class RecentWrites {
  #writes: Write[] = [];

  /** Notes a write and gives those whose values went under in it unseen. */
  note(client: string, path: Path, value: FieldValue, was: FieldValue, now: number): readonly Overruled[] {
    const overruled: Overruled[] = [];
    const others = this.#writes.filter((write) => {
      if (now - write.at > REMEMBERED) return false;
      if (!overlap(write.path, path)) return true;
      const inside = write.path.slice(path.length);
      const theirs = valueAt(value, inside) as FieldValue;
      const seen = sameValue(valueAt(was, inside), write.value);
      if (write.client !== client && !seen && !sameValue(write.value, theirs)) {
        overruled.push({ to: write.client, path: formatPath(write.path), yours: write.value, theirs, by: "person" });
      }
      return false;
    });
    const own = leaves(path, value).map((leaf) => ({ ...leaf, client, at: now }));
    this.#writes = [...others, ...own].slice(-MOST);
    return overruled;
  }

  /** After another program wrote the file: whose fresh values are not in it. */
  program(document: unknown, now: number): readonly Overruled[] {
    const lost = this.#writes.filter(
      (write) => now - write.at < FRESH && !sameValue(valueAt(document, write.path), write.value),
    );
    this.#writes = this.#writes.filter((write) => !lost.includes(write));
    return lost.map(({ client, path, value }) => ({
      to: client,
      path: formatPath(path),
      yours: value,
      theirs: valueAt(document, path) as FieldValue,
      by: "program",
    }));
  }

  /** Counts in a list no longer mean what they did. */
  forgetUnder(list: Path): void {
    this.#writes = this.#writes.filter(({ path }) => path.length <= list.length || !startsWith(path, list));
  }
}

function leaves(path: Path, value: FieldValue): readonly { readonly path: Path; readonly value: FieldValue }[] {
  if (typeof value !== "object" || value === null) return [{ path, value }];
  const fields: readonly (readonly [string | number, unknown])[] = Array.isArray(value)
    ? value.map((item, index) => [index, item] as const)
    : Object.entries(value);
  return fields.flatMap(([name, field]) => leaves([...path, name], field as FieldValue));
}

const startsWith = (path: Path, start: Path): boolean => start.every((step, index) => path[index] === step);
const overlap = (a: Path, b: Path): boolean => startsWith(a, b) || startsWith(b, a);
