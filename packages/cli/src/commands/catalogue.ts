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
        meaning: "springs to choose from (JSON or CSV): every one alone and every two are tried",
      },
      { name: "use", value: "USE", meaning: "dune, desert or trail: which ride frequency is aimed at" },
      { name: "ride", value: "TRAVEL", meaning: "choose so that the car sits there: + is lower than drawn" },
      { name: "frequency", value: "WINDOW", meaning: "choose for this ride frequency, such as 1.0-1.3 Hz" },
      {
        name: "crossover",
        value: "LENGTH",
        meaning: "choose for a crossover so far of shock past ride (left out: 2 in)",
      },
      { name: "road", value: "CLASS", meaning: "roughness of the road, A to H (left out: D, a bad dirt road)" },
      { name: "speed", value: "SPEED", meaning: "on it, mph or km/h as the document's units go (left out: 34 mph)" },
      { name: "apply", value: "FILE", meaning: "write the car with the best set of the shelf into a file" },
      { name: "json", meaning: "the same as JSON, in the document's units" },
    ],
    examples: [
      ["See where the car sits", "npx armwright springs my.car.json"],
      ["Choose from what can be had", "npx armwright springs my.car.json --shelf my.shelf.json --use dune"],
    ],
    load: () => import("./springs.ts"),
  },
  {
    name: "coil",
    summary: "A spring's rate from its wire and coils, or the wire or coils for a rate",
    usage: "--outside LENGTH [options]",
    operands: [],
    options: [
      { name: "outside", value: "LENGTH", meaning: "over the coils" },
      { name: "wire", value: "LENGTH", meaning: "thickness of the wire" },
      { name: "coils", value: "N", meaning: "active coils: all but those that lie on the seats" },
      { name: "rate", value: "RATE", meaning: "wanted, or marked on it" },
      { name: "free", value: "LENGTH", meaning: "off the car: for the stress when solid" },
      { name: "squeeze", value: "LENGTH", meaning: "for the stress at this squeeze" },
      { name: "metric", meaning: "bare numbers are mm and N/mm (left out: in and lb/in)" },
      { name: "json", meaning: "as JSON, in SI units" },
    ],
    examples: [
      ["What rate is this spring", "npx armwright coil --outside 3 --wire 0.44 --coils 9 --free 14"],
      ["How many coils for a rate", "npx armwright coil --outside 3 --wire 0.44 --rate 250"],
    ],
    load: () => import("./coil.ts"),
  },
  {
    name: "stops",
    summary: "Strap and bump stop: where they end the travel, what they take, how to set them",
    usage: "CAR [options]",
    operands: [CAR],
    options: [
      { name: "drop", value: "HEIGHT", meaning: "the car falls flat from this height (left out: 12 in)" },
      {
        name: "snatch",
        value: "HEIGHT",
        meaning: "strap taut at the speed of this fall (left out: as the springs do)",
      },
      { name: "margin", value: "LENGTH", meaning: "wheel travel kept before a hard limit (left out: 1/4 in)" },
      { name: "no-damping", meaning: "leave the dampers out: the most that could arrive" },
      { name: "apply", value: "FILE", meaning: "write the car with the stops so set into a file" },
      { name: "json", meaning: "as JSON, in SI units" },
    ],
    examples: [
      ["What the stops do and take", "npx armwright stops my.car.json --drop 24"],
      ["Set them for the travel aimed at", "npx armwright stops my.car.json --apply stopped.car.json"],
    ],
    load: () => import("./stops.ts"),
  },
  {
    name: "loads",
    summary: "What every joint, link, shock, stop and strap has to carry, case by case",
    usage: "CAR [options]",
    operands: [CAR],
    options: [
      { name: "case", value: "NAME", meaning: "one case with every force in it (the beginning of its name will do)" },
      { name: "at", value: "TRAVEL", meaning: "all of it at this travel: bump is +, droop -" },
      { name: "json", meaning: "the same as JSON, in the document's units" },
    ],
    examples: [
      ["The table of cases, and the most at each joint", "npx armwright loads my.car.json"],
      ["One case in full", 'npx armwright loads my.car.json --case "landing on one"'],
    ],
    load: () => import("./loads.ts"),
  },
  {
    name: "land",
    summary: "A drop, a bump, whoops or a rough road on the real geometry: peaks, travel used, heat",
    usage: "CAR [options]",
    operands: [CAR],
    options: [
      {
        name: "drop",
        value: "HEIGHT",
        meaning: "the whole car falls level from so high (where nothing is said: 24 in)",
      },
      { name: "bump", value: "HEIGHT", meaning: "one rounded bump at --speed, --length long" },
      { name: "length", value: "LENGTH", meaning: "of the bump (left out: 48 in)" },
      { name: "whoops", value: "HEIGHT", meaning: "a row of bumps at --speed, --spacing apart, --count of them" },
      { name: "spacing", value: "LENGTH", meaning: "crest to crest (left out: 240 in)" },
      { name: "count", value: "N", meaning: "how many whoops (left out: 8)" },
      { name: "road", value: "CLASS", meaning: "a random road after ISO 8608, A (smooth) to H, at --speed" },
      { name: "seconds", value: "N", meaning: "how long on that road (left out: 20)" },
      { name: "seed", value: "N", meaning: "another road of the same class (left out: 1)" },
      { name: "speed", value: "SPEED", meaning: "as 35mph or 55km/h (left out: 20 mph over a bump, else 30)" },
      { name: "one-wheel", meaning: "with --drop or --bump: the left wheel only, the body rolls" },
      {
        name: "lower",
        value: "LENGTH",
        meaning: "with --drop --one-wheel: the right one's ground so much lower (12 in)",
      },
      { name: "csv", meaning: "the whole history as CSV" },
      { name: "json", meaning: "peaks and counts as JSON, in the document's units" },
      OUT,
    ],
    examples: [
      ["Drop it from two feet", "npx armwright land my.car.json --drop 24in"],
      ["Eight whoops at 40 mph", "npx armwright land my.car.json --whoops 18 --spacing 240 --speed 40mph"],
      [
        "Land on one wheel, history for a spreadsheet",
        "npx armwright land my.car.json --drop 24 --one-wheel --csv --out land.csv",
      ],
    ],
    load: () => import("./land.ts"),
  },
  {
    name: "survey",
    summary: "From tape readings to coordinates: how sure, which reading is wrong, what to tape next",
    usage: "CAR [options]",
    operands: [CAR],
    options: [
      { name: "readings", meaning: "every reading with its residual, not only what stands out" },
      { name: "json", meaning: "as JSON, in metres and radians" },
    ],
    examples: [
      ["Coordinates out of readings", "npx armwright survey my.car.json"],
      ["Every reading with its residual", "npx armwright survey my.car.json --readings"],
    ],
    load: () => import("./survey.ts"),
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
      { name: "bump", value: "LENGTH", meaning: "wanted travel up from ride (left out: to the car's own stop)" },
      { name: "droop", value: "LENGTH", meaning: "wanted travel down from ride (left out: to the car's own stop)" },
      { name: "stroke", value: "WINDOW", meaning: "share of the stroke that the travel uses, such as 80-92 %" },
      { name: "ratio", value: "WINDOW", meaning: "motion ratio at ride, shock over wheel, such as 0.55-0.8" },
      { name: "step", value: "LENGTH", meaning: "between neighbours of the grid (left out: 1/2 in)" },
      { name: "frame", value: "NAMES", meaning: "tubes that may carry the upper mount (left out: those marked frame)" },
      {
        name: "wrench",
        value: "LENGTH",
        meaning: "free before each bolt for socket and ratchet, or none (left out: 3 in)",
      },
      { name: "apply", value: "FILE", meaning: "write the car with the first place into a file" },
      { name: "open", value: "N", meaning: "where none fits: make change N, lower or notch, and write with --apply" },
      { name: "with-what-i-have", meaning: "the other way round: what travel and track these shocks and shafts allow" },
      { name: "straps", value: "LENGTHS", meaning: "straps at hand, hole to hole, apart by commas" },
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
    name: "strength",
    summary: "Whether the parts hold in the load cases, weakest first, and what one size up would buy",
    usage: "CAR [options]",
    operands: [CAR],
    options: [
      { name: "part", value: "NAME", meaning: "only parts whose name holds this, e.g. upperLink or shock" },
      { name: "apply", value: "FILE", meaning: "write the car with what makes its weak arms hold into a file" },
      {
        name: "by",
        value: "WAY",
        meaning: "with --apply: next-size, gusset or second-tube (left out: the lightest that holds)",
      },
      { name: "json", meaning: "as JSON, in newtons, metres and pascals" },
    ],
    examples: [
      ["The weakest parts, and the cases that find them", "npx armwright strength my.car.json"],
      ["All that is known of one part", "npx armwright strength my.car.json --part upperLink"],
      ["The car with larger arm tubes", "npx armwright strength my.car.json --apply strong.car.json --by next-size"],
    ],
    load: () => import("./strength.ts"),
  },
  {
    name: "asbuilt",
    summary: "The tacked or finished car against its plan: do they agree, and if not, why",
    usage: "CAR [options]",
    operands: [CAR],
    options: [
      { name: "apply", value: "FILE", meaning: "write the car as built, its cause in it, into a file" },
      { name: "cause", value: "N", meaning: "which of the causes told, where the readings cannot tell several apart" },
      { name: "json", meaning: "as JSON, in metres and radians" },
    ],
    examples: [
      ["The five-minute check, and how sure the stops are", "npx armwright asbuilt my.car.json"],
      ["Keep the car as built beside the plan", "npx armwright asbuilt my.car.json --apply built.car.json"],
    ],
    load: () => import("./asbuilt.ts"),
  },
  {
    name: "book",
    summary: "The build book: sheets to cut, weld and check by, as PDF and files",
    usage: "CAR [options]",
    operands: [CAR],
    options: [
      { name: "paper", value: "SIZE", meaning: "letter or a4 (left out: letter for inches, a4 for millimetres)" },
      { name: "out", value: "DIR", meaning: "where the files go (left out: a folder named after the car)" },
      {
        name: "travel",
        value: "LENGTH",
        meaning: "where the wheels of the solid assembly stand (left out: ride height)",
      },
    ],
    examples: [
      ["Everything for the bench, on Letter paper", "npx armwright book my.car.json --paper letter"],
      ["The same on A4, into a folder of its own", "npx armwright book my.car.json --paper a4 --out paper"],
      ["Solids with the wheels hanging 3 1/2 in down", 'npx armwright book my.car.json --travel "-3 1/2"'],
    ],
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
