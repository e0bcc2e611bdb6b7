import type { Io } from "../io.ts";
import type { Words } from "../parse-words.ts";

/** A command as help and the reading of its words need it; its work is loaded only when it is run. */
export interface Command {
  readonly name: string;
  readonly summary: string;
  /** After the name, as help shows it. */
  readonly usage: string;
  /** What has to be named, in order, in words. */
  readonly operands: readonly string[];
  /** One more that may be named or left out. */
  readonly optionalOperand?: string;
  readonly options: readonly Option[];
  /** A line of what it does, and the command line that does it. */
  readonly examples: readonly (readonly [does: string, line: string])[];
  /** Said under the options. */
  readonly remarks?: string;
  readonly load: () => Promise<{ readonly perform: (words: Words, io: Io) => number | Promise<number> }>;
}

export interface Option {
  readonly name: string;
  /** How its value is called; left out for an option that is there or not. */
  readonly value?: string;
  readonly meaning: string;
}

const CAR = "a car document (a file, or - for standard input)";
const OUT: Option = { name: "out", value: "FILE", meaning: "write to a file instead of the terminal" };

export const COMMANDS: readonly Command[] = [
  {
    name: "study",
    summary: "How the wheel moves, and what stops it first",
    usage: "CAR [options]",
    operands: [CAR],
    options: [
      { name: "at", value: "TRAVELS", meaning: "show these travels, apart by commas: bump is +, droop -" },
      { name: "stations", value: "N", meaning: "show N travels, evenly from stop to stop (2 to 1001)" },
      { name: "json", meaning: "the whole study as JSON; its form: npx armwright schema --study" },
      {
        name: "csv",
        meaning: "the cycle table with every quantity, as CSV; a column side where the right wheel is its own",
      },
      { name: "si", meaning: "JSON or CSV in metres, radians and kilograms, not in the document's units" },
      OUT,
    ],
    examples: [
      ["Read it on the terminal", "npx armwright study my.car.json"],
      [
        "The cycle at three heights, for a spreadsheet",
        'npx armwright study my.car.json --csv --at "3, 0, -4 1/2" --out cycle.csv',
      ],
    ],
    load: () => import("./study.ts"),
  },
  {
    name: "check",
    summary: "Whether a car document reads well, and what must be changed",
    usage: "CAR",
    operands: [CAR],
    options: [],
    examples: [
      ["Look at a document after a change", "npx armwright check my.car.json"],
      [
        "Go on only with a sound one",
        "npx armwright check my.car.json && npx armwright study my.car.json --out study.txt",
      ],
    ],
    load: () => import("./check.ts"),
  },
  {
    name: "new",
    summary: "A starting document to put your own numbers over",
    usage: "--kind KIND [options]",
    operands: [],
    options: [
      { name: "kind", value: "KIND", meaning: "h-arm, double-a-arm, trailing-arm or five-link" },
      { name: "units", value: "UNITS", meaning: "inch-pound (where nothing is said) or metric" },
      { name: "name", value: "NAME", meaning: "what the car is called" },
      { name: "simple", meaning: "only what may not be left out" },
      { ...OUT, meaning: "write to a file, and car.schema.json beside it where there is none" },
      { name: "force", meaning: "write over a file that is there already" },
    ],
    examples: [
      ["Begin an H-arm car in inches", "npx armwright new --kind h-arm --out my.car.json"],
      [
        "Study a metric trailing arm without keeping it",
        "npx armwright new --kind trailing-arm --units metric | npx armwright study -",
      ],
    ],
    load: () => import("./new.ts"),
  },
  {
    name: "bench",
    summary: "The workbench in the browser: see the car, drag a point, watch every answer follow",
    usage: "[FOLDER] [options]",
    operands: [],
    optionalOperand: "a folder of car documents (left out: ./cars, filled once with copies of the examples)",
    options: [
      { name: "port", value: "N", meaning: "where the page is served (left out: the first free one from 4180)" },
      {
        name: "share",
        meaning: "open it to your local network, for a phone under the car; each device is paired once",
      },
      { name: "address", value: "A", meaning: "with --share: which of this machine's addresses" },
      { name: "no-open", meaning: "do not open the browser" },
    ],
    examples: [
      ["Work on the examples' copies", "npx armwright bench"],
      ["Work on your own cars, with the phone beside", "npx armwright bench garage --share"],
    ],
    remarks:
      "Only this machine can reach it unless --share is given. Cars stay plain files in the folder; earlier versions lie in its .history.",
    load: async () => ({ perform: (await import("../bench/command.ts")).benchCommand }),
  },
  {
    name: "schema",
    summary: "The form of the documents: JSON Schema and field reference",
    usage: "[options]",
    operands: [],
    options: [
      { name: "study", meaning: "JSON Schema of what study --json writes" },
      { name: "reference", meaning: "every field of a car document in words, as Markdown" },
      OUT,
    ],
    examples: [
      ["Let an editor explain and complete the fields", "npx armwright schema --out car.schema.json"],
      ["Read what each field means", "npx armwright schema --reference"],
    ],
    load: () => import("./schema.ts"),
  },
  {
    name: "turns",
    summary: "What a turn of each adjuster does, and the turns to a wanted setting",
    usage: "CAR [options]",
    operands: [CAR],
    options: [
      { name: "camber", value: "DEG", meaning: "camber wanted, degrees, + when the top leans out" },
      { name: "toe", value: "DEG", meaning: "toe wanted, degrees this wheel, + toe-in" },
      {
        name: "toe-at-rim",
        value: "LENGTH",
        meaning: "toe wanted, front against rear across the rim, this wheel, + toe-in",
      },
      { name: "toe-at-tyre", value: "LENGTH", meaning: "the same across the tyre's outside" },
      { name: "hold-camber", meaning: "reach the toe and leave camber as it is" },
    ],
    examples: [
      ["See what each adjuster does", "npx armwright turns my.car.json"],
      [
        "Turns to a degree of negative camber and 1/16 toe-in",
        "npx armwright turns my.car.json --camber -1 --toe-at-rim 1/16",
      ],
    ],
    load: () => import("./turns.ts"),
  },
  {
    name: "springs",
    summary: "Where the car sits on its springs, their rates at the wheel, and which set to take",
    usage: "CAR [options]",
    operands: [CAR],
    options: [
      {
        name: "shelf",
        value: "FILE",
        meaning: "springs to choose from (JSON): every one alone and every two are tried",
      },
      { name: "use", value: "USE", meaning: "dune, desert or trail: which ride frequency is aimed at" },
      { name: "json", meaning: "the same as JSON, in the document's units" },
    ],
    examples: [
      ["See where the car sits", "npx armwright springs my.car.json"],
      ["Choose from what can be had", "npx armwright springs my.car.json --shelf my.shelf.json --use dune"],
    ],
    load: () => import("./springs.ts"),
  },
  {
    name: "mounts",
    summary: "Where a shock can go, and what would make room where none can",
    usage: "CAR [options]",
    operands: [CAR],
    options: [
      { name: "shelf", value: "FILE", meaning: "shocks to choose from, JSON or CSV (left out: the car's own)" },
      { name: "shock", value: "NAME", meaning: "only this one of the shelf" },
      { name: "upper", value: "BOX", meaning: 'where the upper mount may be: "box 0,14,26 8,20,36"' },
      { name: "upper-tube", value: "NAME", meaning: "upper mount along this tube among the keep-outs" },
      { name: "lower", value: "ZONE", meaning: 'an arm\'s tube (lowerArm.front), or "box ... on lower-arm"' },
      { name: "step", value: "LENGTH", meaning: "between neighbours of the grid (left out: 1/2 in)" },
      { name: "apply", value: "FILE", meaning: "write the car with the first place into a file" },
      { name: "json", meaning: "as JSON, in metres and radians" },
    ],
    examples: [
      ["Where the car's own shock could go", "npx armwright mounts my.car.json"],
      [
        "Choose from a shelf, and keep the best",
        "npx armwright mounts my.car.json --shelf examples/shocks.shelf.json --apply mounted.car.json",
      ],
    ],
    load: () => import("./mounts.ts"),
  },
  {
    name: "book",
    summary: "The build book: sheets to cut, weld and check by, as PDF and files",
    usage: "CAR [options]",
    operands: [CAR],
    options: [
      { name: "paper", value: "SIZE", meaning: "letter or a4 (left out: letter for inches, a4 for millimetres)" },
      { name: "out", value: "DIR", meaning: "where the files go (left out: a folder named after the car)" },
    ],
    examples: [["Everything for the bench, on Letter paper", "npx armwright book my.car.json --paper letter"]],
    load: () => import("./book.ts"),
  },
  {
    name: "solve",
    summary: "Find the number that makes this true: camber, toe, plunge, slip, wheelbase, ride height",
    usage: "CAR [QUESTION] [options]",
    operands: [CAR],
    optionalOperand: "a question (left out: all of them are listed)",
    options: [
      { name: "with", value: "VALUES", meaning: 'what the question is asked with: "NAME=VALUE, NAME=VALUE"' },
      { name: "apply", value: "FILE", meaning: "write the car with the answer into a file" },
      { name: "json", meaning: "as JSON, in metres and radians" },
    ],
    examples: [
      ["What can be asked of this car", "npx armwright solve my.car.json"],
      [
        "Upper link moved along its tab for constant camber",
        'npx armwright solve my.car.json constant-camber --with "in-out=0, up-down=1 1/2" --apply better.car.json',
      ],
    ],
    load: () => import("./solve.ts"),
  },
  {
    name: "compare",
    summary: "What differs between two cars, and what it does to every result",
    usage: "CAR OTHER",
    operands: [CAR, "a second car document to compare with"],
    options: [],
    examples: [
      ["Before and after a change of tyre", "npx armwright compare before.car.json after.car.json"],
      ["Two kinds of linkage on the same wheel", "npx armwright compare h-arm.car.json five-link.car.json"],
    ],
    load: () => import("./compare.ts"),
  },
];

export const commandNamed = (name: string): Command | undefined => COMMANDS.find((command) => command.name === name);
