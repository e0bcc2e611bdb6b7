import { closeSync, existsSync, mkdirSync, openSync, readSync, realpathSync, writeFileSync } from "node:fs";
import type { Io } from "./io.ts";
import { Refusal } from "./refusal.ts";

/** Width where the output is no terminal: a page or an e-mail holds it. */
const PLAIN_WIDTH = 96;

/** Standard input and output, files and terminal of this process. */
export function nodeIo(): Io {
  const allowed = !process.env["NO_COLOR"] && process.env["TERM"] !== "dumb";
  return {
    out: (text) => void process.stdout.write(text),
    err: (text) => void process.stderr.write(text),
    read,
    write,
    writeBytes: write,
    makeFolder,
    exists: existsSync,
    isSame,
    columns: process.stdout.isTTY ? (process.stdout.columns ?? PLAIN_WIDTH) : PLAIN_WIDTH,
    colour: { out: allowed && process.stdout.isTTY === true, err: allowed && process.stderr.isTTY === true },
  };
}

const STANDARD_INPUT = 0;

function read(path: string): string {
  const name = path === "-" ? "standard input" : path;
  try {
    return textOf(path === "-" ? bytesOf(STANDARD_INPUT, name) : fileBytes(path), name);
  } catch (error) {
    if (error instanceof Refusal) throw error;
    throw new Refusal(`${name} cannot be read: ${reasonOf(error)}`);
  }
}

function fileBytes(path: string): Uint8Array {
  const file = openSync(path, "r");
  try {
    return bytesOf(file, path);
  } finally {
    closeSync(file);
  }
}

/** A car document has some kilobytes; what is larger than this is something else, or has no end. */
const MOST_BYTES = 4_000_000;
const CHUNK = 65_536;

/** Reads to the end; of a pipe also one that has nothing to give yet. */
function bytesOf(file: number, name: string): Uint8Array {
  const chunks: Uint8Array[] = [];
  let length = 0;
  for (;;) {
    const chunk = new Uint8Array(CHUNK);
    const got = readSome(file, chunk);
    if (got === 0) return Buffer.concat(chunks);
    length += got;
    if (length > MOST_BYTES) throw new Refusal(`${name} is larger than 4 MB: that is no car document.`);
    chunks.push(chunk.subarray(0, got));
  }
}

function readSome(file: number, chunk: Uint8Array): number {
  for (;;) {
    try {
      return readSync(file, chunk);
    } catch (error) {
      if (codeOf(error) === "EOF") return 0;
      if (codeOf(error) !== "EAGAIN") throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 10);
    }
  }
}

/** Text in UTF-8; what is saved otherwise would only be told line by line as broken. Text has no zero bytes, UTF-16 and programs have. */
function textOf(bytes: Uint8Array, name: string): string {
  const refusal = () => new Refusal(`${name} is not text in UTF-8: save it as UTF-8 in your editor.`);
  if (bytes.includes(0)) throw refusal();
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw refusal();
  }
}

function write(path: string, text: string | Uint8Array): void {
  try {
    writeFileSync(path, text);
  } catch (error) {
    throw new Refusal(`${path} cannot be written: ${reasonOf(error)}`);
  }
}

function makeFolder(path: string): void {
  try {
    mkdirSync(path, { recursive: true });
  } catch (error) {
    throw new Refusal(`the folder ${path} cannot be made: ${reasonOf(error)}`);
  }
}

function isSame(a: string, b: string): boolean {
  if (a === "-" || b === "-" || !existsSync(a) || !existsSync(b)) return false;
  return realpathSync(a) === realpathSync(b);
}

const REASONS: Readonly<Record<string, string>> = {
  EEXIST: "there is a file of that name.",
  ENOENT: "there is no such file or folder.",
  EISDIR: "it is a folder; name a file in it.",
  ENOTDIR: "a part of the path is a file, not a folder.",
  EACCES: "you have no permission.",
  EPERM: "you have no permission.",
  EROFS: "the disk is read-only.",
  ENOSPC: "the disk is full.",
  ENAMETOOLONG: "the name is too long.",
  ELOOP: "its links lead in a circle.",
  EIO: "the disk or device fails.",
};

/** Why the system would not, in plain words. */
export const reasonOf = (error: unknown): string =>
  REASONS[codeOf(error)] ?? (error instanceof Error ? error.message : "for no known reason.");

const codeOf = (error: unknown): string =>
  error instanceof Error && "code" in error && typeof error.code === "string" ? error.code : "";
