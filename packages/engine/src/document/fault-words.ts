import type { Fault, FaultCode } from "./fault.ts";

/** One plain sentence: where, what was found, what would be right. */
export function sayFault(fault: Fault): string {
  const sentence = WORDS[fault.code](fault);
  return fault.path === "" ? sentence : `${fault.path}: ${sentence}`;
}

const EXAMPLES: Readonly<Record<string, string>> = {
  "a length": 'a number, or text such as "12 3/16", "1\' 4-1/2", "14.375 in" or "310 mm"',
  "an angle": "a number of degrees such as 1.5",
  "a weight": 'a number, or text such as "650 lb" or "300 kg"',
  "a percentage": "a number such as 40",
  "a rate": 'a number, or text such as "250 lb/in" or "45 N/mm"',
  "a pressure": 'a number, or text such as "200 psi" or "14 bar"',
  "a stress": 'a number, or text such as "75 ksi" or "520 MPa"',
  "a torque": 'a number, or text such as "900 lb-ft" or "1200 Nm"',
  "a force": 'a number, or text such as "28000 lb" or "125 kN"',
  "a volume": 'a number, or text such as "25 in3" or "400 cm3"',
  "a thread": '"3/4-16" or "M16x1.5"',
  "a direction": '"forward", "rearward", "left", "right", "up", "down", or { "x": 1, "y": 0, "z": 0.2 }',
};

const withExample = (kind = "a value"): string => (EXAMPLES[kind] ? `${kind}: ${EXAMPLES[kind]}` : kind);

const listed = (words: readonly string[] = []): string =>
  words.length < 2 ? (words[0] ?? "nothing") : `${words.slice(0, -1).join(", ")} or ${words.at(-1)}`;

const meant = (fault: Fault): string =>
  fault.suggestion === undefined ? `write one of ${listed(fault.options)}` : `did you mean ${fault.suggestion}?`;

const WORDS: Readonly<Record<FaultCode, (fault: Fault) => string>> = {
  "bad-json": (f) => `not JSON at line ${f.line}, column ${f.column}: found ${f.found}, expected ${f.expected}`,
  "nested-too-deep": (f) => `brackets nest deeper than ${f.expected} at line ${f.line}: a car document never does`,
  "not-a-car": () =>
    'this is not a car document: it has no "armwright" field with the version of its form; write "armwright": 1',
  "bad-version": (f) => `${f.found} is not a version of the form: write ${f.expected}`,
  "newer-version": (f) => `version ${f.found} is newer than this program knows (${f.expected}): use a newer program`,
  migrated: (f) => `read as version ${f.found} and brought to version ${f.expected}: ${listedAll(f.options)}`,
  "duplicate-key": () => "given twice in the same place: keep one",
  "unknown-key": (f) =>
    f.suggestion === undefined
      ? `there is no such field here: ${fieldsHere(f.options)}`
      : `there is no such field here: ${meant(f)}`,
  missing: (f) =>
    f.options ? `missing: write one of ${listed(f.options)}` : `missing: expected ${withExample(f.expected)}`,
  "wrong-type": (f) => `found ${f.found}, expected ${withExample(f.expected)}`,
  "unknown-word": (f) => `${f.found} is not known here: ${meant(f)}`,
  "empty-text": () => "is empty: write a few words",
  "bad-quantity": (f) =>
    f.suggestion === undefined
      ? `${f.found} is not ${f.expected}: write ${EXAMPLES[f.expected ?? ""] ?? "a number"}`
      : `${f.found} is not ${f.expected}: write ${f.suggestion}`,
  "too-large": (f) => `${f.found} is beyond ${f.expected}: look for a wrong unit or a lost decimal point`,
  "not-positive": (f) => `${f.found} has to be more than 0`,
  negative: (f) => `${f.found} has to be 0 or more`,
  "bad-thread": (f) => `${f.found} is not a thread: write it as sold, ${EXAMPLES["a thread"]}`,
  "zero-direction": () => "a direction needs a length: at least one of x, y and z must differ from 0",
  coincide: (f) => `is the same point as ${f.other}: the two have to lie apart`,
  "zero-axis": (f) => `is the same point as ${f.other}: a hinge line needs two points that lie apart`,
  "on-axis": (f) => `lies on the line through ${f.other}: an arm needs a length`,
  "shock-lengths": (f) => `the shortest length ${f.found} has to be less than the longest, ${f.expected}`,
  "loaded-over-free": (f) =>
    `a loaded tyre cannot stand higher than a free one: ${f.found} against a free radius of ${f.expected}`,
  "not-below": (f) => `${f.found} has to be less than ${f.expected}`,
  "not-above": (f) => `${f.found} has to be more than ${f.expected}`,
  "both-given": (f) => `${f.other} is given as well: the one follows from the other, keep one`,
  "wrong-side": (f) =>
    f.expected === "left"
      ? `${f.found} is not on the left: y counts from the centreline out to the left wheel, so it has to be more than 0`
      : `${f.found} is not on the right: on the right side y has to be less than 0`,
  "unknown-pivot": (f) => `${f.found} is no pivot of this linkage: ${meant(f)}`,
  "wrong-bolt-body": (f) => `${f.found} does not meet this pivot: its bolt is on ${listed(f.options)}`,
  "wrong-body": (f) => `${f.found} is no part of a ${f.other} linkage: write ${listed(f.options)}`,
  "link-count": (f) => `found ${f.found} links, expected exactly ${f.expected}`,
  "mesh-file": (f) =>
    `${f.found} is not the name of a mesh: write the file's name alone, without a folder, ending in ${listed(f.options)}`,
  "point-count": (f) => `found ${f.found} points, expected ${f.expected} or more: fewer do not place a mesh`,
  "duplicate-name": (f) => `${f.found} is already the name at ${f.other}: give each its own`,
  "stop-absent": (f) => `${f.found} is chosen, but the document has no ${f.other}: add it, or write a travel`,
  "gas-too-small": (f) =>
    `${f.found} leaves the gas no room: the rod alone takes ${f.expected} of it before the shock is closed`,
  "other-kind": (f) => `${f.found} differs from the left side's ${f.expected}: both sides have to be of one kind`,
  "same-body": (f) =>
    `is on ${f.found} like ${f.other}: the two never move against each other, so one of them is wrong`,
  "cannot-assemble": (f) =>
    `the corner does not go together at ride height with a length of ${f.found}: the nearest that does is ${f.expected}, so it misses by ${f.other}`,
  "cannot-move": (f) =>
    `at ride height the linkage is already at full stretch and the wheel cannot go ${f.found}: look for a wrong point`,
  "fitted-length": (f) =>
    `the two points are ${f.expected} apart; the corner is put together with the length given, ${f.found}`,
};

const fieldsHere = (options: readonly string[] = []): string =>
  options.length === 0 ? "none are" : `the fields are ${options.join(", ")}`;

const listedAll = (words: readonly string[] = []): string => words.join("; ");
