import { type CaseGround, COMMON_CASES, type LoadCase, sayStrut } from "@armwright/engine";
import { type CarDocument, sayFault } from "@armwright/engine/document";
import { type ReactNode, useEffect, useId, useState } from "react";
import { useBench } from "../app/use-bench.ts";
import { bench } from "../store/bench.ts";
import { addCase, backToCommon, changeCase, leaveOut, putBack, typedCaseAt } from "./edit-cases.ts";
import { chooseCase } from "./loads-store.ts";
import { factorWords, placeWords, TURNING_WORDS } from "./words.ts";

interface Props {
  readonly ground: CaseGround;
  readonly loadCase: LoadCase;
}

const FACTORS = [
  ["vertical", "up, g"],
  ["inward", "inward, g"],
  ["forward", "forward, g"],
] as const;

const PLACES = ["full-bump", "half-bump", "ride", "half-droop", "full-droop"] as const;
const CARRIERS = ["shock", "bump-stop", "strap"] as const;

/** The chosen case, to be changed: what is changed is kept in the document, and marked. */
export function CaseEditor({ ground, loadCase }: Props): ReactNode {
  const document = useBench((state) => state.document);
  const fault = useBench(({ live }) => live.faults.find(({ path }) => path.startsWith("loads.cases")));
  if (!document) return null;
  const { name, from, of, turning } = loadCase;
  const isCommon = from === "common practice";
  const leftOut = COMMON_CASES.filter((each) => ground.loads.cases.every((other) => other.name !== each.name));
  return (
    <div className="case-editor">
      <p className="small">
        <b>{name}</b>: the wheel {TURNING_WORDS[turning]}
        {of === "unsprung" && "; a g is of what is not sprung"}.{" "}
        {isCommon ? "Factors are common practice: no standard stands behind them." : "Changed by you."}
      </p>
      <div className="factors">
        {FACTORS.map(([field, label]) => (
          <Factor key={field} label={label} value={loadCase[field]} loadCase={loadCase} field={field} />
        ))}
        <Choice
          label="wheel at"
          value={typeof loadCase.at === "number" ? "" : loadCase.at}
          words={PLACES.map((place) => [place, placeWords(place)])}
          other={typeof loadCase.at === "number" ? "a travel of its own" : null}
          onChange={(value) => changeCase(loadCase, "at", value)}
        />
        <Choice
          label="held by"
          value={loadCase.carrier}
          words={CARRIERS.map((part) => [part, sayStrut(part)])}
          other={null}
          onChange={(value) => changeCase(loadCase, "carrier", value)}
        />
      </div>
      {fault && <p className="fault">{sayFault(fault)}</p>}
      <p className="adders">
        {typedCaseAt(document, name) >= 0 && (
          <button type="button" className="pressable" onClick={() => backToCommon(loadCase)}>
            {COMMON_CASES.some((each) => each.name === name) ? "Back to common practice" : "Take it off"}
          </button>
        )}
        {COMMON_CASES.some((each) => each.name === name) && (
          <button type="button" className="pressable" onClick={() => leaveOut(loadCase)}>
            Leave it out
          </button>
        )}
        <Own document={document} />
      </p>
      {leftOut.length > 0 && (
        <p className="small">
          Left out:{" "}
          {leftOut.map((each) => (
            <button key={each.name} type="button" className="link" onClick={() => putBack(each)}>
              put back {each.name}
            </button>
          ))}
        </p>
      )}
    </div>
  );
}

interface FactorProps {
  readonly label: string;
  readonly value: number;
  readonly loadCase: LoadCase;
  readonly field: "vertical" | "inward" | "forward";
}

function Factor({ label, value, loadCase, field }: FactorProps): ReactNode {
  const shown = factorWords(value) || "0";
  const [draft, setDraft] = useState(shown);
  const id = useId();
  useEffect(() => setDraft(shown), [shown]);
  const [fault, setFault] = useState("");
  const drop = (): void => {
    setDraft(shown);
    setFault("");
  };
  const finish = (): void => {
    const typed = draft.trim();
    const number = Number(typed.replace(/\u2212/g, "-").replace(/,/g, "."));
    if (typed === "" || number === value) drop();
    else if (!Number.isFinite(number)) setFault(`${label}: ${JSON.stringify(typed)} is not a number, write 3 or 0.5.`);
    else {
      setFault("");
      changeCase(loadCase, field, number);
    }
  };
  return (
    <div className={fault === "" ? "field" : "field faulty"}>
      <label htmlFor={id}>{label}</label>
      <div className="entry">
        <input
          id={id}
          type="text"
          inputMode="decimal"
          size={1}
          value={draft}
          aria-invalid={fault === "" ? undefined : true}
          onChange={(event) => setDraft(event.target.value)}
          onBlur={finish}
          onKeyDown={(event) => {
            if (event.key === "Enter") finish();
            if (event.key === "Escape") drop();
          }}
        />
      </div>
      {fault !== "" && (
        <p className="fault small" role="alert">
          {fault}
        </p>
      )}
    </div>
  );
}

interface ChoiceProps {
  readonly label: string;
  readonly value: string;
  readonly words: readonly (readonly [string, string])[];
  readonly other: string | null;
  readonly onChange: (value: string) => void;
}

function Choice({ label, value, words, other, onChange }: ChoiceProps): ReactNode {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <div className="entry">
        <select id={id} value={value} onChange={(event) => onChange(event.target.value)}>
          {other !== null && (
            <option value="" disabled>
              {other}
            </option>
          )}
          {words.map(([word, said]) => (
            <option key={word} value={word}>
              {said}
            </option>
          ))}
        </select>
      </div>
    </div>
  );
}

/** A case of the builder's own, to be changed then. */
function Own({ document }: { readonly document: CarDocument }): ReactNode {
  const add = (): void => {
    const names = new Set((document.loads?.cases ?? []).map(({ name }) => name));
    let count = 1;
    while (names.has(`my case ${count}`)) count += 1;
    addCase(`my case ${count}`);
    if (bench.getState().live.faults.length === 0) chooseCase(`my case ${count}`);
  };
  return (
    <button type="button" className="pressable" onClick={add}>
      Add a case of your own
    </button>
  );
}
