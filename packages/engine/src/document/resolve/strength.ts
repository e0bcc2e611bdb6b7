import type { ArmId, Car, Linkage, RodEnd } from "../../car/car.ts";
import type { Section } from "../../frames/section.ts";
import { UP, type Vec3 } from "../../geometry/vec3.ts";
import type { Member } from "../../linkage/kind.ts";
import { kindOf } from "../../linkage/kinds.ts";
import type { BoltGrade } from "../../strength/bolt.ts";
import type {
  ArmFrameEntry,
  ArmMemberEntry,
  BoltEntry,
  RodEndStrength,
  ShaftEntry,
  StrengthEntry,
  StubEntry,
  TabEntry,
  TubeEntry,
  WeldEntry,
} from "../../strength/entry.ts";
import { MATERIALS, type Material } from "../../strength/material.ts";
import { placesOf } from "../../strength/places.ts";
import { parseThread } from "../../units/thread.ts";
import type { Path } from "../path.ts";
import type { CarDocument, StrengthDocument } from "../schema.ts";
import { STRENGTH_ASSUMED } from "../sections/strength.ts";
import { makeResolver, type Resolver } from "./resolver.ts";

/** What the rest of the car gives: its parts and where the places are. */
interface StrengthGround {
  readonly linkage: Linkage;
  readonly rodEnds: readonly RodEnd[];
  readonly places: ReadonlyMap<string, Vec3>;
}

const AT = ["strength"] as const;

/** The left corner with what the document says of strength, where it says something. */
export function withStrength(left: Car, document: CarDocument): Car {
  const r = makeResolver(document.units, "left");
  const ground = { linkage: left.linkage, rodEnds: left.rodEnds, places: placesOf(left) };
  const strength = resolveStrength(document, ground, r);
  return strength ? { ...left, strength, assumed: [...left.assumed, ...r.assumed] } : left;
}

/** The strength section in SI; materials and names were checked before. */
function resolveStrength(document: CarDocument, ground: StrengthGround, r: Resolver): StrengthEntry | undefined {
  const { strength } = document;
  if (!strength) return undefined;
  const materials = [...(strength.materials ?? []).map((own) => ownMaterial(own, r)), ...MATERIALS];
  const find = (name: string): Material => materials.find((each) => each.name === name) ?? materials.at(-1)!;
  const tubes = Object.fromEntries(
    tubeNames(kindOf<Linkage>(ground.linkage).members(ground.linkage)).map(({ name, diameter, isArm }) => [
      name,
      resolveTube(strength.tubes?.[name] ?? {}, name, diameter, isArm, find, r),
    ]),
  );
  const each = <In, Out>(
    given: Readonly<Record<string, In>> | undefined,
    name: string,
    make: (one: In, at: Path) => Out,
  ) => Object.fromEntries(Object.entries(given ?? {}).map(([place, one]) => [place, make(one, [...AT, name, place])]));
  return {
    materials,
    tubes,
    frames: Object.fromEntries(
      Object.entries(strength.frames ?? {}).map(([arm, frame]) => [
        arm,
        resolveFrame(frame, tubes[armTubeName(arm as ArmId)]?.material ?? materials.at(-1)!, ground, find, r),
      ]),
    ),
    rodEnds: resolveRodEndStrengths(document, ground.rodEnds, r),
    bolts: each(strength.bolts, "bolts", resolveBolt),
    tabs: each(strength.tabs, "tabs", (one, at) => resolveTab(one, at, find, r)),
    welds: each(
      strength.welds,
      "welds",
      (one, at): WeldEntry => ({
        leg: r.length(one.leg),
        length: r.length(one.length),
        filler: r.either(one.filler, [...at, "filler"], STRENGTH_ASSUMED.filler, 0),
      }),
    ),
    ...(strength.shaft ? { shaft: resolveShaft(strength.shaft, find, r) } : {}),
    ...(strength.stub ? { stub: resolveStub(strength.stub, find, r) } : {}),
  };
}

/** Name in the document of an arm's tubes. */
export const armTubeName = (arm: ArmId): string =>
  ({ "lower-arm": "lowerArm", "upper-arm": "upperArm", "trailing-arm": "trailingArm" })[arm];

/** Arms once, and links each: what `strength.tubes` speaks of. */
export function tubeNames(
  members: readonly Member[],
): readonly { readonly name: string; readonly diameter: number; readonly isArm: boolean }[] {
  const named = new Map<string, { readonly name: string; readonly diameter: number; readonly isArm: boolean }>();
  for (const { id, body, diameter } of members) {
    const name = body === "link" ? id : armTubeName(body);
    if (!named.has(name)) named.set(name, { name, diameter, isArm: body !== "link" });
  }
  return [...named.values()];
}

type Of<Key extends keyof StrengthDocument> = NonNullable<StrengthDocument[Key]>;
type Item<Key extends "tubes" | "rodEnds" | "bolts" | "tabs" | "welds" | "frames"> = Of<Key>[string];
type Find = (name: string) => Material;

function ownMaterial(own: Of<"materials">[number], r: Resolver): Material {
  const stress = (typed: number | string): number => r.value(typed, "stress");
  const steel = MATERIALS[0]!;
  return {
    name: own.name,
    young: steel.young,
    shear: steel.shear,
    density: steel.density,
    yield: stress(own.yield),
    ultimate: stress(own.ultimate),
    ...(own.weldedYield === undefined ? {} : { weldedYield: stress(own.weldedYield) }),
    ...(own.weldedUltimate === undefined ? {} : { weldedUltimate: stress(own.weldedUltimate) }),
    source: own.source ?? "your document",
  };
}

function resolveTube(
  given: Item<"tubes">,
  name: string,
  diameter: number,
  isArm: boolean,
  find: Find,
  r: Resolver,
): TubeEntry {
  const at: Path = [...AT, "tubes", name];
  const { armWall, linkWall, crossDiameter, crossWall, eccentricity } = STRENGTH_ASSUMED;
  const wall = r.either(given.wall, [...at, "wall"], isArm ? armWall : linkWall, 0);
  return {
    wall,
    material: find(wordOr(given.material, [...at, "material"], STRENGTH_ASSUMED.material, r)),
    crossDiameter: isArm ? r.either(given.crossDiameter, [...at, "crossDiameter"], crossDiameter, diameter) : diameter,
    crossWall: isArm ? r.either(given.crossWall, [...at, "crossWall"], crossWall, wall) : wall,
    ...(given.gusset
      ? {
          gusset: {
            at: given.gusset.at,
            thickness: r.length(given.gusset.thickness),
            depth: r.length(given.gusset.depth),
            reach: r.length(given.gusset.reach),
          },
        }
      : {}),
    ...(given.under
      ? {
          under: {
            diameter: r.length(given.under.diameter),
            wall: r.length(given.under.wall),
            drop: r.length(given.under.drop),
          },
        }
      : {}),
    eccentricity: isArm ? 0 : r.either(given.eccentricity, [...at, "eccentricity"], eccentricity, 0),
  };
}

function wordOr(
  typed: string | undefined,
  at: Path,
  assumed: { readonly from: () => string; readonly because: string },
  r: Resolver,
): string {
  if (typed !== undefined) return typed;
  r.note(at, "word", assumed.from(), assumed.because);
  return assumed.from();
}

function resolveFrame(
  given: Item<"frames">,
  own: Material,
  { places }: StrengthGround,
  find: Find,
  r: Resolver,
): ArmFrameEntry {
  return {
    nodes: given.nodes.map(({ name, at, point }) => ({
      name,
      point: point ? r.point(point) : (places.get(at ?? "") ?? UP),
      ...(at === undefined ? {} : { at }),
    })),
    members: given.members.map(
      (member): ArmMemberEntry => ({
        name: member.name,
        from: member.from,
        to: member.to,
        section: sectionOf(member, r),
        material: member.material === undefined ? own : find(member.material),
        ...(member.depthAxis === undefined ? {} : { depth: r.direction(member.depthAxis) }),
      }),
    ),
  };
}

function sectionOf(member: Item<"frames">["members"][number], r: Resolver): Section {
  const size = (typed: number | string | undefined): number => r.length(typed ?? 0);
  const [width, depth, wall] = [size(member.width), size(member.depth), size(member.wall)];
  switch (member.shape) {
    case "round-tube":
      return { shape: "round-tube", diameter: size(member.diameter), wall };
    case "rectangular-tube":
      return { shape: "rectangular-tube", width, depth, wall };
    case "flat-bar":
      return { shape: "flat-bar", width, depth };
    case "boxed-plate":
      return { shape: "boxed-plate", width, depth, sideThickness: wall, coverThickness: size(member.coverWall) };
  }
}

function resolveRodEndStrengths(
  document: CarDocument,
  rodEnds: readonly RodEnd[],
  r: Resolver,
): Readonly<Record<string, RodEndStrength>> {
  const given = document.strength?.rodEnds ?? {};
  return Object.fromEntries(
    rodEnds.map(({ pivot }) => {
      const own = given[pivot] ?? given["all"] ?? {};
      const typed = document.rodEnds?.[pivot]?.thread;
      const thread = typed === undefined ? undefined : parseThread(typed);
      const at: Path = [...AT, "rodEnds", pivot, "exposed"];
      const force = (value: number | string): number => r.value(value, "force");
      const rated = own.radial !== undefined;
      // Only a rated shank is judged: what is not used is not listed as assumed.
      const exposed =
        rated && thread
          ? r.either(own.exposed, at, STRENGTH_ASSUMED.exposed, thread.diameter)
          : own.exposed === undefined
            ? 0
            : r.length(own.exposed);
      return [
        pivot,
        {
          ...(own.radial === undefined
            ? {}
            : {
                rating: {
                  radial: force(own.radial),
                  ...(own.axial === undefined ? {} : { axial: force(own.axial) }),
                },
              }),
          ...(thread ? { thread } : {}),
          exposed,
        },
      ];
    }),
  );
}

const resolveBolt = ({ size, grade, shear }: Item<"bolts">): BoltEntry => ({
  thread: parseThread(size) ?? { diameter: 0, pitch: 1 },
  grade: grade satisfies BoltGrade,
  shear,
});

function resolveTab(given: Item<"tabs">, at: Path, find: Find, r: Resolver): TabEntry {
  const width = r.length(given.width);
  const { tabCount, tabMaterial, tabHeight } = STRENGTH_ASSUMED;
  if (given.count === undefined) r.note([...at, "count"], "word", tabCount.from(), tabCount.because);
  return {
    count: given.count === "1" ? 1 : 2,
    thickness: r.length(given.thickness),
    width,
    edge: r.length(given.edgeDistance),
    height: r.either(given.height, [...at, "height"], tabHeight, width),
    material: find(wordOr(given.material, [...at, "material"], tabMaterial, r)),
  };
}

function resolveShaft(given: Of<"shaft">, find: Find, r: Resolver): ShaftEntry {
  return {
    diameter: r.length(given.diameter),
    bore: r.either(given.bore, [...AT, "shaft", "bore"], STRENGTH_ASSUMED.bore, 0),
    material: find(given.material),
    ...(given.jointTorque === undefined ? {} : { jointTorque: r.value(given.jointTorque, "torque") }),
  };
}

function resolveStub(given: Of<"stub">, find: Find, r: Resolver): StubEntry {
  return {
    diameter: r.length(given.diameter),
    bore: r.either(given.bore, [...AT, "stub", "bore"], STRENGTH_ASSUMED.bore, 0),
    material: find(given.material),
    toBearing: r.length(given.toBearing),
  };
}
