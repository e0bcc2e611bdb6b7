import "../styles/survey.css";
import { type CarSurvey, pointsOf, sayReadingValue, type UnitSystem } from "@armwright/engine";
import { type ReactNode, useMemo, useState } from "react";
import { Dialog } from "../app/Dialog.tsx";
import { useBench } from "../app/use-bench.ts";
import { edit, showPanel } from "../store/bench.ts";
import { Reading } from "../words/Reading.tsx";
import { capitalised, tidy, unitShown } from "../words/shown.ts";
import { ReadingPicture } from "./ReadingPicture.tsx";
import { ReadingValue } from "./ReadingValue.tsx";
import {
  drawableOf,
  emptyReading,
  factsOf,
  isPlaced,
  KINDS,
  type Kind,
  missingSlots,
  nameIn,
  type PointEntry,
  putReading,
  type ReadingEntry,
  takeOffReading,
  withField,
} from "./survey-document.ts";
import { useSurvey } from "./use-survey.ts";
import { WhichPoints } from "./WhichPoints.tsx";

interface Props {
  /** Place in the survey's list; null for one that is not in it yet. */
  readonly index: number | null;
  /** What is proposed, where it is not in the list. */
  readonly start?: ReadingEntry;
}

/** One reading of the survey: which points, a picture of them, and the tape keypad. */
export function ReadingPanel({ index, start }: Props): ReactNode {
  const section = useBench(({ document }) => document?.survey);
  const car = useSurvey();
  const stored = index === null ? undefined : section?.readings[index];
  const [draft, setDraft] = useState<ReadingEntry>(() => stored ?? start ?? emptyReading("tape"));
  const [newPoints, setNewPoints] = useState<readonly PointEntry[]>([]);
  const [isAsked, setAsked] = useState(stored === undefined && start === undefined);
  const [isRepeat, setRepeat] = useState(false);
  /** What was written down last, while readings come one after the other. */
  const [written, setWritten] = useState("");
  const points = [...(section?.points ?? []), ...newPoints];
  const facts = factsOf(draft.kind);
  const isNew = stored === undefined || isRepeat;

  const put = (entry: ReadingEntry): void => {
    edit(
      putReading(section, entry, isNew ? null : index, newPoints),
      `${wordsOf(entry)}: ${saidValue(entry)}${isNew ? "" : ", read again"}`,
    );
    // Off a sheet of paper they come one after the other: the next of the same kind is asked for at once.
    if (index !== null || start !== undefined) {
      showPanel(null);
      return;
    }
    setWritten(`${capitalised(wordsOf(entry))}: ${saidValue(entry)}.`);
    setDraft(emptyReading(entry.kind));
    setNewPoints([]);
    setAsked(true);
  };

  if (isAsked) {
    return (
      <Dialog title="Add a reading" isFull>
        {written !== "" && (
          <p className="written" role="status">
            <span className="quiet">Written down:</span> <Reading text={tidy(written)} />{" "}
            <button type="button" className="pressable link" onClick={() => showPanel(null)}>
              That was the last
            </button>
          </p>
        )}
        <WhichKind kind={draft.kind} onChoose={(kind) => setDraft(movedTo(draft, kind))} />
        <WhichPoints
          draft={draft}
          points={points}
          car={car}
          onDraft={setDraft}
          onNewPoint={(point) => setNewPoints([...newPoints, point])}
        />
        <button type="button" className="set" disabled={missingSlots(draft).length > 0} onClick={() => setAsked(false)}>
          {facts.reads === "nothing" ? "Next" : "Next: what it reads"}
        </button>
      </Dialog>
    );
  }
  return (
    <Dialog
      title={capitalised(wordsOf(draft))}
      note={index === null ? "new" : `${index + 1} of ${section?.readings.length ?? 0}`}
      isFull
    >
      <div className="reading-figure">
        <Picture draft={draft} car={car} />
        <p className="quiet">{facts.how}</p>
      </div>
      <Before draft={stored ?? draft} car={car} index={index} />
      <ReadingValue
        key={isRepeat ? "repeat" : "first"}
        draft={draft}
        isFresh={isNew}
        usual={car ? 2 * car.survey.uncertainty[draft.kind] : null}
        onDraft={setDraft}
        onSet={put}
      >
        <div className="reading-more">
          <button type="button" className="pressable link" onClick={() => setAsked(true)}>
            Other points
          </button>
          {stored && !isRepeat && facts.reads !== "nothing" && (
            <button type="button" className="pressable link" onClick={() => setRepeat(true)}>
              Add a second reading
            </button>
          )}
          {stored && draft.deferred !== true ? (
            <button type="button" className="pressable link" onClick={() => put(withField(stored, "deferred", true))}>
              Put aside
            </button>
          ) : (
            <button type="button" className="pressable link" onClick={() => put(withField(draft, "deferred", true))}>
              Put off
            </button>
          )}
          {stored && index !== null && (
            <button
              type="button"
              className="pressable link"
              onClick={() => {
                edit(takeOffReading(index), `${wordsOf(stored)}: taken off`);
                showPanel(null);
              }}
            >
              Take off
            </button>
          )}
        </div>
      </ReadingValue>
    </Dialog>
  );
}

/** Points stay where both kinds have the same places for them. */
function movedTo(draft: ReadingEntry, kind: Kind): ReadingEntry {
  const names = factsOf(draft.kind).slots.flatMap((slot) => nameIn(draft, slot) || []);
  return factsOf(kind).slots.reduce(
    (made, { field, without }, place) =>
      names[place] === undefined || without !== undefined ? made : withField(made, field, names[place]),
    emptyReading(kind),
  );
}

function WhichKind({ kind, onChoose }: { readonly kind: Kind; readonly onChoose: (kind: Kind) => void }): ReactNode {
  return (
    <div className="field">
      <label htmlFor="reading-kind">What was read</label>
      <div className="entry">
        <select id="reading-kind" value={kind} onChange={(event) => onChoose(event.target.value as Kind)}>
          {KINDS.map((each) => (
            <option key={each.kind} value={each.kind}>
              {each.title}
            </option>
          ))}
        </select>
      </div>
    </div>
  );
}

function Picture({ draft, car }: { readonly draft: ReadingEntry; readonly car: CarSurvey | null }): ReactNode {
  const drawable = useMemo(() => {
    const placed = car?.result.points ?? [];
    return drawableOf(
      draft,
      placed.map(({ name }) => name),
    );
  }, [draft, car]);
  const isKnown = drawable && car && pointsOf(drawable).every((point) => isPlaced(car.result, point));
  return drawable && car && isKnown ? (
    <ReadingPicture points={car.result.points} reading={drawable} text="" />
  ) : (
    <p className="quiet">The picture comes when it is known roughly where the points are.</p>
  );
}

/** What was read before, of this reading and of the same one taken another time, and what the others say. */
function Before({
  draft,
  car,
  index,
}: {
  readonly draft: ReadingEntry;
  readonly car: CarSurvey | null;
  readonly index: number | null;
}): ReactNode {
  const units = useBench((state) => state.units);
  const section = useBench(({ document }) => document?.survey);
  const own = useBench(({ document }) => document?.units ?? "inch-pound");
  const key = wordsOf(draft);
  const reads = (entry: ReadingEntry): unknown => (entry as Readonly<Record<string, unknown>>)["reads"];
  const before = (section?.readings ?? []).filter((each) => wordsOf(each) === key && reads(each) !== undefined);
  const suspicion = car?.result.suspicions.find(({ reading }) => reading === index);
  const unit = draft.kind === "level" ? "" : units === "metric" ? " mm" : " in";
  const others =
    suspicion && car?.survey.readings[suspicion.reading]
      ? tidy(sayReadingValue(car.survey.readings[suspicion.reading]!, suspicion.others, units))
      : "";
  return (
    <p className="before quiet">
      {before.length === 0 ? (
        "Not read before"
      ) : (
        <>
          Read before:{" "}
          {before.map((entry, place) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: readings of one thing are told apart by their order only.
            <b key={place}>
              {place > 0 && ", "}
              <Reading text={typedWithUnit(reads(entry), draft, own, units)} />
            </b>
          ))}
        </>
      )}
      {others !== "" && (
        <>
          {". "}The others say <Reading text={`${others}${unit}`} />.
        </>
      )}
    </p>
  );
}

/** As it was typed; with its unit where another one is shown. */
function typedWithUnit(typed: unknown, { kind }: ReadingEntry, own: UnitSystem, units: UnitSystem): string {
  const text = tidy(String(typed));
  return own === units || kind === "level" || /[a-z"']/i.test(text) ? text : `${text} ${unitShown("length", own)}`;
}

/** As it is said of a reading in the list, from the document's own words. */
export function wordsOf(entry: ReadingEntry): string {
  const name = (field: string): string => String((entry as Readonly<Record<string, unknown>>)[field] ?? "");
  const { kind } = entry;
  switch (kind) {
    case "tape":
      return `${name("from")} to ${name("to")}`;
    case "height":
      return `${name("point")}, height ${name("above") === "" ? "off the floor" : `above ${name("above")}`}`;
    case "out":
      return `${name("point")}, out from ${name("from") === "" ? "the centreline" : `the string at ${name("from")}`}`;
    case "along":
      return `${name("point")}, forward of ${name("from") === "" ? "the mark" : name("from")}`;
    case "level":
      return `bar from ${name("from")} to ${name("to")}, angle`;
    case "in-line":
      return `${name("point")} on the line from ${name("from")} to ${name("to")}`;
    case "offset":
      return `${name("to")} off ${name("from")}`;
    case "mirror":
      return `${name("left")} and ${name("right")} mirrored`;
  }
}

function saidValue(entry: ReadingEntry): string {
  if (entry.deferred === true) return "put off";
  const reads: unknown = (entry as Readonly<Record<string, unknown>>)["reads"];
  return reads === undefined ? "entered" : String(reads);
}
