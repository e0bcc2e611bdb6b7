import { inflateSync } from "node:zlib";

const WOFF_HEAD = 44;
const WOFF_ENTRY = 20;
const SFNT_HEAD = 12;
const SFNT_ENTRY = 16;

/**
 * A face's plain tables out of a WOFF (W3C Recommendation "WOFF File Format 1.0", sections 3 to 5): unpacked once here, since
 * the page description's writer would unpack them slowly, and again for each of its sizes.
 */
export function sfntOf(woff: Uint8Array): Uint8Array {
  const from = new DataView(woff.buffer, woff.byteOffset, woff.byteLength);
  if (from.getUint32(0) !== 0x774f4646) throw new Error("bug in the book: a face that is no WOFF");
  const count = from.getUint16(12);
  const tables = Array.from({ length: count }, (_, index) => {
    const at = WOFF_HEAD + index * WOFF_ENTRY;
    const [offset, packed, plain] = [from.getUint32(at + 4), from.getUint32(at + 8), from.getUint32(at + 12)];
    const data = woff.subarray(offset, offset + packed);
    return {
      tag: from.getUint32(at),
      checksum: from.getUint32(at + 16),
      data: packed < plain ? new Uint8Array(inflateSync(data)) : data,
    };
  });
  const padded = (length: number): number => Math.ceil(length / 4) * 4;
  const size = tables.reduce((sum, { data }) => sum + padded(data.length), SFNT_HEAD + count * SFNT_ENTRY);
  const bytes = new Uint8Array(size);
  const to = new DataView(bytes.buffer);
  const power = 2 ** Math.floor(Math.log2(count));
  to.setUint32(0, from.getUint32(4));
  to.setUint16(4, count);
  to.setUint16(6, power * 16);
  to.setUint16(8, Math.log2(power));
  to.setUint16(10, count * 16 - power * 16);
  let at = SFNT_HEAD + count * SFNT_ENTRY;
  tables.forEach(({ tag, checksum, data }, index) => {
    const entry = SFNT_HEAD + index * SFNT_ENTRY;
    to.setUint32(entry, tag);
    to.setUint32(entry + 4, checksum);
    to.setUint32(entry + 8, at);
    to.setUint32(entry + 12, data.length);
    bytes.set(data, at);
    at += padded(data.length);
  });
  return bytes;
}
