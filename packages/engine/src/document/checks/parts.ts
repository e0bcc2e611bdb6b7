import { formatValue } from "../../units/format.ts";
import { quote } from "../fault.ts";
import { BODIES } from "../fields.ts";
import { linkageForm } from "../linkages/kinds.ts";
import { formatPath, type Path } from "../path.ts";
import { BUMP_STOP_ASSUMED } from "../sections/shock.ts";
import { GAS_ASSUMED } from "../sections/springs.ts";
import { STOP_FORCE_ASSUMED } from "../sections/stop-force.ts";
import { type PlacedFault, placed } from "../structure.ts";
import { checkApart, checkNames } from "./apart.ts";
import type { Look, Side } from "./look.ts";

/** Where a mount may say which part it is on. */
const MOUNTS: readonly Path[] = [
  ["shock", "upper"],
  ["shock", "lower"],
  ["strap", "upper"],
  ["strap", "lower"],
  ["bumpStop", "base"],
  ["bumpStop", "strikes"],
];

/** Points that make no sense in one place. */
const APART: readonly (readonly [Path, Path])[] = [
  [
    ["shock", "upper"],
    ["shock", "lower"],
  ],
  [
    ["strap", "upper"],
    ["strap", "lower"],
  ],
  [
    ["driveshaft", "output", "point"],
    ["driveshaft", "outer", "centre"],
  ],
];

/** Mounts of one part, which have to be on two bodies that move against each other. */
const JOINS: readonly (readonly [Path, Path])[] = [
  [
    ["shock", "upper"],
    ["shock", "lower"],
  ],
  [
    ["strap", "upper"],
    ["strap", "lower"],
  ],
  [
    ["bumpStop", "base"],
    ["bumpStop", "strikes"],
  ],
];

/** The body a mount is on; the chassis where nothing is said; undefined where there is no such mount. */
const mountedOn = (look: Look, mount: Path): string | undefined =>
  look.value(mount) === undefined ? undefined : (look.text([...mount, "on"]) ?? "chassis");

export function checkParts({ look, base, linkageAt }: Side): readonly PlacedFault[] {
  const faults: PlacedFault[] = [];
  const kind = look.text([...linkageAt, "kind"]);
  const form = linkageForm(kind);
  for (const mount of form ? MOUNTS : []) {
    const at: Path = [...base, ...mount, "on"];
    const body = BODIES.find((each) => each === look.value(at));
    const bodies = BODIES.filter((each) => each === "chassis" || each === "spindle" || form?.arms.includes(each));
    if (body && !bodies.includes(body)) {
      faults.push(placed(at, "wrong-body", { found: quote(body), other: kind ?? "", options: bodies }));
    }
  }
  for (const [a, b] of JOINS) {
    const one = mountedOn(look, [...base, ...a]);
    if (one === undefined || one !== mountedOn(look, [...base, ...b])) continue;
    faults.push(placed([...base, ...b, "on"], "same-body", { found: quote(one), other: formatPath([...base, ...a]) }));
  }
  for (const [a, b] of APART) faults.push(...checkApart(look, [...base, ...a], [...base, ...b]));
  faults.push(...checkLess(look, [...base, "shock", "shortest"], [...base, "shock", "longest"], "shock-lengths"));
  faults.push(...checkLess(look, [...base, "bumpStop", "solid"], [...base, "bumpStop", "reach"], "not-below"));
  const springs: Path = [...base, "shock", "springs"];
  for (const spring of ["main", "tender"]) {
    faults.push(
      ...checkLess(look, [...springs, spring, "solidLength"], [...springs, spring, "freeLength"], "not-below"),
    );
  }
  faults.push(...checkLess(look, [...springs, "crossoverAt"], [...base, "shock", "longest"], "not-below"));
  if (look.value([...springs, "crossoverAt"]) !== undefined && look.value([...springs, "crossoverGap"]) !== undefined) {
    faults.push(placed([...springs, "crossoverGap"], "both-given", { other: formatPath([...springs, "crossoverAt"]) }));
  }
  faults.push(...checkGas(look, [...base, "shock"]), ...checkStopGas(look, [...base, "bumpStop"]));
  for (const [one, other] of [
    ["measured", "gas"],
    ["measured", "rubber"],
    ["gas", "rubber"],
  ] as const) {
    if (look.value([...base, "bumpStop", one]) === undefined) continue;
    if (look.value([...base, "bumpStop", other]) === undefined) continue;
    const place = formatPath([...base, "bumpStop", one]);
    faults.push(placed([...base, "bumpStop", other], "both-given", { other: place }));
  }
  return faults;
}

/** The rod going in must leave room to the gas. */
function checkGas(look: Look, shock: Path): readonly PlacedFault[] {
  const volume = look.quantity([...shock, "gas", "volume"], "volume");
  const rod = look.quantity([...shock, "gas", "rodDiameter"]) ?? GAS_ASSUMED.rodDiameter.from();
  const longest = look.quantity([...shock, "longest"]);
  const shortest = look.quantity([...shock, "shortest"]);
  if (volume === undefined || longest === undefined || shortest === undefined) return [];
  const displaced = (Math.PI / 4) * rod ** 2 * (longest - shortest);
  if (displaced < volume) return [];
  const at = [...shock, "gas", "volume"];
  return [
    placed(at, "gas-too-small", {
      found: quote(look.value(at)),
      expected: formatValue(displaced, "volume", look.system),
    }),
  ];
}

/** The same for a gas stop. */
function checkStopGas(look: Look, stop: Path): readonly PlacedFault[] {
  const at = [...stop, "gas", "volume"];
  const volume = look.quantity(at, "volume");
  const rod = look.quantity([...stop, "gas", "rodDiameter"]) ?? STOP_FORCE_ASSUMED.rodDiameter.from();
  const reach = look.quantity([...stop, "reach"]);
  if (volume === undefined || reach === undefined) return [];
  const solid = look.quantity([...stop, "solid"]) ?? BUMP_STOP_ASSUMED.solid.from(reach);
  const displaced = (Math.PI / 4) * rod ** 2 * (reach - solid);
  if (displaced < volume) return [];
  const expected = formatValue(displaced, "volume", look.system);
  return [placed(at, "gas-too-small", { found: quote(look.value(at)), expected })];
}

function checkLess(look: Look, less: Path, more: Path, code: "shock-lengths" | "not-below"): readonly PlacedFault[] {
  const small = look.quantity(less);
  const large = look.quantity(more);
  if (small === undefined || large === undefined || small < large) return [];
  const found = quote(look.value(less));
  const limit = quote(look.value(more));
  const expected = code === "not-below" ? `the ${limit} of ${formatPath(more)}` : limit;
  return [placed(less, code, { found, expected, other: formatPath(more) })];
}

/** Checks of what is given once for the whole car. */
export function checkWholeCar(look: Look): readonly PlacedFault[] {
  const faults: PlacedFault[] = [...checkNames(look, ["underbody"]), ...checkNames(look, ["keepOuts"])];
  look.list(["keepOuts"]).forEach((_, index) => {
    faults.push(...checkApart(look, ["keepOuts", index, "from"], ["keepOuts", index, "to"]));
  });
  const stops: readonly (readonly [string, string, string])[] = [
    ["bump", "bump-stop", "bumpStop"],
    ["bump", "shock", "shock"],
    ["droop", "strap", "strap"],
    ["droop", "shock", "shock"],
  ];
  for (const [end, word, section] of stops) {
    if (look.value(["stops", end]) === word && look.value([section]) === undefined) {
      faults.push(placed(["stops", end], "stop-absent", { found: quote(word), other: section }));
    }
  }
  return faults;
}
