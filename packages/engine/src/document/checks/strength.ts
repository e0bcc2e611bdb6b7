import { isSoundSection, type Section } from "../../frames/section.ts";
import { MATERIALS } from "../../strength/material.ts";
import { MOUNT_PLACES } from "../../strength/places.ts";
import { quote } from "../fault.ts";
import { linkageForm } from "../linkages/kinds.ts";
import { nearestWord } from "../nearest-word.ts";
import type { Path } from "../path.ts";
import { FRAME_SHAPES, SHAPE_FIELDS } from "../sections/strength-frames.ts";
import { type PlacedFault, placed } from "../structure.ts";
import { checkApart, checkNames } from "./apart.ts";
import type { Look } from "./look.ts";

const AT: Path = ["strength"];
const MOUNTS: readonly string[] = MOUNT_PLACES;

/** Names that the strength section uses have to be known, walls have to fit their tubes, frames have to hang together. */
export function checkStrength(look: Look): readonly PlacedFault[] {
  if (look.value(AT) === undefined) return [];
  const form = linkageForm(look.value(["linkage", "kind"]));
  const pivots = form ? form.pivots(look.value(["linkage"])).map(({ name }) => name) : [];
  return [
    ...checkNames(look, [...AT, "materials"]),
    ...checkMaterials(look),
    ...(form ? checkTubes(look, pivots) : []),
    ...(form ? checkPlaces(look, pivots) : []),
    ...look
      .fieldNames([...AT, "frames"])
      .flatMap((arm) => [
        ...(form ? oneOf([...AT, "frames", arm], arm, form.arms, "unknown-word") : []),
        ...checkFrame(look, [...AT, "frames", arm], pivots),
      ]),
  ];
}

function oneOf(
  at: Path,
  found: string,
  options: readonly string[],
  code: "unknown-word" | "unknown-pivot",
): readonly PlacedFault[] {
  if (options.includes(found)) return [];
  const suggestion = nearestWord(found, options);
  return [placed(at, code, { found: quote(found), options, ...(suggestion ? { suggestion } : {}) })];
}

function checkMaterials(look: Look): readonly PlacedFault[] {
  const own = look.list([...AT, "materials"]).map((_, index) => look.text([...AT, "materials", index, "name"]) ?? "");
  const names = [...own, ...MATERIALS.map(({ name }) => name)];
  const uses: Path[] = [
    ...["tubes", "tabs"].flatMap((section) =>
      look.fieldNames([...AT, section]).map((name): Path => [...AT, section, name, "material"]),
    ),
    [...AT, "shaft", "material"],
    [...AT, "stub", "material"],
    ...look
      .fieldNames([...AT, "frames"])
      .flatMap((arm) =>
        look
          .list([...AT, "frames", arm, "members"])
          .map((_, index): Path => [...AT, "frames", arm, "members", index, "material"]),
      ),
  ];
  return [
    ...uses.flatMap((at) => {
      const found = look.text(at);
      return found === undefined ? [] : oneOf(at, found, names, "unknown-word");
    }),
    ...own.flatMap((_, index) => {
      const at: Path = [...AT, "materials", index];
      const plain = look.quantity([...at, "yield"], "stress");
      const ultimate = look.quantity([...at, "ultimate"], "stress");
      if (plain === undefined || ultimate === undefined || plain <= ultimate) return [];
      return [
        placed([...at, "yield"], "not-below", {
          found: quote(look.value([...at, "yield"])),
          expected: `the breaking strength ${quote(look.value([...at, "ultimate"]))}`,
        }),
      ];
    }),
  ];
}

/** `lowerArm`, `upperLink`, `links.front lower`: pivots without their last part. */
function checkTubes(look: Look, pivots: readonly string[]): readonly PlacedFault[] {
  const names = [...new Set(pivots.map((pivot) => pivot.slice(0, pivot.lastIndexOf("."))))];
  return look.fieldNames([...AT, "tubes"]).flatMap((name) => {
    const at: Path = [...AT, "tubes", name];
    const unknown = oneOf(at, name, names, "unknown-word");
    if (unknown.length > 0) return unknown;
    const outside = look.quantity(diameterPlace(look, name));
    const gusset = look.text([...at, "gusset", "at"]);
    return [
      ...(gusset === undefined ? [] : oneOf([...at, "gusset", "at"], gusset, MOUNTS, "unknown-word")),
      ...checkWall(look, [...at, "wall"], outside),
      ...checkWall(look, [...at, "under", "wall"], look.quantity([...at, "under", "diameter"])),
      ...checkDrop(look, [...at, "under"], outside),
      ...checkWall(look, [...at, "crossWall"], look.quantity([...at, "crossDiameter"]) ?? outside),
    ];
  });
}

function diameterPlace(look: Look, name: string): Path {
  const link = name.startsWith("links.") ? name.slice("links.".length) : undefined;
  if (link === undefined) return ["linkage", name, "diameter"];
  const index = look
    .list(["linkage", "links"])
    .findIndex((_, i) => look.text(["linkage", "links", i, "name"]) === link);
  return ["linkage", "links", index, "diameter"];
}

function checkWall(look: Look, at: Path, outside: number | undefined): readonly PlacedFault[] {
  const wall = look.quantity(at);
  if (wall === undefined || outside === undefined || 2 * wall <= outside) return [];
  return [placed(at, "not-below", { found: quote(look.value(at)), expected: "half of the tube's diameter" })];
}

/** A second tube has to lie clear below the first: they are joined by posts. */
function checkDrop(look: Look, at: Path, outside: number | undefined): readonly PlacedFault[] {
  const [drop, diameter] = [look.quantity([...at, "drop"]), look.quantity([...at, "diameter"])];
  if (drop === undefined || diameter === undefined || outside === undefined) return [];
  if (drop > (outside + diameter) / 2) return [];
  return [
    placed([...at, "drop"], "not-above", {
      found: quote(look.value([...at, "drop"])),
      expected: "half of both tubes' diameters together",
    }),
  ];
}

function checkPlaces(look: Look, pivots: readonly string[]): readonly PlacedFault[] {
  return ["rodEnds", "bolts", "tabs", "welds"].flatMap((section) => {
    const options = ["all", ...pivots, ...(section === "rodEnds" ? [] : MOUNTS)];
    return look
      .fieldNames([...AT, section])
      .flatMap((name) => oneOf([...AT, section, name], name, options, "unknown-word"));
  });
}

function checkFrame(look: Look, at: Path, pivots: readonly string[]): readonly PlacedFault[] {
  const nodes = look.list([...at, "nodes"]).map((_, index): Path => [...at, "nodes", index]);
  const names = nodes.map((node) => look.text([...node, "name"]) ?? "");
  const faults: PlacedFault[] = [...checkNames(look, [...at, "nodes"]), ...checkNames(look, [...at, "members"])];
  for (const node of nodes) {
    const place = look.text([...node, "at"]);
    const hasPoint = look.value([...node, "point"]) !== undefined;
    if (place === undefined && !hasPoint) faults.push(placed([...node, "point"], "missing", { expected: "a point" }));
    if (place !== undefined) faults.push(...oneOf([...node, "at"], place, [...pivots, ...MOUNTS], "unknown-word"));
    if (
      place !== undefined &&
      MOUNTS.includes(place) &&
      look.value([place.slice(0, place.indexOf("."))]) === undefined
    ) {
      faults.push(
        placed([...node, "at"], "stop-absent", { found: quote(place), other: place.slice(0, place.indexOf(".")) }),
      );
    }
  }
  look.list([...at, "members"]).forEach((_, index) => {
    faults.push(...checkMember(look, [...at, "members", index], at, names));
  });
  return faults;
}

function checkMember(look: Look, at: Path, frame: Path, names: readonly string[]): readonly PlacedFault[] {
  const faults: PlacedFault[] = [];
  const ends = ["from", "to"].map((end) => look.text([...at, end]));
  ends.forEach((name, index) => {
    if (name !== undefined) faults.push(...oneOf([...at, index === 0 ? "from" : "to"], name, names, "unknown-word"));
  });
  const [from, to] = ends.map((name) => names.indexOf(name ?? ""));
  if (from !== undefined && to !== undefined && from >= 0 && to >= 0) {
    if (from === to) faults.push(placed([...at, "to"], "coincide", { other: "from" }));
    else {
      const point = (node: number): Path => [...frame, "nodes", node, "point"];
      faults.push(...checkApart(look, point(from), point(to)));
    }
  }
  const shape = FRAME_SHAPES.find((each) => each === look.value([...at, "shape"]));
  if (!shape) return faults;
  const sizes = Object.fromEntries(
    SHAPE_FIELDS[shape].map((field) => {
      if (look.value([...at, field]) === undefined) {
        faults.push(placed([...at, field], "missing", { expected: "a length" }));
      }
      return [field, look.quantity([...at, field])];
    }),
  );
  const { diameter, width, depth, wall, coverWall } = sizes;
  if (Object.values(sizes).includes(undefined)) return faults;
  const section: Section =
    shape === "round-tube"
      ? { shape, diameter: diameter!, wall: wall! }
      : shape === "rectangular-tube"
        ? { shape, width: width!, depth: depth!, wall: wall! }
        : shape === "flat-bar"
          ? { shape, width: width!, depth: depth! }
          : { shape, width: width!, depth: depth!, sideThickness: wall!, coverThickness: coverWall! };
  if (!isSoundSection(section) && wall !== undefined && wall > 0) {
    faults.push(
      placed([...at, "wall"], "not-below", {
        found: quote(look.value([...at, "wall"])),
        expected: "half of its outside size",
      }),
    );
  }
  return faults;
}
