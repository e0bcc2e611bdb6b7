import { type Finding, sayFinding, type UnitSystem } from "@armwright/engine";
import { type CarDocument, type Fault, sayFault } from "@armwright/engine/document";
import { memo, type ReactNode } from "react";
import { goToPlace } from "../app/go-to.ts";
import { GravityMark } from "../app/Mark.tsx";
import { useBench } from "../app/use-bench.ts";
import { placeName } from "../form/schema-fields.ts";
import { faultWords } from "../form/use-field.ts";
import { showFinding, showPanel } from "../store/bench.ts";
import { Reading } from "../words/Reading.tsx";
import { tidy } from "../words/shown.ts";
import { findingKey } from "./finding-key.ts";

const WORD = { must: "Must.", mind: "Mind.", note: "Note." } as const;

/** What has to be mended in the entries, then every finding, worst first. One tap goes to the place. */
export function FindingsList(): ReactNode {
  const live = useBench((state) => state.live);
  const unreadable = useBench((state) => state.unreadable);
  const units = useBench((state) => state.units);
  const document = useBench((state) => state.document);
  const faults = [...unreadable, ...live.faults];
  const findings = live.study?.findings ?? [];
  return (
    <ol className="findings-list">
      {live.failure !== null && (
        <li>
          <p className="finding">
            <GravityMark gravity="must" />
            <span>
              <b>A fault of the program.</b> The study failed: {live.failure}. What is shown is of an earlier state.
            </span>
          </p>
        </li>
      )}
      {faults.map((fault) => (
        <li key={`${fault.code} ${fault.path} ${fault.line ?? ""}`}>
          <button type="button" className="finding" onClick={() => goToPlace(fault.path)}>
            <GravityMark gravity="must" />
            <span>
              <b>Mend.</b> <Reading text={faultSentence(fault, document)} />
            </span>
          </button>
        </li>
      ))}
      {live.isOlder && findings.length > 0 && (
        <li className="older">The findings below are of the last state that could be read.</li>
      )}
      {findings.map((finding) => (
        <Row key={findingKey(finding)} finding={finding} units={units} />
      ))}
    </ol>
  );
}

function Row({ finding, units }: { readonly finding: Finding; readonly units: UnitSystem }): ReactNode {
  const { sentence, remedy } = sayFinding(finding, units);
  return <Said finding={finding} sentence={sentence} remedy={remedy} />;
}

/** The field in words; of a file that cannot be read, its own. */
const faultSentence = (fault: Fault, document: CarDocument | null): string =>
  document && fault.path !== "" ? `${placeName(fault.path, document)}: ${faultWords(fault)}` : tidy(sayFault(fault));

interface SaidProps {
  readonly finding: Finding;
  readonly sentence: string;
  readonly remedy: string;
}

/** Made anew only where its words or its place are new: while a point is dragged most findings stay as they are. */
const Said = memo(
  ({ finding, sentence, remedy }: SaidProps): ReactNode => (
    <li>
      <button
        type="button"
        className="finding"
        onClick={() => {
          showFinding(finding);
          goToPlace(finding.place, finding.travel);
        }}
      >
        <GravityMark gravity={finding.gravity} />
        <span>
          <b>{WORD[finding.gravity]}</b> <Reading text={tidy(sentence)} /> <Reading text={tidy(remedy)} />
        </span>
      </button>
      <button
        type="button"
        className="how"
        onClick={() => showPanel({ kind: "how-finding", key: findingKey(finding) })}
      >
        how?<span className="unseen"> {sentence}</span>
      </button>
    </li>
  ),
  (before, now) =>
    before.sentence === now.sentence &&
    before.remedy === now.remedy &&
    before.finding.gravity === now.finding.gravity &&
    before.finding.travel === now.finding.travel,
);
