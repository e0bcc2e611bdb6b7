import { type ChildProcessWithoutNullStreams, spawn, spawnSync } from "node:child_process";
import { mkdirSync, writeFileSync } from "node:fs";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";

const SOURCES = ["main.c", "outputs.c", "h-arm.c", "double-a-arm.c", "five-link.c"];
export const C_COMMAND = "cc -O3 -march=native";

const build = fileURLToPath(new URL("../../build/benchmark/", import.meta.url));
const program = `${build}cycle`;

/** Compiles the C program; gives why not, or null where it is there. */
export function compileC(): string | null {
  const folder = fileURLToPath(new URL("../c/", import.meta.url));
  mkdirSync(build, { recursive: true });
  const [compiler, ...options] = C_COMMAND.split(" ");
  const files = SOURCES.map((name) => folder + name);
  const done = spawnSync(compiler!, [...options, ...files, "-o", program, "-lm"], { encoding: "utf8" });
  if (done.error) return "no C compiler: `cc` was not found";
  return done.status === 0 ? null : `the C program does not compile:\n${done.stderr}`;
}

/** A running C program that holds one corner and answers one line at a time. */
export class CProgram {
  readonly #child: ChildProcessWithoutNullStreams;
  readonly #answers: AsyncIterator<string>;

  constructor(name: string, constants: Float64Array) {
    const file = `${build}${name}.bin`;
    writeFileSync(file, constants);
    this.#child = spawn(program, [file]);
    this.#answers = createInterface({ input: this.#child.stdout })[Symbol.asyncIterator]();
  }

  async #ask(line: string): Promise<string> {
    this.#child.stdin.write(`${line}\n`);
    const { value, done } = await this.#answers.next();
    if (done) throw new Error("the C program stopped");
    return value;
  }

  /** Checksum of all rows, and iterations of the whole cycle. */
  async sum(): Promise<{ readonly sum: number; readonly iterations: number }> {
    const [sum, iterations] = (await this.#ask("sum")).split(" ").map(Number);
    return { sum: sum!, iterations: iterations! };
  }

  /** Seconds that so many cycles take, as the program itself measures them. */
  async time(cycles: number): Promise<number> {
    return Number(await this.#ask(`time ${cycles}`));
  }

  close(): void {
    this.#child.stdin.end();
  }
}
