import { type Finding, type FindingValue, sayFinding, type UnitSystem } from "@armwright/engine";
import type { ReactNode } from "react";
import { Dialog } from "../app/Dialog.tsx";
import { useBench } from "../app/use-bench.ts";
import { findingKey } from "../findings/finding-key.ts";
import { Reading } from "../words/Reading.tsx";
import { shown, shownTravel, tidy } from "../words/shown.ts";
import { restingAt } from "./inputs-of.ts";
import { RestsOn } from "./RestsOn.tsx";

/** How do you know? What a finding judged, by which rule, and where its numbers come from. */
export function HowFindingPanel({ of }: { readonly of: string }): ReactNode {
  const finding = useBench(({ live }) => live.study?.findings.find((each) => findingKey(each) === of));
  return (
    <Dialog title="How do you know?">
      {finding ? <Answer finding={finding} /> : <p>This is not found any more: the car has changed.</p>}
    </Dialog>
  );
}

function Answer({ finding }: { readonly finding: Finding }): ReactNode {
  const units = useBench((state) => state.units);
  const document = useBench((state) => state.document);
  const study = useBench(({ live }) => live.study);
  const { sentence, remedy } = sayFinding(finding, units);
  const values = Object.entries(finding.values).filter(([, value]) => typeof value !== "string");
  const inputs = document && study && finding.place !== "" ? restingAt(finding.place, document, study) : [];
  return (
    <div className="how-answer">
      <p>
        <Reading text={tidy(sentence)} /> <Reading text={tidy(remedy)} />
      </p>
      <dl>
        {finding.travel !== undefined && (
          <>
            <dt>Where the wheel is then</dt>
            <dd>
              <Reading text={finding.travel === 0 ? "ride height" : shownTravel(finding.travel, units)} />, a solved
              position: every link keeps its length, every pivot stays in one place
            </dd>
          </>
        )}
        <dt>The numbers</dt>
        <dd>
          {values.length === 0
            ? "None: it follows from what is entered and what is not."
            : values.map(([name, value], index) => (
                <span key={name}>
                  {index > 0 && "; "}
                  {inWords(name)} <Reading text={said(value, units)} />
                </span>
              ))}
        </dd>
        <dt>The rule, and where it comes from</dt>
        <dd>{tidy(finding.source)}</dd>
        {inputs.length > 0 && <dt>What it is about</dt>}
      </dl>
      <RestsOn inputs={inputs} />
    </div>
  );
}

const said = (value: FindingValue, units: UnitSystem): string =>
  typeof value === "string"
    ? value
    : shown(value.value, value.dimension, units, value.denominator ? { denominator: value.denominator } : {});

const inWords = (name: string): string => name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
