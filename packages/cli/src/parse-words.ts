import { parseArgs } from "node:util";
import type { Command } from "./commands/catalogue.ts";
import { Refusal } from "./refusal.ts";

/** A command line taken apart: what was named, and the options by name. */
export interface Words {
  readonly operands: readonly string[];
  readonly flags: ReadonlySet<string>;
  readonly values: ReadonlyMap<string, string>;
}

/** Takes the words after a command apart by what the command declares. Throws Refusal, each with what would be right. */
export async function parseWords(command: Command, words: readonly string[]): Promise<Words> {
  const options = Object.fromEntries(
    command.options.map(({ name, value }) => [name, { type: value === undefined ? "boolean" : "string" } as const]),
  );
  // Not strict, because its refusals speak of programs; ours follow.
  const { tokens } = parseArgs({ args: [...words], options, strict: false, allowPositionals: true, tokens: true });
  const operands: string[] = [];
  const flags = new Set<string>();
  const values = new Map<string, string>();
  for (const token of tokens) {
    if (token.kind === "positional") operands.push(token.value);
    if (token.kind !== "option") continue;
    const option = command.options.find(({ name }) => name === token.name);
    if (!option || !token.rawName.startsWith("--")) throw new Refusal(await noSuchOption(command, token.rawName));
    if (flags.has(option.name) || values.has(option.name))
      throw new Refusal(`${token.rawName} is given twice: keep one.`);
    if (option.value === undefined) {
      if (token.value !== undefined) throw new Refusal(`${token.rawName} takes no value, found ${token.value}.`);
      flags.add(option.name);
    } else {
      if (token.value === undefined || token.value === "") {
        throw new Refusal(`${token.rawName} needs a value: ${token.rawName} ${option.value}`);
      }
      values.set(option.name, token.value);
    }
  }
  checkOperands(command, operands);
  return { operands, flags, values };
}

function checkOperands(command: Command, operands: readonly string[]): void {
  const needed = command.operands;
  const wanted = [...needed, ...(command.optionalOperand === undefined ? [] : [command.optionalOperand])];
  const missing = needed[operands.length];
  if (missing !== undefined) {
    throw new Refusal(`${command.name} needs ${missing}: npx armwright ${command.name} ${command.usage}`);
  }
  const extra = operands[wanted.length];
  if (extra !== undefined) {
    throw new Refusal(
      `${command.name} does not know what to do with ${JSON.stringify(extra)}: npx armwright ${command.name} ${command.usage}`,
    );
  }
  if (operands.filter((word) => word === "-").length > 1) {
    throw new Refusal("Only one document can come from standard input: name a file for the other.");
  }
}

async function noSuchOption(command: Command, typed: string): Promise<string> {
  const names = command.options.map(({ name }) => `--${name}`);
  // Loaded only here, since it comes with all that reads documents.
  const { nearestWord } = await import("@armwright/engine/document");
  const near = nearestWord(typed, names);
  const known = names.length === 0 ? "it has none" : `its options are ${names.join(", ")}`;
  return `${command.name} has no option ${typed}: ${near ? `did you mean ${near}?` : `${known}.`}`;
}
