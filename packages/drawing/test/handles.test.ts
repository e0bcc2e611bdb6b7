import { placeOn } from "@armwright/engine";
import { startingDocument } from "@armwright/engine/document";
import { expect, test } from "vitest";
import { drawLeft, drawRear, drawTop, fitLeft, fitRear, fitTop } from "../src/index.ts";
import { CASES, positionAt, startingStudy } from "./cars.ts";

const at = (root: unknown, path: string): unknown =>
  path
    .replace(/\[(\d+)\]/g, ".$1")
    .split(".")
    .reduce<unknown>((value, key) => (value as Record<string, unknown> | undefined)?.[key], root);

for (const { kind, system } of CASES) {
  test(`handles lie where their points are, and name places of the document: ${kind}, ${system}`, () => {
    const study = startingStudy(kind, system);
    const position = positionAt(study, 0.03);
    const { car, corner } = study;
    const rear = drawRear(study, position, fitRear(study, 620, 560));
    const { origin, scale } = rear.sheet;
    const handle = (path: string) => rear.handles.find((candidate) => candidate.path === path)?.at;
    const wheel = handle("travel");
    expect(wheel?.x).toBeCloseTo(origin.x - position.wheelCentre.y * scale, 9);
    expect(wheel?.y).toBeCloseTo(origin.y - position.wheelCentre.z * scale, 9);
    const lower = car.shock && placeOn(position, car.shock.lower.point, car.shock.lower.on);
    expect(handle("shock.lower")?.x).toBeCloseTo(origin.x - (lower?.y ?? 0) * scale, 9);
    expect(handle("shock.lower")?.y).toBeCloseTo(origin.y - (lower?.z ?? 0) * scale, 9);
    for (const pivot of corner.pivots) {
      const now = placeOn(position, pivot.point, pivot.boltSide);
      const close = rear.handles.filter(
        ({ at: spot }) => Math.hypot(spot.x - (origin.x - now.y * scale), spot.y - (origin.y - now.z * scale)) < 1e-9,
      );
      expect(close.length, pivot.id).toBeGreaterThan(0);
    }
    const document = startingDocument(kind, system);
    for (const { path } of rear.handles) {
      if (path !== "travel")
        expect(at(document, path), path).toMatchObject({ x: expect.anything(), z: expect.anything() });
    }
    const paths = rear.handles.map(({ path }) => path);
    expect(new Set(paths).size).toBe(paths.length);
    expect(drawTop(study, position, fitTop(study, 190, 150)).handles.map(({ path }) => path)).toEqual(paths);
    expect(drawLeft(study, position, fitLeft(study, 190, 150)).handles.map(({ path }) => path)).toEqual(paths);
  });
}
