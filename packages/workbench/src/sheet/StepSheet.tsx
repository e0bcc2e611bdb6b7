import { lazy, type ReactNode, Suspense, useLayoutEffect, useMemo, useRef } from "react";
import { useBench } from "../app/use-bench.ts";
import { useSettledDocument } from "../app/use-settled.ts";
import { Fields } from "../form/Fields.tsx";
import { type Field, fieldsAt } from "../form/schema-fields.ts";
import { NOT_FORMS, STEPS, type StepId, stepOfId } from "../steps/steps.ts";
import { placeOnSide } from "../store/sides.ts";
import { AssumedList } from "./AssumedList.tsx";
import { ResultsList } from "./ResultsList.tsx";
import { RightSide } from "./RightSide.tsx";
import { SketchFigure } from "./SketchFigure.tsx";
import { STEP_WORK } from "./step-work.tsx";

const MeshPart = lazy(() => import("../mesh/MeshPart.tsx").then((m) => ({ default: m.MeshPart })));

/** A scan has a part of its own in the sheet: it is placed in the scene, not typed. */
const MESH = "chassisMesh";

const ANSWER_FIRST: readonly StepId[] = ["survey", "check", "as-built"];

/** The sheet of the chosen step: what is entered, where the tape goes for it, what comes out. */
export function StepSheet(): ReactNode {
  const step = stepOfId(useBench((state) => state.step));
  const document = useSettledDocument();
  const side = useBench((state) => state.side);
  const fields = useMemo(() => {
    if (!document) return [];
    const places = step.places
      .filter((place) => !NOT_FORMS.includes(place))
      .map((place) => placeOnSide(place, side, document));
    return unique(places.flatMap((place) => fieldsAt(place, document)));
  }, [step, document, side]);
  const head = useRef<HTMLElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another step begins at its top.
  useLayoutEffect(() => {
    head.current?.parentElement?.scrollTo({ top: 0 });
  }, [step]);
  if (!document) return null;
  const number = STEPS.indexOf(step) + 1;
  const Work = STEP_WORK[step.id];
  const work = Work && (
    <Suspense fallback={null}>
      <Work />
    </Suspense>
  );
  // What was measured speaks first, what was assumed of it comes after.
  const isAnswerFirst = ANSWER_FIRST.includes(step.id);
  return (
    <>
      <header ref={head} className="sheet-head">
        <h2>
          {number} {step.title}
        </h2>
        <p className="small quiet">{step.sentence}</p>
      </header>
      {isAnswerFirst && work}
      {step.id === "check" ? (
        <AssumedList />
      ) : (
        fields.length > 0 && (
          <div className="sheet-body">
            <div className="inputs">
              <Fields fields={fields} />
            </div>
            <SketchFigure fallback={fields.find(({ kind }) => kind === "quantity" || kind === "point")?.path} />
          </div>
        )
      )}
      {step.places.includes(MESH) && (
        <Suspense fallback={null}>
          <MeshPart />
        </Suspense>
      )}
      <RightSide step={step} />
      {!isAnswerFirst && work}
      <ResultsList ids={step.results} />
    </>
  );
}

const unique = (fields: readonly Field[]): readonly Field[] => [
  ...new Map(fields.map((field) => [field.path, field])).values(),
];
