import { tapeScale } from "@armwright/drawing";
import type { Study } from "@armwright/engine";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { Charts } from "../board/Charts.tsx";
import { NUMERALS } from "../board/layout.ts";
import { shownIn } from "../board/shown-in.ts";
import { useSize } from "../board/use-size.ts";
import { useTapeRange } from "../board/use-tape-range.ts";
import { showPanel } from "../store/bench.ts";
import { chartIds } from "./chart-ids.ts";

/** The step's charts where there is no room for them beside the drawing: the same scale, shorter. */
export function ChartsRow(): ReactNode {
  const study = useBench(({ live }) => live.study);
  return (
    <div className="charts-row">
      {study && <Row study={study} />}
      <button type="button" className="pressable" onClick={() => showPanel({ kind: "charts" })}>
        Choose charts
      </button>
    </div>
  );
}

const HEIGHT = 346;
const GAP = 16;
/** Narrower than this a chart's head runs into the next one's. */
const LEAST = 57;

function Row({ study }: { readonly study: Study }): ReactNode {
  const [ref, size] = useSize();
  const units = useBench((state) => state.units);
  const step = useBench((state) => state.step);
  const picked = useBench((state) => state.pickedCharts);
  const range = useTapeRange(study);
  const ids = chartIds(study, step, picked);
  const scale = tapeScale(
    shownIn(study, units),
    { x: 0, y: 30, width: 100, height: HEIGHT - 66 },
    { range, loupe: false },
  );
  const room = size ? size.width - NUMERALS - 4 : 0;
  const abreast = Math.max(1, Math.min(ids.length, Math.floor((room + GAP) / (LEAST + GAP))));
  const chart = Math.floor((room + GAP) / abreast - GAP);
  const rows = Array.from({ length: Math.ceil(ids.length / abreast) }, (_, row) =>
    ids.slice(row * abreast, (row + 1) * abreast),
  );
  return (
    <div ref={ref} className="charts-frame">
      {size &&
        chart > 20 &&
        rows.map((row) => (
          <div key={row.join(" ")} className="charts-line" style={{ height: HEIGHT }}>
            <Charts
              study={study}
              ids={row}
              scale={scale}
              left={0}
              width={size.width}
              height={HEIGHT}
              chart={chart}
              gap={GAP}
            />
          </div>
        ))}
    </div>
  );
}
