import type { CarDocument } from "./schema.ts";
import { writeCarDocument } from "./write.ts";

/**
 * What tells one state of a document from another, as it is printed on a sheet: `7F3A-91C2-04BE`. The same document gives
 * the same one, however its file is spaced; any changed field gives another. FNV-1a, 64 bit, folded to 48 (Fowler, Noll and
 * Vo's published hash): it tells states apart, it is no seal against forgery.
 */
export function fingerprintOf(document: CarDocument): string {
  let hash = OFFSET;
  for (const byte of utf8(writeCarDocument(document))) {
    hash ^= BigInt(byte);
    hash = BigInt.asUintN(64, hash * PRIME);
  }
  const folded = (hash >> 48n) ^ BigInt.asUintN(48, hash);
  return (folded.toString(16).padStart(12, "0").toUpperCase().match(/.{4}/g) ?? []).join("-");
}

const OFFSET = 0xcbf29ce484222325n;
const PRIME = 0x100000001b3n;

function* utf8(text: string): Generator<number> {
  for (const character of text) {
    const code = character.codePointAt(0) ?? 0;
    if (code < 0x80) yield code;
    else if (code < 0x800) yield* [0xc0 | (code >> 6), 0x80 | (code & 63)];
    else if (code < 0x10000) yield* [0xe0 | (code >> 12), 0x80 | ((code >> 6) & 63), 0x80 | (code & 63)];
    else yield* [0xf0 | (code >> 18), 0x80 | ((code >> 12) & 63), 0x80 | ((code >> 6) & 63), 0x80 | (code & 63)];
  }
}
