import "../styles/survey.css";
import { type CardKind, cardReadings, cardValue, type Study, typedLength } from "@armwright/engine";
import { type CarDocument, type FieldValue, type Operation, parsePath } from "@armwright/engine/document";
import { type ReactNode, useMemo, useState } from "react";
import { Dialog } from "../app/Dialog.tsx";
import { useBench } from "../app/use-bench.ts";
import { FINGER, PHONE, useMedia } from "../app/use-media.ts";
import { AngleKeypad, LengthKeypad } from "../form/Keypad.tsx";
import { typedValue } from "../form/typed.ts";
import { cycleHeights } from "../phone/cycle-heights.ts";
import { edit, setTravel, showPanel } from "../store/bench.ts";
import { ReadingPicture } from "../survey/ReadingPicture.tsx";
import { TypedValue } from "../survey/ReadingValue.tsx";
import { Reading } from "../words/Reading.tsx";
import { capitalised, shownLength, shownTravel } from "../words/shown.ts";
import { type Card, cardOf, cardPicture, HOW } from "./card.ts";
import { sayCard, unitOfCard } from "./words.ts";

interface Props {
  readonly travel?: number;
  readonly what?: string;
  /** Of a reading that stands in the log already. */
  readonly path?: string;
}

/** The cycle log, taken under the car: one reading a screen, height by height. */
export function LogPanel(props: Props): ReactNode {
  const study = useBench(({ live, moving }) => (moving ? null : live.study));
  if (!study) return null;
  return <Log study={study} {...props} />;
}

function Log({ study, travel, what, path }: Props & { readonly study: Study }): ReactNode {
  const units = useBench((state) => state.units);
  const document = useBench((state) => state.document);
  const own = document?.units ?? "inch-pound";
  const isKeyed = [useMedia(PHONE), useMedia(FINGER)].some(Boolean);
  const cards = useMemo(
    () =>
      cardReadings(study.corner)
        .filter(({ kind }) => kind !== "hub-height")
        .map(cardOf),
    [study.corner],
  );
  const heights = useMemo(() => withHeight(cycleHeights(study, units), travel), [study, units, travel]);
  const [at, setAt] = useState(() => startOf(heights, document, travel));
  const [place, setPlace] = useState(() => {
    if (what !== undefined)
      return Math.max(
        0,
        cards.findIndex(({ kind }) => kind === what),
      );
    return Math.max(
      0,
      cards.findIndex(({ kind }) => !isLogged(document, kind, at)),
    );
  });
  const card = cards[place];
  if (!card || !document) return null;
  const hub = study.corner.wheelCentre.z + at;
  const unit = units === "metric" ? "mm" : "in";
  const goTo = (height: number, index: number): void => {
    setAt(height);
    setPlace(index);
    setTravel(height);
  };
  const next = (): void => {
    if (path !== undefined) {
      showPanel(null);
      return;
    }
    if (place + 1 < cards.length) {
      setPlace(place + 1);
      return;
    }
    const higher = heights.find((height) => height > at + 1e-6);
    if (higher === undefined) showPanel(null);
    else goTo(higher, 0);
  };
  const set = (text: string): void => {
    const value = typedValue(text, card.dimension, units, own);
    if (value === undefined) return;
    edit(
      logged(document, card, at, value as FieldValue, path),
      `${card.label} at ${shownTravel(at, units)}: ${String(value)}`,
    );
    next();
  };
  const picture = cardPicture(study, card.kind, at);
  const more = (
    <div className="reading-more">
      <button type="button" className="pressable link" onClick={next}>
        {path === undefined ? "Skip" : "Leave it"}
      </button>
      {path !== undefined && (
        <button
          type="button"
          className="pressable link"
          onClick={() => {
            edit(takenOff(document, path), `${card.label} at ${shownTravel(at, units)}: taken off`);
            showPanel(null);
          }}
        >
          Take off
        </button>
      )}
    </div>
  );
  const planned = cardReadings(study.corner).find(({ kind }) => kind === card.kind);
  const predicted = planned ? cardValue(study.corner, planned, at) : null;
  return (
    <Dialog title={capitalised(card.label)} note={`${place + 1} of ${cards.length}`} isFull>
      <div className="log-height">
        <div className="field">
          <label htmlFor="log-height">Hub blocked at, from ride height, {unit}</label>
          <div className="entry">
            <select
              id="log-height"
              value={String(heights.indexOf(at))}
              disabled={path !== undefined}
              onChange={(event) => goTo(heights[Number(event.target.value)] ?? 0, 0)}
            >
              {heights.map((height, index) => (
                <option key={height} value={String(index)}>
                  {height === 0 ? "0, ride height" : shownTravel(height, units)}
                </option>
              ))}
            </select>
          </div>
        </div>
        <p>
          <span className="quiet">hub to floor</span>{" "}
          <b>
            <Reading text={`${shownLength(hub, units)} ${unit}`} />
          </b>
        </p>
      </div>
      <div className="reading-figure">
        {picture && <ReadingPicture {...picture} text="" travel={at} />}
        <p className="quiet">{HOW[card.kind]}</p>
      </div>
      <p className="before quiet">
        {predicted === null ? (
          "The plan does not reach this height."
        ) : (
          <>
            The plan says <Reading text={`${sayCard(predicted, card, units)}${unitOfCard(card, units)}`} />
          </>
        )}
      </p>
      {isKeyed ? (
        <Keyed key={`${place} ${at}`} card={card} onSet={set}>
          {more}
        </Keyed>
      ) : (
        <TypedValue key={`${place} ${at}`} typed="" dimension={card.dimension} onSet={set}>
          {more}
        </TypedValue>
      )}
    </Dialog>
  );
}

function Keyed({
  card,
  onSet,
  children,
}: {
  readonly card: Card;
  readonly onSet: (text: string) => void;
  readonly children: ReactNode;
}): ReactNode {
  const units = useBench((state) => state.units);
  return card.dimension === "angle" ? (
    <AngleKeypad before={null} onSet={onSet}>
      {children}
    </AngleKeypad>
  ) : (
    <LengthKeypad units={units} before={null} onSet={onSet}>
      {children}
    </LengthKeypad>
  );
}

const withHeight = (heights: readonly number[], more: number | undefined): readonly number[] => {
  if (more === undefined || heights.some((height) => Math.abs(height - more) < 1e-6)) return heights;
  return [...heights, more].sort((a, b) => a - b);
};

/** Where it goes on: the height that was asked for, else the lowest that has not been read. */
function startOf(heights: readonly number[], document: CarDocument | null, travel: number | undefined): number {
  if (travel !== undefined) return heights.find((height) => Math.abs(height - travel) < 1e-6) ?? travel;
  return heights.find((height) => !isLogged(document, null, height)) ?? heights[0] ?? 0;
}

const isLogged = (document: CarDocument | null, kind: CardKind | null, at: number): boolean =>
  (document?.asBuilt?.readings ?? []).some(
    (entry) => (kind === null || entry.what === kind) && entry.at === typedLength(at, document!.units),
  );

/** The edits that write a reading down: in its own place, in that of the same one, or at the end. */
function logged(
  document: CarDocument,
  card: Card,
  at: number,
  value: FieldValue,
  path: string | undefined,
): readonly Operation[] {
  const entry = {
    what: card.kind,
    at: typedLength(at, document.units),
    [card.dimension === "angle" ? "degrees" : "reads"]: value,
  } as FieldValue;
  const readings = document.asBuilt?.readings;
  if (!readings) return [{ path: "asBuilt", value: { readings: [entry] } }];
  const same = readings.findIndex((each) => each.what === card.kind && each.at === typedLength(at, document.units));
  const index = path === undefined ? (same < 0 ? readings.length : same) : Number(parsePath(path)?.at(-1));
  return [{ path: `asBuilt.readings[${index}]`, value: entry }];
}

/** The edit that takes a reading off; with the last one the log goes too. */
const takenOff = (document: CarDocument, path: string): readonly Operation[] => [
  { path: (document.asBuilt?.readings ?? []).length > 1 ? path : "asBuilt", value: undefined },
];
