// biome-ignore-all lint/style/noRestrictedImports: this runs in the build, not in the page.
import { deflateSync } from "node:zlib";

/** The mark in a square of 32: a wheel from behind, two links, two pivots. The same as public/mark.svg. */
const PAPER = [0xf3, 0xee, 0xe2] as const;
const INK = [0x19, 0x24, 0x2b] as const;
const LINE = 1.2;
/** What a launcher may cut off all round. */
const MARGIN = 0.16;

/** The mark as a PNG of so many pixels a side, drawn here so that no picture file has to be kept. */
export function markPng(size: number): Uint8Array {
  const rows = new Uint8Array(size * (size * 3 + 1));
  const scale = 32 / (size * (1 - 2 * MARGIN));
  for (let row = 0; row < size; row++) {
    for (let column = 0; column < size; column++) {
      const x = (column + 0.5 - size * MARGIN) * scale;
      const y = (row + 0.5 - size * MARGIN) * scale;
      // Half a pixel either side of the edge blends: no stairs.
      const ink = Math.min(1, Math.max(0, 0.5 - toInk(x, y) / scale));
      const at = row * (size * 3 + 1) + 1 + column * 3;
      for (const [channel, paper] of PAPER.entries()) {
        rows[at + channel] = Math.round(paper + ((INK[channel] ?? 0) - paper) * ink);
      }
    }
  }
  return png(size, rows);
}

/** Distance to the nearest ink, negative within it; in units of the square. */
function toInk(x: number, y: number): number {
  const tyre = Math.abs(toRounded(x - 7.5, y - 16, 4.5, 10, 3)) - LINE;
  const pivots = [11.5, 20.5].map((height) => Math.hypot(x - 27, y - height));
  const links = [11.5, 20.5].map((height, index) => {
    const along = Math.max(0, Math.max(12 - x, x - 27));
    const link = Math.hypot(along, y - height) - LINE;
    return Math.max(link, 2.5 - (pivots[index] ?? 0));
  });
  const rings = pivots.map((distance) => Math.abs(distance - 2.5) - LINE);
  return Math.min(tyre, ...links, ...rings);
}

/** Signed distance to a rectangle with rounded corners about the origin. */
function toRounded(x: number, y: number, halfWidth: number, halfHeight: number, radius: number): number {
  const dx = Math.abs(x) - halfWidth + radius;
  const dy = Math.abs(y) - halfHeight + radius;
  return Math.hypot(Math.max(dx, 0), Math.max(dy, 0)) + Math.min(Math.max(dx, dy), 0) - radius;
}

/** A PNG file (W3C PNG, 8 bits a channel, no transparency) of rows that each begin with filter 0. */
function png(size: number, rows: Uint8Array): Uint8Array {
  const header = new Uint8Array(13);
  const view = new DataView(header.buffer);
  view.setUint32(0, size);
  view.setUint32(4, size);
  header.set([8, 2, 0, 0, 0], 8);
  const signature = Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a);
  return joined([signature, chunk("IHDR", header), chunk("IDAT", deflateSync(rows)), chunk("IEND", new Uint8Array(0))]);
}

function chunk(name: string, data: Uint8Array): Uint8Array {
  const body = joined([new TextEncoder().encode(name), data]);
  const made = new Uint8Array(body.length + 8);
  const view = new DataView(made.buffer);
  view.setUint32(0, data.length);
  made.set(body, 4);
  view.setUint32(body.length + 4, crc(body));
  return made;
}

/** CRC-32 as PNG's annex D defines it. */
function crc(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  }
  return (sum ^ 0xffffffff) >>> 0;
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((length, part) => length + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
