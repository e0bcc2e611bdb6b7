import type { UseClass } from "@armwright/drawing";
import type { Vec3 } from "@armwright/engine";
import { Group } from "three";
import { DASH, Lines } from "../kit/lines.ts";
import type { Label } from "../labels.ts";
import type { Part, Workshop } from "../part.ts";

/** An arm as a loaded frame in vehicle axes: where its pieces stand, where they bend to, and the numbers beside them. */
export interface FramePictureInSpace {
  readonly pieces: readonly {
    readonly at: readonly [Vec3, Vec3];
    readonly bent: readonly Vec3[];
    readonly use: UseClass;
  }[];
  readonly numbers: readonly { readonly at: Vec3; readonly text: string }[];
}

/** The frame as it stands in pencil, and bent: by weight as well as by ink, red where it is asked more than it bears. */
export function armFramePart({ inks }: Workshop): Part {
  const { ink, pencil, stop, paper } = inks.uniforms;
  const object = new Group();
  const rest = new Lines(inks, { colour: pencil.value, width: 1.25, dash: DASH.ghost, isOver: true }, 64);
  const edge = new Lines(inks, { colour: paper.value, width: 9, isOver: true }, 256);
  const looks: Readonly<Record<UseClass, Lines>> = {
    little: new Lines(inks, { colour: pencil.value, width: 3, isOver: true }, 256),
    half: new Lines(inks, { colour: ink.value, width: 3, isOver: true }, 256),
    most: new Lines(inks, { colour: ink.value, width: 5, isOver: true }, 256),
    over: new Lines(inks, { colour: stop.value, width: 6, isOver: true }, 256),
  };
  const over = Object.values(looks);
  for (const { mesh } of over) mesh.renderOrder = 11;
  const all = [rest, edge, ...over];
  object.add(...all.map(({ mesh }) => mesh));
  return {
    object,
    show({ options }) {
      for (const lines of all) lines.begin();
      for (const { at, bent, use } of options.armFrame?.pieces ?? []) {
        rest.segment(...at);
        for (const lines of [edge, looks[use]]) {
          bent.forEach((point, i) => {
            if (i === 0) lines.move(point);
            else lines.line(point);
          });
        }
      }
      for (const lines of all) lines.end();
    },
    dispose() {
      for (const lines of all) lines.dispose();
    },
  };
}

/** The numbers beside the pieces. */
export const frameLabels = (picture: FramePictureInSpace | null | undefined): readonly Label[] =>
  (picture?.numbers ?? []).map(({ at, text }) => ({ at, text, kind: "note" }));
