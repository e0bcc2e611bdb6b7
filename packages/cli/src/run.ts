import { COMMANDS, type Command, commandNamed } from "./commands/catalogue.ts";
import { commandHelp, overview } from "./commands/help.ts";
import { EXIT, type Io } from "./io.ts";
import { parseWords } from "./parse-words.ts";
import { Refusal } from "./refusal.ts";
import { plain, shortened } from "./text/plain.ts";
import { version } from "./version.ts";

/** Runs one command line (without node and script) and gives the exit code. Never throws. */
export async function run(words: readonly string[], io: Io): Promise<number> {
  try {
    return await dispatch(words, io);
  } catch (error) {
    if (error instanceof Refusal) {
      io.err(`${shortened(plain(error.message), MOST_SAID)}\n`);
      return EXIT.refused;
    }
    io.err(`This is a bug in armwright; please report it with the car document. ${plain(said(error))}\n`);
    return EXIT.bug;
  }
}

async function dispatch(words: readonly string[], io: Io): Promise<number> {
  const [first, ...rest] = words;
  if (first === undefined || first === "--help" || first === "-h" || (first === "help" && rest.length === 0)) {
    io.out(overview());
    return EXIT.sound;
  }
  if (first === "--version" || first === "-V") {
    io.out(`armwright ${version()}\n`);
    return EXIT.sound;
  }
  if (first === "help") {
    io.out(commandHelp(await known(rest[0] ?? "")));
    return EXIT.sound;
  }
  const command = await known(first);
  if (rest.includes("--help") || rest.includes("-h")) {
    io.out(commandHelp(command));
    return EXIT.sound;
  }
  const parsed = await parseWords(command, rest);
  const { perform } = await command.load();
  return perform(parsed, io);
}

/** Longer than any sentence of ours: only a word that was typed can make it so. */
const MOST_SAID = 2000;

async function known(name: string): Promise<Command> {
  const command = commandNamed(name);
  if (command) return command;
  const names = COMMANDS.map((each) => each.name);
  // Loaded only here, since it comes with all that reads documents.
  const { nearestWord } = await import("@armwright/engine/document");
  const near = nearestWord(name, [...names, "help"]);
  const hint = near ? `did you mean ${near}?` : `the commands are ${names.join(", ")} and help.`;
  if (name.startsWith("-"))
    throw new Refusal(`Options come after the command, found ${name} first: try npx armwright help`);
  throw new Refusal(`There is no command ${JSON.stringify(name)}: ${hint}`);
}

/** The error with the place in our code where it arose: what a report needs, and nothing else. */
function said(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  const place = /\n\s+at (.+)/.exec(error.stack ?? "")?.[1];
  return place ? `(${error.message}; ${place})` : `(${error.message})`;
}
