import { type Car, type SpringNeed, type Study, springNeed, studySprings, withTrialSpring } from "@armwright/engine";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { studyWith } from "../store/study-with.ts";
import "../styles/figures.css";
import { DampingPart } from "./DampingPart.tsx";
import { EachSpring } from "./EachSpring.tsx";
import { HeatPart } from "./HeatPart.tsx";
import { INVENTED_SHELF } from "./invented-shelf.ts";
import { ShelfChoice } from "./ShelfChoice.tsx";
import { Sits } from "./Sits.tsx";
import { SpringCharts } from "./SpringCharts.tsx";
import { WirePart } from "./WirePart.tsx";

/** Where the car sits on its springs, how stiff and damped it is over the travel, what heat does, and which springs to take; all live. */
export function SpringsWork(): ReactNode {
  const study = useBench(({ live }) => live.study);
  if (!study) return null;
  const springs = studySprings(study);
  const tried = springs ?? studySprings(withTrial(study));
  const { shock } = study.car;
  return (
    <section className="springs-work" aria-label="Where the car sits">
      <h3>Where the car sits</h3>
      {springs ? <Sits springs={springs} /> : <p className="small">{missing(study.car)}</p>}
      {springs && (
        <>
          <EachSpring springs={springs} />
          {shock && <SpringCharts corner={study.corner} springs={springs} shortest={shock.shortest} />}
        </>
      )}
      {tried && <ShelfChoice study={study} springs={tried} />}
      {springs && <DampingPart corner={study.corner} springs={springs} />}
      {shock && <HeatPart car={study.car} shock={shock} />}
      <WirePart />
      <p className="small quiet">
        A squeezed spring kills: shock fully open and the wheel hanging before the collar is turned off. Let the gas
        down through its valve, face away, before a shock is opened.
      </p>
    </section>
  );
}

/** The study of a shock without springs with the first of the shelf on it, so that what it has to carry is known. */
function withTrial(study: Study): Study {
  const car = withTrialSpring(study.car, INVENTED_SHELF[0]!);
  return car === study.car ? study : studyWith(study, { car, corner: { ...study.corner, car } });
}

const NEEDED: Readonly<Record<SpringNeed, string>> = {
  shock: "Place a shock first: springs sit on it.",
  springs: "Enter the shock's springs to see where the car sits, or choose them from a shelf.",
  "corner-weight": "Enter the corner weight in the step Stance to see where the car sits.",
  "unsprung-weight": "Enter the unsprung weight in the step Stance to see where the car sits.",
};

const missing = (car: Car): string => {
  const need = springNeed(car);
  return need ? NEEDED[need] : "These springs and weights leave nothing to carry, or the shock cannot carry it.";
};
