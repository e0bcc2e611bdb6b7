import type { Io } from "../src/io.ts";
import { Refusal } from "../src/refusal.ts";
import { run } from "../src/run.ts";

export interface Told {
  readonly code: number;
  readonly out: string;
  readonly err: string;
  readonly files: ReadonlyMap<string, string>;
  readonly bytes: ReadonlyMap<string, Uint8Array>;
}

export interface World {
  readonly files?: Readonly<Record<string, string>>;
  readonly input?: string;
  readonly columns?: number;
  readonly colour?: boolean;
}

/** Runs a command line in a world of its own: files and standard input given, everything that comes out kept. */
export async function told(words: readonly string[], world: World = {}): Promise<Told> {
  const files = new Map(Object.entries(world.files ?? {}));
  const bytesWritten = new Map<string, Uint8Array>();
  let out = "";
  let err = "";
  const io: Io = {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    read: (path) => {
      const text = path === "-" ? world.input : files.get(path);
      if (text === undefined) throw new Refusal(`${path} cannot be read: there is no such file or folder.`);
      return text;
    },
    write: (path, text) => void files.set(path, text),
    writeBytes: (path, bytes) => void bytesWritten.set(path, bytes),
    makeFolder: () => undefined,
    exists: (path) => files.has(path),
    isSame: (a, b) => a === b,
    columns: world.columns ?? 96,
    colour: { out: world.colour ?? false, err: false },
  };
  const code = await run(words, io);
  return { code, out, err, files, bytes: bytesWritten };
}
