import type { Opening } from "@armwright/engine";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { Reading } from "../words/Reading.tsx";
import { shown, shownLength } from "../words/shown.ts";
import { waysToApply } from "./apply-opening.ts";
import { useMounts } from "./mounts-store.ts";
import { NotchTemplate } from "./NotchTemplate.tsx";
import { openingWords } from "./words.ts";

/** Where nothing fits: the smallest single change that opens a place, each with what does it. */
export function Openings(): ReactNode {
  const openings = useMounts((state) => state.openings);
  const units = useBench((state) => state.units);
  if (!openings) return null;
  if (openings.length === 0)
    return <p>No single change within reach opens a place: move or widen the zones, or try other shocks.</p>;
  return (
    <section className="openings" aria-label="What would open a place">
      <h3>The smallest single change that opens a place</h3>
      <ol>
        {openings.map((opening) => (
          <OpeningRow
            key={`${opening.change.kind} ${"keepOut" in opening.change ? opening.change.keepOut : ""}`}
            opening={opening}
          />
        ))}
      </ol>
      <p className="small quiet">
        Each by itself, found on this grid by the same search to{" "}
        <Reading text={shown(units === "metric" ? 0.001 : 0.0254 / 32, "length", units, { denominator: 32 })} />; a
        finer grid may need less.
      </p>
    </section>
  );
}

function OpeningRow({ opening }: { readonly opening: Opening }): ReactNode {
  const units = useBench((state) => state.units);
  const ways = waysToApply(opening);
  const { notch } = opening;
  return (
    <li>
      <p>
        <Reading text={openingWords(opening, units)} />
        {notch && (
          <span className="quiet">
            {" "}
            With the clearance kept, that is a notch of{" "}
            <Reading
              text={(["x", "y", "z"] as const)
                .map((axis) => shownLength(notch.to[axis] - notch.from[axis], units))
                .join(" by ")}
            />{" "}
            (fore and aft, across, up).
          </span>
        )}
      </p>
      {notch?.outline && <NotchTemplate outline={notch.outline} />}
      {ways.map(({ label, apply }) => (
        <button type="button" className="pressable" key={label} onClick={apply}>
          {label}
        </button>
      ))}
    </li>
  );
}
