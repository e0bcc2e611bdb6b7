import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { solvedAt } from "../store/position.ts";
import { Reading } from "../words/Reading.tsx";
import { shownLength, shownTravel } from "../words/shown.ts";
import { PhoneTape } from "./PhoneTape.tsx";
import { useCycling } from "./use-cycling.ts";
import { useSize } from "./use-size.ts";
import { View } from "./View.tsx";

const TAPE = 118;
/** Room at the foot for the travel now. */
const FOOT = 64;

/** Under the car: the drawing, and the tape at the thumb's edge. */
export function PhoneBoard(): ReactNode {
  const [ref, size] = useSize();
  const study = useBench(({ live }) => live.study);
  const travel = useBench((state) => state.travel);
  const view = useBench((state) => state.view);
  const units = useBench((state) => state.units);
  useCycling();
  const solved = study && solvedAt(study, travel);
  return (
    <div ref={ref} className="board-area">
      {study && solved && size && (
        <>
          <div className="place" style={{ left: 0, top: 0, width: size.width - TAPE, height: size.height - FOOT }}>
            <View
              view={view}
              study={study}
              solved={solved}
              size={{ width: size.width - TAPE, height: size.height - FOOT }}
              zero={null}
              isBig
              isBare
              label="Left rear corner"
            />
          </div>
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
