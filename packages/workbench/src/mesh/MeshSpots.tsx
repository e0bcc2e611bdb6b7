import type { CarDocument } from "@armwright/engine/document";
import { type ReactNode, useId } from "react";
import { useBench } from "../app/use-bench.ts";
import { PointField } from "../form/PlainFields.tsx";
import { fitSimilarity } from "../scene/mesh/similarity.ts";
import { Reading } from "../words/Reading.tsx";
import { shown } from "../words/shown.ts";
import { dropDraft, takePointOff, typeDraft } from "./choose-mesh.ts";
import type { DraftPoint } from "./mesh-store.ts";

const AXES = [
  ["x", "forward"],
  ["y", "out"],
  ["z", "up"],
] as const;

/** A touched spot, its place on the car being typed. */
export function DraftSpot({
  draft,
  index,
  number,
}: {
  readonly draft: DraftPoint;
  readonly index: number;
  readonly number: number;
}): ReactNode {
  const id = useId();
  return (
    <fieldset className="point">
      <legend>Spot {number}, as taped</legend>
      <div className="axes">
        {AXES.map(([axis, word]) => (
          <div key={axis} className="field">
            <label htmlFor={`${id}${axis}`}>{word}</label>
            <div className="entry">
              <input
                id={`${id}${axis}`}
                type="text"
                size={1}
                autoComplete="off"
                spellCheck={false}
                aria-label={`Spot ${number}, ${word}`}
                value={draft.car[axis]}
                onChange={(event) => typeDraft(index, axis, event.target.value)}
              />
            </div>
          </div>
        ))}
      </div>
      <button type="button" className="pressable quiet small" onClick={() => dropDraft(index)}>
        Take spot {number} off
      </button>
    </fieldset>
  );
}

type Points = NonNullable<CarDocument["chassisMesh"]>["points"];

/** The spots that place the scan, each with how far it lies from where it was taped. */
export function StoredSpots({ points }: { readonly points: Points }): ReactNode {
  const car = useBench(({ live }) => live.study?.car);
  const units = useBench((state) => state.units);
  const placed = car?.chassisMesh?.points ?? [];
  const fit = fitSimilarity(placed.map((point) => ({ file: point.mesh, car: point.car })));
  return (
    <>
      {points.map((point, index) => {
        const off = fit.ok ? fit.residuals[index] : undefined;
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: spots are told apart by their place in the list only.
          <div key={index} className="mesh-spot">
            <PointField
              field={{
                path: `chassisMesh.points[${index}].car`,
                kind: "point",
                label: point.name ?? `Spot ${index + 1}`,
                group: "",
                meaning: "Where it lies on the car.",
                isRequired: true,
              }}
              on={undefined}
            />
            <p className="small mesh-off">
              {off !== undefined && (
                <span>
                  off by{" "}
                  <b>
                    <Reading text={shown(off, "length", units)} />
                  </b>
                </span>
              )}
              {points.length > 3 && (
                <button type="button" className="pressable quiet small" onClick={() => takePointOff(index)}>
                  take off
                </button>
              )}
            </p>
          </div>
        );
      })}
      <p className="small quiet">
        {fit.ok ? (
          <>
            One unit of the file comes out as {(fit.placement.scale * 1000).toPrecision(4)} mm.
            {points.length === 3 &&
              " A fourth spot, out of the plane of the three, tells whether the scan is mirrored."}
          </>
        ) : (
          "These spots lie in one line or in one place, so that they do not place the scan."
        )}
      </p>
    </>
  );
}
