import { type StrengthStudy, type Study, sayNoBalance } from "@armwright/engine";
import type { ReactNode } from "react";
import "../styles/strength.css";
import { useBench } from "../app/use-bench.ts";
import { Cautions } from "../loads/Cautions.tsx";
import { CornerWeight } from "../loads/CornerWeight.tsx";
import { useRestingStudy } from "../mounts/use-resting-study.ts";
import { chooseStep, edit } from "../store/bench.ts";
import { CheckList } from "./CheckList.tsx";
import { FramePicture } from "./FramePicture.tsx";
import { Masses } from "./Masses.tsx";
import { PartsEntry } from "./PartsEntry.tsx";
import { Proposals } from "./Proposals.tsx";
import { startOfStrength } from "./start-strength.ts";
import { TubeSizes } from "./TubeSizes.tsx";
import { useStrengthStudy } from "./use-strength-study.ts";
import { WheelGives } from "./WheelGives.tsx";

/** Whether the parts hold in the load cases, weakest first; found when the hand rests. */
export function StrengthWork(): ReactNode {
  const study = useRestingStudy();
  if (!study) return null;
  return (
    <section className="strength-work long-work" aria-label="Strength">
      <div className="long-body">
        {study.car.chassis.cornerMass === undefined ? <CornerWeight /> : <Found study={study} />}
      </div>
      <Cautions
        short="A screen, no approval: a licensed engineer decides. Test slowly, inspect, look for cracks."
        long="Not covered: quality of welds, impact, corrosion, fit and slop, the chassis, rule books and road law."
      />
    </section>
  );
}

function Found({ study }: { readonly study: Study }): ReactNode {
  const document = useBench((state) => state.document);
  const { now, trouble } = useStrengthStudy(study);
  if (trouble !== "") return <p className="fault">It could not be found: {trouble}.</p>;
  if (!now) return <p role="status">Finding what each part has to bear …</p>;
  const { found, isLooking, of } = now;
  if (found.forces.length === 0) return <NothingHolds found={found} />;
  return (
    <>
      {!study.car.strength && <Start study={study} />}
      {of !== document && (
        <p className="older" role="status">
          Of the car before the last change; being found anew.
        </p>
      )}
      <Ways hasParts={study.car.strength !== undefined} />
      <CheckList found={found} isLooking={isLooking} />
      <Proposals found={found} isLooking={isLooking} />
      <div id="strength-picture">
        <FramePicture found={found} />
      </div>
      <WheelGives found={found} tyreRadius={study.car.wheel.freeRadius} />
      <div id="strength-sizes">
        <TubeSizes found={found} isLooking={isLooking} />
      </div>
      <Masses found={found} />
      <div id="strength-parts">{study.car.strength && <PartsEntry study={study} />}</div>
    </>
  );
}

const WAYS = [
  ["strength-picture", "under load"],
  ["strength-sizes", "other sizes"],
  ["strength-parts", "what they are made of"],
] as const;

/** Down the long sheet in one press. */
function Ways({ hasParts }: { readonly hasParts: boolean }): ReactNode {
  const go = (id: string): void => document.getElementById(id)?.scrollIntoView({ block: "start" });
  return (
    <p className="ways small">
      Further down:{" "}
      {WAYS.filter(([id]) => hasParts || id !== "strength-parts").map(([id, words]) => (
        <button key={id} type="button" className="link" onClick={() => go(id)}>
          {words}
        </button>
      ))}
    </p>
  );
}

/** Without shock, stop and strap there is no balance, and no part has a load. */
function NothingHolds({ found }: { readonly found: StrengthStudy }): ReactNode {
  const reasons = [...new Set(found.cases.flatMap(({ balance }) => (balance.ok ? [] : [sayNoBalance(balance)])))];
  return (
    <>
      <p>
        What the car has holds the wheel in no case, so no part has a load to be judged by: {reasons.join("; ")}. Place
        a shock in the step Shock, strap and bump stop in the step Travel.
      </p>
      <p className="adders">
        <button type="button" className="pressable" onClick={() => chooseStep("shock")}>
          To the step Shock
        </button>
      </p>
    </>
  );
}

/** The document says nothing of strength yet: one press begins it, one undo takes it back. */
function Start({ study }: { readonly study: Study }): ReactNode {
  const document = useBench((state) => state.document);
  const units = useBench((state) => state.units);
  if (!document) return null;
  return (
    <div className="start-strength">
      <p>
        Nothing is entered of walls, steel, bolts, tabs and welds. What stands below takes the usual tube for granted:
        walls of {units === "metric" ? "3 mm in arms and 2.4 mm in links" : ".120 in in arms and .095 in in links"}, of
        DOM 1020 (common practice).
      </p>
      <button
        type="button"
        className="pressable take"
        onClick={() =>
          edit(
            [{ path: "strength", value: startOfStrength(study.car, document.units) }],
            "walls, steel, bolts, tabs and welds begun, as a starting guess",
          )
        }
      >
        Begin with the usual parts, as a starting guess
      </button>
    </div>
  );
}
