import { type ArmFrame, distance, INCH, MILLIMETRE, typedPoint, type UnitSystem } from "@armwright/engine";
import type { FieldValue } from "@armwright/engine/document";

/** A starting frame as a document writes it, for the builder to go on from. Plates on edge are not part of it. */
export function typedFrame({ nodes, members, attached }: ArmFrame, units: UnitSystem): FieldValue {
  const names = namesOf(nodes.map(({ id, label }) => [id, label]));
  const name = (id: string): string => names.get(id) ?? id;
  const kept = members.filter(({ section }) => section.shape === "round-tube");
  const used = new Set(kept.flatMap(({ from, to }) => [from, to]));
  const memberNames = namesOf(kept.map(({ id, label }) => [id, label]));
  return {
    nodes: nodes
      .filter(({ id }) => used.has(id))
      .map(({ id, point }) => {
        // A pivot or mount that stands right here gives its point; others are tied to the nearest node anyway.
        const place = attached.find((each) => each.node === id && distance(each.point, point) < SAME)?.place;
        return place === undefined
          ? { name: name(id), point: typedPoint(point, units) as unknown as FieldValue }
          : { name: name(id), at: place };
      }),
    members: kept.map(({ id, from, to, section, material }) => ({
      name: memberNames.get(id) ?? id,
      from: name(from),
      to: name(to),
      shape: "round-tube",
      ...(section.shape === "round-tube" && {
        diameter: bare(section.diameter, units),
        wall: bare(section.wall, units),
      }),
      material: material.name,
    })),
  };
}

const SAME = 1e-6;

/** Names by id, numbered where several would be called the same. */
function namesOf(items: readonly (readonly [string, string])[]): ReadonlyMap<string, string> {
  const count = new Map<string, number>();
  for (const [, label] of items) count.set(label, (count.get(label) ?? 0) + 1);
  const seen = new Map<string, number>();
  return new Map(
    items.map(([id, label]) => {
      if (count.get(label) === 1) return [id, label];
      seen.set(label, (seen.get(label) ?? 0) + 1);
      return [id, `${label} ${seen.get(label)}`];
    }),
  );
}

const bare = (metres: number, units: UnitSystem): number =>
  units === "metric" ? Number((metres / MILLIMETRE).toFixed(2)) : Number((metres / INCH).toFixed(3));
