import { placeTravel, type Study } from "@armwright/engine";
import { type ReactNode, useEffect } from "react";
import "../styles/strength.css";
import { useBench } from "../app/use-bench.ts";
import { useSettledDocument } from "../app/use-settled.ts";
import { laidOver } from "../board/laid-over.ts";
import { Fields } from "../form/Fields.tsx";
import { fieldAt } from "../form/schema-fields.ts";
import { setTravel } from "../store/bench.ts";
import { Reading } from "../words/Reading.tsx";
import { travelSaid } from "../words/shown.ts";
import { shownFigures } from "../words/three-figures.ts";
import { CaseEditor } from "./CaseEditor.tsx";
import { CaseTable } from "./CaseTable.tsx";
import { Cautions } from "./Cautions.tsx";
import { CornerWeight } from "./CornerWeight.tsx";
import { ForcesOver } from "./ForcesOver.tsx";
import { ForceTables } from "./ForceTables.tsx";
import { forcesNow } from "./forces-now.ts";
import { useLoads } from "./loads-store.ts";

/** Load cases, and every force in the corner for the chosen one at the present travel; its arrows lie over the drawing. */
export function LoadsWork(): ReactNode {
  const study = useBench(({ live }) => live.study);
  const units = useBench((state) => state.units);
  const chosen = useLoads((state) => state.chosen);
  useEffect(() => {
    laidOver.setState({
      Over: ForcesOver,
      inSpace: (of, { travel }) => ({ forces: forcesNow(of, chosen, travel, units)?.arrows ?? [] }),
    });
    return () => laidOver.setState({ Over: null, inSpace: null });
  }, [chosen, units]);
  if (!study) return null;
  return (
    <section className="loads-work long-work" aria-label="Loads">
      <div className="long-body">
        {study.car.chassis.cornerMass === undefined ? <CornerWeight /> : <Found study={study} />}
      </div>
      <Cautions
        short="A force is as good as its case; real blows can be harder. A licensed engineer decides."
        long="Stiff, weightless arms, joints without friction; the weight of wheel, hub and spindle is not taken off."
      />
    </section>
  );
}

function Found({ study }: { readonly study: Study }): ReactNode {
  const units = useBench((state) => state.units);
  const travel = useBench((state) => state.travel);
  const chosen = useLoads((state) => state.chosen);
  const now = forcesNow(study, chosen, travel, units);
  if (!now) return <p>Every load case is left out: put one back.</p>;
  const { ground, loadCase } = now;
  const own = placeTravel(loadCase.at, ground.stops);
  return (
    <>
      <h3>
        Load cases{" "}
        <small>
          1 g is what the wheel carries, {shownFigures(ground.staticLoad, "force", units)}; factors common practice, *
          yours
        </small>
      </h3>
      <CaseTable ground={ground} chosen={loadCase.name} />
      <CaseEditor ground={ground} loadCase={loadCase} />
      <h3>
        {loadCase.name}{" "}
        <small>
          every force, the wheel at <Reading text={travelSaid(travel, units)} />
        </small>
      </h3>
      {Math.abs(own - travel) > 5e-4 && (
        <p className="small">
          The case stands at <Reading text={travelSaid(own, units)} />.{" "}
          <button type="button" className="link" onClick={() => setTravel(own)}>
            Go there
          </button>
        </p>
      )}
      <ForceTables now={now} />
      <General />
    </>
  );
}

/** Grip and drive, which the cases that are limited by them stand on. */
function General(): ReactNode {
  const document = useSettledDocument();
  if (!document) return null;
  const fields = ["grip", "engineTorque", "gearing", "wheelShare"].flatMap(
    (name) => fieldAt(`loads.${name}`, document) ?? [],
  );
  return (
    <>
      <h3>
        Grip and drive <small>left out: grip 1, on the high side; one wheel gets 50 %; only grip limits it</small>
      </h3>
      <div className="two-columns">
        <Fields fields={fields.map((field) => ({ ...field, group: "" }))} />
      </div>
    </>
  );
}
