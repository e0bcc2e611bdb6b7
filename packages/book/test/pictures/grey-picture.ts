import { deflateSync, inflateSync } from "node:zlib";

/** A picture of grey pixels, 0 black to 255 white, row by row from the top. */
export interface GreyPicture {
  readonly width: number;
  readonly height: number;
  readonly pixels: Uint8Array;
}

/** Reads a grey picture as pdftoppm -gray writes it (PGM); sixteen greys are enough, and keep the PNG small. */
export function readPgm(bytes: Uint8Array): GreyPicture {
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(Buffer.from(bytes.subarray(0, 64)).toString("latin1"));
  if (!head) throw new Error("not a grey picture");
  return {
    width: Number(head[1]),
    height: Number(head[2]),
    pixels: bytes.slice(head[0].length).map((grey) => Math.round(grey / 17) * 17),
  };
}

/** A PNG of 8-bit grey (ISO/IEC 15948), each row told as its difference from the one above. */
export function writeGreyPng({ width, height, pixels }: GreyPicture): Uint8Array {
  const raw = new Uint8Array(height * (width + 1));
  for (let y = 0; y < height; y += 1) {
    raw[y * (width + 1)] = 2;
    for (let x = 0; x < width; x += 1) {
      const above = y > 0 ? pixels[(y - 1) * width + x]! : 0;
      raw[y * (width + 1) + 1 + x] = pixels[y * width + x]! - above;
    }
  }
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, 0, 0, 0, 0], 8);
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return Buffer.concat([signature, chunk("IHDR", head), chunk("IDAT", deflateSync(raw, { level: 9 })), chunk("IEND")]);
}

function chunk(name: string, data: Uint8Array = new Uint8Array()): Buffer {
  const body = Buffer.concat([Buffer.from(name, "latin1"), data]);
  const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  check.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, check]);
}

/** ISO/IEC 15948, annex D. */
function crc32(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit += 1) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  }
  return (sum ^ 0xffffffff) >>> 0;
}

/** Reads a PNG of 8-bit grey without interlace (ISO/IEC 15948). */
export function readGreyPng(bytes: Uint8Array): GreyPicture {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const name = (at: number): string => String.fromCharCode(...bytes.subarray(at, at + 4));
  const parts: Uint8Array[] = [];
  let [width, height] = [0, 0];
  for (let at = 8; at < bytes.length; ) {
    const length = view.getUint32(at);
    const data = bytes.subarray(at + 8, at + 8 + length);
    if (name(at + 4) === "IHDR") {
      [width, height] = [view.getUint32(at + 8), view.getUint32(at + 12)];
      const [depth, colour, , , interlace] = data.subarray(8);
      if (depth !== 8 || colour !== 0 || interlace !== 0) throw new Error("not a plain PNG of 8-bit grey");
    } else if (name(at + 4) === "IDAT") parts.push(data);
    at += 12 + length;
  }
  const raw = inflateSync(Buffer.concat(parts));
  const pixels = new Uint8Array(width * height);
  for (let y = 0; y < height; y += 1) {
    const filter = raw[y * (width + 1)]!;
    for (let x = 0; x < width; x += 1) {
      const left = x > 0 ? pixels[y * width + x - 1]! : 0;
      const above = y > 0 ? pixels[(y - 1) * width + x]! : 0;
      const corner = x > 0 && y > 0 ? pixels[(y - 1) * width + x - 1]! : 0;
      const guess = [0, left, above, (left + above) >> 1, paeth(left, above, corner)][filter];
      if (guess === undefined) throw new Error(`no filter ${filter} in a PNG`);
      pixels[y * width + x] = raw[y * (width + 1) + 1 + x]! + guess;
    }
  }
  return { width, height, pixels };
}

function paeth(left: number, above: number, corner: number): number {
  const guess = left + above - corner;
  const [a, b, c] = [left, above, corner].map((each) => Math.abs(guess - each)) as [number, number, number];
  return a <= b && a <= c ? left : b <= c ? above : corner;
}

/** How much lighter or darker a pixel may be than everything next to where it belongs. */
const SHADE = 40;

/**
 * Pixels of one picture that the other has nothing like within a pixel's reach: other edges of the same line, as another
 * renderer smooths them, do not count; a line that has moved by two pixels, or a word that reads otherwise, does.
 */
export function strangePixels(picture: GreyPicture, other: GreyPicture): number {
  const { width, height, pixels } = picture;
  if (other.width !== width || other.height !== height) return width * height;
  let count = 0;
  for (let y = 1; y < height - 1; y += 1) {
    for (let x = 1; x < width - 1; x += 1) {
      const value = pixels[y * width + x]!;
      let [least, most] = [255, 0];
      for (let dy = -1; dy <= 1; dy += 1) {
        for (let dx = -1; dx <= 1; dx += 1) {
          const there = other.pixels[(y + dy) * width + x + dx]!;
          if (there < least) least = there;
          if (there > most) most = there;
        }
      }
      if (value < least - SHADE || value > most + SHADE) count += 1;
    }
  }
  return count;
}
