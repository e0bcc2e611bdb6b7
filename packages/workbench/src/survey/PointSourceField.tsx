import type { Vec3 } from "@armwright/engine";
import { type ReactNode, useId } from "react";
import { useBench } from "../app/use-bench.ts";
import { bench, edit } from "../store/bench.ts";
import { sourceOf, toSurveyed, toTyped, typedAt } from "./point-source.ts";

interface Props {
  readonly path: string;
  readonly label: string;
  /** What the point is called where the label does not say it. */
  readonly name?: string;
  readonly points: readonly { readonly name: string; readonly at: Vec3 }[];
}

/** Where a point's coordinates come from: typed, or one of the survey's points. */
export function PointSourceField({ path, label, name: point = label, points }: Props): ReactNode {
  const surveyed = useBench(({ document }) => (document ? sourceOf(document, path).surveyed : null));
  const id = useId();
  const choose = (name: string): void => {
    const { document } = bench.getState();
    if (!document) return;
    if (name !== "") {
      edit(toSurveyed(document, path, name), `${point} follows from the survey: ${name}`);
      return;
    }
    const at = points.find((each) => each.name === surveyed)?.at ?? typedAt(document, path);
    if (at) edit(toTyped(document, path, at), `${point} is typed`);
  };
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <div className="entry">
        <select id={id} value={surveyed ?? ""} onChange={(event) => choose(event.target.value)}>
          <option value="">typed</option>
          {points.map(({ name }) => (
            <option key={name} value={name}>
              survey: {name}
            </option>
          ))}
        </select>
      </div>
    </div>
  );
}
