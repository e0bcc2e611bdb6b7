import { describe, expect, test } from "vitest";
import type { LinkageKindName } from "../../src/car/car.ts";
import {
  type CarDocument,
  type FaultCode,
  type FieldValue,
  readCarValue,
  sayFault,
  setField,
  startingDocument,
} from "../../src/document/index.ts";

interface Case {
  readonly what: string;
  readonly kind?: LinkageKindName;
  /** What is done to the starting car: path and new value; undefined takes the field out. */
  readonly changes: readonly (readonly [string, FieldValue])[];
  readonly code: FaultCode;
  readonly says: string;
}

const length = 'a length: a number, or text such as "12 3/16", "1\' 4-1/2", "14.375 in" or "310 mm"';
const point = (x: FieldValue, y: FieldValue, z: FieldValue) => ({ x, y, z });

const SPOT = { mesh: point(0, 0, 0), car: point(0, 0, 0) };

const CASES: readonly Case[] = [
  {
    what: "text that is no length",
    changes: [["shock.upper.y", "12 3/17"]],
    code: "bad-quantity",
    says: 'shock.upper.y: "12 3/17" is not a length: write 12 3/16 or 12.19',
  },
  {
    what: "text that is nothing like a length",
    changes: [["shock.upper.y", "about a foot"]],
    code: "bad-quantity",
    says: 'shock.upper.y: "about a foot" is not a length: write a number, or text such as "12 3/16", "1\' 4-1/2", "14.375 in" or "310 mm"',
  },
  {
    what: "an unknown field with a near one",
    changes: [["shock.diametre", 3]],
    code: "unknown-key",
    says: "shock.diametre: there is no such field here: did you mean diameter?",
  },
  {
    what: "an unknown field with no near one",
    changes: [["targets.colour", "red"]],
    code: "unknown-key",
    says: "targets.colour: there is no such field here: the fields are bump, droop, clearanceAtFullBump, trackWidth, wheelbase, use",
  },
  {
    what: "an unknown field of the document",
    changes: [["bump_stop", 1]],
    code: "unknown-key",
    says: "bump_stop: there is no such field here: did you mean bumpStop?",
  },
  {
    what: "a missing length",
    changes: [["shock.longest", undefined]],
    code: "missing",
    says: `shock.longest: missing: expected ${length}`,
  },
  {
    what: "a missing section",
    changes: [["wheel", undefined]],
    code: "missing",
    says: "wheel: missing: expected an object in braces",
  },
  {
    what: "a missing kind of linkage",
    changes: [["linkage.kind", undefined]],
    code: "missing",
    says: "linkage.kind: missing: write one of h-arm, double-a-arm, trailing-arm or five-link",
  },
  {
    what: "a missing body",
    changes: [["shock.lower.on", undefined]],
    code: "missing",
    says: "shock.lower.on: missing: write one of chassis, spindle, lower-arm, upper-arm or trailing-arm",
  },
  {
    what: "a list where a length belongs",
    changes: [["wheel.rimWidth", [8]]],
    code: "wrong-type",
    says: `wheel.rimWidth: found a list, expected ${length}`,
  },
  {
    what: "null where an angle belongs",
    changes: [["wheel.camber", null]],
    code: "wrong-type",
    says: "wheel.camber: found null, expected an angle: a number of degrees such as 1.5",
  },
  {
    what: "a number where a section belongs",
    changes: [["linkage", 5]],
    code: "wrong-type",
    says: "linkage: found 5, expected an object in braces",
  },
  {
    what: "a section where a list belongs",
    changes: [["keepOuts", {}]],
    code: "wrong-type",
    says: "keepOuts: found an object in braces, expected a list in square brackets",
  },
  {
    what: "a number where a name belongs",
    changes: [["name", 5]],
    code: "wrong-type",
    says: "name: found 5, expected text",
  },
  {
    what: "an infinite number",
    changes: [["shock.upper.y", Number.POSITIVE_INFINITY]],
    code: "wrong-type",
    says: `shock.upper.y: found a number without end, expected ${length}`,
  },
  {
    what: "an absurd length",
    changes: [["shock.upper.y", 4000]],
    code: "too-large",
    says: "shock.upper.y: 4000 is beyond 10 m (394 in): look for a wrong unit or a lost decimal point",
  },
  {
    what: "an absurd angle",
    changes: [["wheel.camber", 50]],
    code: "too-large",
    says: "wheel.camber: 50 is beyond 45 deg: look for a wrong unit or a lost decimal point",
  },
  {
    what: "an absurd stop",
    changes: [["stops.bump", 700]],
    code: "too-large",
    says: "stops.bump: 700 is beyond 10 m (394 in): look for a wrong unit or a lost decimal point",
  },
  {
    what: "a diameter of nothing",
    changes: [["shock.diameter", 0]],
    code: "not-positive",
    says: "shock.diameter: 0 has to be more than 0",
  },
  {
    what: "a negative clearance",
    changes: [["keepOuts[0].clearance", "-1/4"]],
    code: "negative",
    says: 'keepOuts[0].clearance: "-1/4" has to be 0 or more',
  },
  { what: "an empty name", changes: [["name", "  "]], code: "empty-text", says: "name: is empty: write a few words" },
  {
    what: "a mistyped word",
    changes: [["driveshaft.inner.kind", "u joints"]],
    code: "unknown-word",
    says: 'driveshaft.inner.kind: "u joints" is not known here: did you mean u-joint?',
  },
  {
    what: "an unknown kind of linkage",
    changes: [["linkage.kind", "swing axle"]],
    code: "unknown-word",
    says: 'linkage.kind: "swing axle" is not known here: write one of h-arm, double-a-arm, trailing-arm or five-link',
  },
  {
    what: "an unknown unit system",
    changes: [["units", "cubits"]],
    code: "unknown-word",
    says: 'units: "cubits" is not known here: write one of inch-pound or metric',
  },
  {
    what: "an unknown stop",
    changes: [["stops.droop", "chain"]],
    code: "unknown-word",
    says: 'stops.droop: "chain" is not known here: write one of strap, shock or a travel',
  },
  {
    what: "a thread that is none",
    changes: [['rodEnds["lowerArm.innerFront"].thread', "3/4"]],
    code: "bad-thread",
    says: 'rodEnds["lowerArm.innerFront"].thread: "3/4" is not a thread: write it as sold, "3/4-16" or "M16x1.5"',
  },
  {
    what: "a direction that is none",
    changes: [["driveshaft.output.axis", "sideways"]],
    code: "wrong-type",
    says: 'driveshaft.output.axis: found "sideways", expected a direction: "forward", "rearward", "left", "right", "up", "down", or { "x": 1, "y": 0, "z": 0.2 }',
  },
  {
    what: "a direction of no length",
    changes: [["driveshaft.output.axis", point(0, 0, 0)]],
    code: "zero-direction",
    says: "driveshaft.output.axis: a direction needs a length: at least one of x, y and z must differ from 0",
  },
  {
    what: "two ends of a link in one place, within half a millimetre",
    changes: [["linkage.upperLink.outer", point("0.01", "12 1/2", "21 1/4")]],
    code: "coincide",
    says: "linkage.upperLink.outer: is the same point as linkage.upperLink.inner: the two have to lie apart",
  },
  {
    what: "both eyes of a shock in one place",
    changes: [["shock.lower", { x: "-4 1/2", y: 17, z: 32, on: "lower-arm" }]],
    code: "coincide",
    says: "shock.lower: is the same point as shock.upper: the two have to lie apart",
  },
  {
    what: "a keep-out tube of no length",
    changes: [["keepOuts[0].to", point(-12, 12, "10 1/2")]],
    code: "coincide",
    says: "keepOuts[0].to: is the same point as keepOuts[0].from: the two have to lie apart",
  },
  {
    what: "a hinge line of no length",
    changes: [["linkage.lowerArm.innerRear", point(8, 12, "12 1/2")]],
    code: "zero-axis",
    says: "linkage.lowerArm.innerRear: is the same point as linkage.lowerArm.innerFront: a hinge line needs two points that lie apart",
  },
  {
    what: "a trailing arm's axis of no length",
    kind: "trailing-arm",
    changes: [["linkage.trailingArm.outboardPivot", point(20, 13, 15)]],
    code: "zero-axis",
    says: "linkage.trailingArm.outboardPivot: is the same point as linkage.trailingArm.inboardPivot: a hinge line needs two points that lie apart",
  },
  {
    what: "an arm of no length",
    kind: "double-a-arm",
    changes: [["linkage.lowerArm.outer", point(2, 12, "12 1/2")]],
    code: "on-axis",
    says: "linkage.lowerArm.outer: lies on the line through linkage.lowerArm.innerFront and linkage.lowerArm.innerRear: an arm needs a length",
  },
  {
    what: "a shock shorter open than closed",
    changes: [["shock.shortest", 26]],
    code: "shock-lengths",
    says: "shock.shortest: the shortest length 26 has to be less than the longest, 25",
  },
  {
    what: "a loaded tyre taller than a free one",
    changes: [["wheel.loadedRadius", 17]],
    code: "loaded-over-free",
    says: 'wheel.loadedRadius: a loaded tyre cannot stand higher than a free one: 17 against a free radius of "16 1/2"',
  },
  {
    what: "a second tube inside the one above it",
    changes: [
      ["linkage.lowerArm.diameter", "1 1/2"],
      ["strength.tubes.lowerArm.under", { diameter: 1, wall: 0.12, drop: 1 }],
    ],
    code: "not-above",
    says: "strength.tubes.lowerArm.under.drop: 1 has to be more than half of both tubes' diameters together",
  },
  {
    what: "a rim larger than the tyre",
    changes: [["wheel.rimDiameter", 34]],
    code: "not-below",
    says: 'wheel.rimDiameter: 34 has to be less than the tyre\'s diameter, twice the "16 1/2" of wheel.freeRadius',
  },
  {
    what: "a bump stop solid before it is touched",
    changes: [["bumpStop.solid", 3]],
    code: "not-below",
    says: 'bumpStop.solid: 3 has to be less than the "2 1/2" of bumpStop.reach',
  },
  {
    what: "offset and backspacing together",
    changes: [["wheel.offset", 1]],
    code: "both-given",
    says: "wheel.backspacing: wheel.offset is given as well: the one follows from the other, keep one",
  },
  {
    what: "the left wheel on the right",
    changes: [["wheel.hubFace.y", "-35 1/2"]],
    code: "wrong-side",
    says: 'wheel.hubFace.y: "-35 1/2" is not on the left: y counts from the centreline out to the left wheel, so it has to be more than 0',
  },
  {
    what: "a rod end at a pivot that is not there",
    changes: [['rodEnds["lowerArm.innerfront"]', { hand: "left" }]],
    code: "unknown-pivot",
    says: 'rodEnds["lowerArm.innerfront"]: "lowerArm.innerfront" is no pivot of this linkage: did you mean lowerArm.innerFront?',
  },
  {
    what: "a rod end at a link that is not there",
    kind: "five-link",
    changes: [['rodEnds["links.middle.inner"]', {}]],
    code: "unknown-pivot",
    says: 'rodEnds["links.middle.inner"]: "links.middle.inner" is no pivot of this linkage: write one of links.front lower.inner, links.front lower.outer, links.rear lower.inner, links.rear lower.outer, links.front upper.inner, links.front upper.outer, links.rear upper.inner, links.rear upper.outer, links.toe.inner or links.toe.outer',
  },
  {
    what: "a bolt on a part that does not meet the pivot",
    changes: [['rodEnds["lowerArm.innerFront"].boltOn', "spindle"]],
    code: "wrong-bolt-body",
    says: 'rodEnds["lowerArm.innerFront"].boltOn: "spindle" does not meet this pivot: its bolt is on chassis or lower-arm',
  },
  {
    what: "a mount on an arm that this kind does not have",
    changes: [["shock.lower.on", "trailing-arm"]],
    code: "wrong-body",
    says: 'shock.lower.on: "trailing-arm" is no part of a h-arm linkage: write chassis, spindle or lower-arm',
  },
  {
    what: "four links",
    kind: "five-link",
    changes: [
      ["rodEnds", undefined],
      ["linkage.links[4]", undefined],
    ],
    code: "link-count",
    says: "linkage.links: found 4 links, expected exactly 5",
  },
  {
    what: "two links of one name",
    kind: "five-link",
    changes: [
      ["rodEnds", undefined],
      ["linkage.links[3].name", "toe"],
    ],
    code: "duplicate-name",
    says: 'linkage.links[4].name: "toe" is already the name at linkage.links[3].name: give each its own',
  },
  {
    what: "a stop that is not there",
    changes: [
      ["stops.bump", "bump-stop"],
      ["bumpStop", undefined],
    ],
    code: "stop-absent",
    says: 'stops.bump: "bump-stop" is chosen, but the document has no bumpStop: add it, or write a travel',
  },
  {
    what: "gas that the rod fills",
    changes: [["shock.gas", { kind: "emulsion", rodDiameter: 1, volume: "7 in3" }]],
    code: "gas-too-small",
    says: 'shock.gas.volume: "7 in3" leaves the gas no room: the rod alone takes 7.7 in3 of it before the shock is closed',
  },
  {
    what: "a right wheel on the left",
    changes: [
      ["right.wheel", { hubFace: point(0, 35, 15), freeRadius: 16, sectionWidth: 12, rimDiameter: 15, rimWidth: 8 }],
    ],
    code: "wrong-side",
    says: "right.wheel.hubFace.y: 35 is not on the right: on the right side y has to be less than 0",
  },
  {
    what: "another kind of linkage on the right",
    changes: [
      [
        "right.linkage",
        { kind: "trailing-arm", trailingArm: { inboardPivot: point(20, -13, 15), outboardPivot: point(22, -28, 15) } },
      ],
      ["shock.lower.on", "spindle"],
      ["strap.lower.on", "spindle"],
      ["bumpStop.strikes.on", "spindle"],
    ],
    code: "other-kind",
    says: 'right.linkage.kind: "trailing-arm" differs from the left side\'s "h-arm": both sides have to be of one kind',
  },
  {
    what: "a shock with both ends on one body",
    changes: [["shock.lower.on", "chassis"]],
    code: "same-body",
    says: 'shock.lower.on: is on "chassis" like shock.upper: the two never move against each other, so one of them is wrong',
  },
  {
    what: "a link too short to reach at ride height",
    changes: [["linkage.upperLink.length", 4]],
    code: "cannot-assemble",
    says: "linkage.upperLink.length: the corner does not go together at ride height with a length of 4: the nearest that does is 12 7/16 in, so it misses by 8 7/16 in",
  },
  {
    what: "a trailing arm that hangs straight down at ride height",
    kind: "trailing-arm",
    changes: [
      ["linkage.trailingArm.inboardPivot", point(0, 13, 40)],
      ["linkage.trailingArm.outboardPivot", point(0, 28, 40)],
    ],
    code: "cannot-move",
    says: "linkage: at ride height the linkage is already at full stretch and the wheel cannot go down: look for a wrong point",
  },
  {
    what: "a version that is none",
    changes: [["armwright", "one"]],
    code: "bad-version",
    says: 'armwright: "one" is not a version of the form: write 1',
  },
  {
    what: "a newer version",
    changes: [["armwright", 7]],
    code: "newer-version",
    says: "armwright: version 7 is newer than this program knows (1): use a newer program",
  },
  {
    what: "something else than a car",
    changes: [["armwright", undefined]],
    code: "not-a-car",
    says: 'this is not a car document: it has no "armwright" field with the version of its form; write "armwright": 1',
  },
  {
    what: "a mesh in a folder",
    changes: [["chassisMesh", { file: "scans/frame.stl", points: [SPOT, SPOT, SPOT] }]],
    code: "mesh-file",
    says: 'chassisMesh.file: "scans/frame.stl" is not the name of a mesh: write the file\'s name alone, without a folder, ending in .stl, .obj or .glb',
  },
  {
    what: "a mesh with two points",
    changes: [["chassisMesh", { file: "frame.stl", points: [SPOT, SPOT] }]],
    code: "point-count",
    says: "chassisMesh.points: found 2 points, expected 3 or more: fewer do not place a mesh",
  },
];

describe("each fault has its own message", () => {
  test.each(CASES)("$what", ({ kind, changes, code, says }) => {
    let document: CarDocument = startingDocument(kind ?? "h-arm", "inch-pound");
    for (const [path, value] of changes) document = setField(document, path, value);
    const reading = readCarValue(document);
    expect(reading.ok ? [] : reading.faults.map((fault) => [fault.code, sayFault(fault)])).toEqual([[code, says]]);
  });
});

test("every code has its case here or in the tests of the text and of migration", () => {
  const here = new Set<string>(CASES.map((each) => each.code));
  const elsewhere: readonly FaultCode[] = ["bad-json", "nested-too-deep", "duplicate-key", "migrated", "fitted-length"];
  const all: Record<FaultCode, true> = {
    "bad-json": true,
    "nested-too-deep": true,
    "not-a-car": true,
    "bad-version": true,
    "newer-version": true,
    migrated: true,
    "duplicate-key": true,
    "unknown-key": true,
    missing: true,
    "wrong-type": true,
    "unknown-word": true,
    "empty-text": true,
    "bad-quantity": true,
    "too-large": true,
    "not-positive": true,
    negative: true,
    "bad-thread": true,
    "zero-direction": true,
    coincide: true,
    "zero-axis": true,
    "on-axis": true,
    "shock-lengths": true,
    "loaded-over-free": true,
    "not-below": true,
    "not-above": true,
    "both-given": true,
    "wrong-side": true,
    "unknown-pivot": true,
    "wrong-bolt-body": true,
    "wrong-body": true,
    "link-count": true,
    "mesh-file": true,
    "point-count": true,
    "duplicate-name": true,
    "stop-absent": true,
    "gas-too-small": true,
    "other-kind": true,
    "same-body": true,
    "cannot-assemble": true,
    "cannot-move": true,
    "fitted-length": true,
  };
  expect(Object.keys(all).filter((code) => !here.has(code) && !elsewhere.some((each) => each === code))).toEqual([]);
});

test("a link made longer than its points lie apart is put together at its own length, with a word about it", () => {
  const plain = readCarValue(startingDocument("h-arm", "inch-pound"));
  const longer = readCarValue(setField(startingDocument("h-arm", "inch-pound"), "linkage.upperLink.length", "17 1/2"));
  if (!plain.ok || !longer.ok) throw new Error("does not read");
  expect(longer.warnings.map(sayFault)).toEqual([
    'linkage.upperLink.length: the two points are 17 1/4 in apart; the corner is put together with the length given, "17 1/2"',
  ]);
  const { linkage, wheel } = longer.car;
  if (linkage.kind !== "h-arm") throw new Error("another kind");
  const { inner, outer } = linkage.upperLink;
  expect(Math.hypot(outer.x - inner.x, outer.y - inner.y, outer.z - inner.z)).toBeCloseTo(17.5 * 0.0254, 9);
  // The longer upper link pushes the top of the wheel out.
  expect(wheel.camber).toBeGreaterThan(plain.car.wheel.camber);
});
