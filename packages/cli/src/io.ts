/** All that a command may do to the world: handed in, so that tests run commands without a process. */
export interface Io {
  out(text: string): void;
  err(text: string): void;
  /** Whole text of a file, or of standard input for `-`. Throws Refusal. */
  read(path: string): string;
  /** Throws Refusal where the file cannot be written. */
  write(path: string, text: string): void;
  /** Throws Refusal where the file cannot be written. */
  writeBytes(path: string, bytes: Uint8Array): void;
  /** Makes a folder and those above it where they are not there. Throws Refusal where it cannot. */
  makeFolder(path: string): void;
  exists(path: string): boolean;
  /** Whether two paths name one and the same file. */
  isSame(a: string, b: string): boolean;
  /** Characters in a line of the output. */
  readonly columns: number;
  /** Whether output and errors may be bold and red. */
  readonly colour: { readonly out: boolean; readonly err: boolean };
}

/** Exit codes of every command; documented in help and README. */
export const EXIT = { sound: 0, must: 1, refused: 2, bug: 70 } as const;
