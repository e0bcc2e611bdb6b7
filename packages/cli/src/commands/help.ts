import { COMMANDS, type Command } from "./catalogue.ts";

const EXIT_CODES = `Exit codes
  0   done; for check: sound
  1   check only: the car has findings that must be put right
  2   a faulty document, a file that cannot be read or written, or a word not understood
  70  a bug in armwright
`;

/** All commands at a glance. */
export function overview(): string {
  const width = Math.max(...COMMANDS.map(({ name }) => name.length));
  const line = (name: string, summary: string) => `  ${name.padEnd(width)}   ${summary}\n`;
  return [
    "Armwright: design an off-road car's rear suspension before metal is cut.\n",
    "\nUsage\n  npx armwright COMMAND ...\n",
    "\nCommands\n",
    ...COMMANDS.map(({ name, summary }) => line(name, summary)),
    line("help", "More on one command: npx armwright help study"),
    "\nExamples\n",
    "  npx armwright new --kind h-arm --out my.car.json\n",
    "  npx armwright study my.car.json\n",
    "\nOptions\n  --help      this page, or with a command its own\n  --version   which version this is\n",
    `\n${EXIT_CODES}`,
  ].join("");
}

/** One command in full. */
export function commandHelp(command: Command): string {
  const named = command.options.map((option) => ({
    word: `--${option.name}${option.value === undefined ? "" : ` ${option.value}`}`,
    meaning: option.meaning,
  }));
  const width = Math.max(0, ...named.map(({ word }) => word.length));
  return [
    `${command.summary}.\n`,
    `\nUsage\n  npx armwright ${command.name} ${command.usage}\n`,
    ...command.operands.map((operand, index) => `  ${["CAR", "OTHER"][index]}: ${operand}\n`),
    ...(named.length === 0 ? [] : ["\nOptions\n"]),
    ...named.map(({ word, meaning }) => `  ${word.padEnd(width)}   ${meaning}\n`),
    "\nExamples\n",
    ...command.examples.map(([does, line]) => `  ${does}:\n    ${line}\n`),
    `\n${EXIT_CODES}`,
  ].join("");
}
