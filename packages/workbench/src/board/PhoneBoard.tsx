import { titleOf } from "@armwright/drawing";
import { lazy, type ReactNode, Suspense } from "react";
import { useBench } from "../app/use-bench.ts";
import { setView, showScene } from "../store/bench.ts";
import type { ViewName } from "../store/bench-state.ts";
import { type Solved, solvedAt } from "../store/position.ts";
import { Reading } from "../words/Reading.tsx";
import { shownLength, shownTravel } from "../words/shown.ts";
import { Nothing } from "./Nothing.tsx";
import { PhoneTape } from "./PhoneTape.tsx";
import { shownIn } from "./shown-in.ts";
import { useCycling } from "./use-cycling.ts";
import { type Size, useSize } from "./use-size.ts";
import { View } from "./View.tsx";

const SceneView = lazy(() => import("./SceneView.tsx").then((m) => ({ default: m.SceneView })));

const TAPE = 118;
/** Room at the foot for the travel now. */
const FOOT = 64;

/** Under the car: the drawing, and the tape at the thumb's edge. */
export function PhoneBoard(): ReactNode {
  const [ref, size] = useSize();
  const study = useBench(({ live }) => live.study);
  const isOlder = useBench(({ live, unreadable }) => live.isOlder || unreadable.length > 0);
  const travel = useBench((state) => state.travel);
  const units = useBench((state) => state.units);
  useCycling();
  const solved = study && solvedAt(study, travel);
  return (
    <div ref={ref} className={isOlder ? "board-area is-older" : "board-area"}>
      {!study && <Nothing />}
      {study && solved && size && (
        <>
          <Picture solved={solved} size={{ width: size.width - TAPE, height: size.height - FOOT }} />
          <div className="place" style={{ left: size.width - TAPE, top: 0, width: TAPE, height: size.height }}>
            <PhoneTape study={study} />
          </div>
          <p className="phone-now">
            <span className="big">
              <Reading text={shownTravel(travel, units)} />
            </span>
            <span className="quiet small">
              {travel === 0 ? "ride height" : travel > 0 ? "of bump" : "of droop"}
              <br />
              hub to floor <Reading text={shownLength(study.corner.wheelCentre.z + travel, units)} />
            </span>
          </p>
        </>
      )}
    </div>
  );
}

/** What is shown, and what a press on its name shows next. */
const PICTURES = [
  ["rear", "from behind"],
  ["top", "from above"],
  ["left", "from the left"],
  ["scene", "in space"],
] as const satisfies readonly (readonly [ViewName | "scene", string])[];

/** One view, or the car in space; a press on its name goes to the next. */
function Picture({ solved, size }: { readonly solved: Solved; readonly size: Size }): ReactNode {
  const study = useBench(({ live }) => live.study);
  const units = useBench((state) => state.units);
  const view = useBench((state) => state.view);
  const isScene = useBench((state) => state.isScene);
  const isMirrored = useBench(({ side }) => side === "right");
  const now = PICTURES.findIndex(([picture]) => picture === (isScene ? "scene" : view));
  const name = PICTURES[now]?.[1] ?? "from behind";
  const shown = name === "in space" ? name : titleOf(name, isMirrored);
  const [next, words] = PICTURES[(now + 1) % PICTURES.length]!;
  if (!study) return null;
  return (
    <div className="place" style={{ left: 0, top: 0, width: size.width, height: size.height }}>
      {isScene ? (
        <Suspense fallback={<p className="scene-trouble">The scene is being fetched.</p>}>
          <SceneView study={shownIn(study, units)} solved={solved} size={size} />
        </Suspense>
      ) : (
        <View
          view={view}
          study={study}
          solved={solved}
          size={size}
          zero={null}
          isBig
          isBare
          label={isMirrored ? shown : `Left rear corner ${shown}`}
        />
      )}
      <button
        type="button"
        className="phone-view small"
        aria-label={`${shown}: go on to the view ${words}`}
        onClick={() => (next === "scene" ? showScene(true) : setView(next))}
      >
        {shown}
      </button>
    </div>
  );
}
