import { closeSync, existsSync, openSync, readFileSync, readSync, realpathSync, writeFileSync } from "node:fs";
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
    exists: existsSync,
    isSame,
    columns: process.stdout.isTTY ? (process.stdout.columns ?? PLAIN_WIDTH) : PLAIN_WIDTH,
    colour: { out: allowed && process.stdout.isTTY === true, err: allowed && process.stderr.isTTY === true },
  };
}

const STANDARD_INPUT = 0;

function read(path: string): string {
  try {
    return path === "-" ? readAll() : readFile(path);
  } catch (error) {
    if (error instanceof Refusal) throw error;
    const name = path === "-" ? "standard input" : path;
    throw new Refusal(`${name} cannot be read: ${reason(error)}`);
  }
}

/** A car document has some kilobytes; what is larger than this is something else, or has no end. */
const MOST_BYTES = 4_000_000;

function readFile(path: string): string {
  const file = openSync(path, "r");
  try {
    const buffer = Buffer.alloc(MOST_BYTES + 1);
    let length = 0;
    for (let got = -1; got !== 0 && length <= MOST_BYTES; length += got) {
      got = readSync(file, buffer, length, buffer.length - length, null);
    }
    if (length > MOST_BYTES) throw new Refusal(`${path} is larger than 4 MB: that is no car document.`);
    return textOf(buffer.subarray(0, length), path);
  } finally {
    closeSync(file);
  }
}

/** Text in UTF-8; what is saved otherwise would only be told line by line as broken. */
function textOf(bytes: Uint8Array, path: string): string {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw new Refusal(`${path} is not text in UTF-8: save it so in your editor.`);
  }
}

/** Reads a pipe to its end, also one that has nothing to give yet. */
function readAll(): string {
  for (;;) {
    try {
      return readFileSync(STANDARD_INPUT, "utf8");
    } catch (error) {
      if (codeOf(error) === "EOF") return "";
      if (codeOf(error) !== "EAGAIN") throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 10);
    }
  }
}

function write(path: string, text: string): void {
  try {
    writeFileSync(path, text);
  } catch (error) {
    throw new Refusal(`${path} cannot be written: ${reason(error)}`);
  }
}

function isSame(a: string, b: string): boolean {
  if (a === "-" || b === "-" || !existsSync(a) || !existsSync(b)) return false;
  return realpathSync(a) === realpathSync(b);
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file or folder.",
  EISDIR: "it is a folder; name a file in it.",
  ENOTDIR: "a part of the path is a file, not a folder.",
  EACCES: "you have no permission.",
  EPERM: "you have no permission.",
  EROFS: "the disk is read-only.",
  ENOSPC: "the disk is full.",
};

const reason = (error: unknown): string =>
  REASONS[codeOf(error)] ?? (error instanceof Error ? error.message : "for no known reason.");

const codeOf = (error: unknown): string =>
  error instanceof Error && "code" in error && typeof error.code === "string" ? error.code : "";
