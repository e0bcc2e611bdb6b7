import "../styles/survey.css";
import { type CardReading, cardValue, isOfRide, logReadings, type Study, typedLength } from "@armwright/engine";
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
import { type Card, cardOf, cardPicture, HOW, isSameCard } from "./card.ts";
import { sayCard, unitOfCard } from "./words.ts";

interface Props {
  readonly travel?: number;
  readonly card?: Pick<Card, "kind" | "of">;
  /** Of a reading that stands in the log already. */
  readonly path?: string;
}

/** The cycle log, taken under the car: one reading a screen, height by height, then the places at ride height. */
export function LogPanel(props: Props): ReactNode {
  const study = useBench(({ live, moving }) => (moving ? null : live.study));
  if (!study) return null;
  return <Log study={study} {...props} />;
}

function Log({ study, travel, card: asked, path }: Props & { readonly study: Study }): ReactNode {
  const units = useBench((state) => state.units);
  const document = useBench((state) => state.document);
  const own = document?.units ?? "inch-pound";
  const isKeyed = [useMedia(PHONE), useMedia(FINGER)].some(Boolean);
  const rounds = useMemo(
    () => roundsOf(study, withHeight(cycleHeights(study, units), travel), asked),
    [study, units, travel, asked],
  );
  const [{ turn, place }, setAt] = useState(() => startOf(rounds, document, travel, asked));
  const { at, cards } = rounds[turn] ?? { at: 0, cards: [] };
  const card = cards[place]?.card;
  if (!card || !document) return null;
  const hub = study.corner.wheelCentre.z + at;
  const unit = units === "metric" ? "mm" : "in";
  const goTo = (to: number): void => {
    setAt({ turn: to, place: 0 });
    setTravel(rounds[to]?.at ?? 0);
  };
  const next = (): void => {
    if (path !== undefined) {
      showPanel(null);
      return;
    }
    if (place + 1 < cards.length) setAt({ turn, place: place + 1 });
    else if (turn + 1 < rounds.length) goTo(turn + 1);
    else showPanel(null);
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
  const picture = cardPicture(study, card, at);
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
  const predicted = cardValue(study.corner, cards[place]!.reading, at);
  return (
    <Dialog title={capitalised(card.label)} note={`${place + 1} of ${cards.length}`} isFull>
      <div className="log-height">
        <div className="field">
          <label htmlFor="log-height">Hub blocked at, from ride height, {unit}</label>
          <div className="entry">
            <select
              id="log-height"
              value={String(turn)}
              disabled={path !== undefined}
              onChange={(event) => goTo(Number(event.target.value))}
            >
              {rounds.map(({ at: height, isOfPlaces }, index) => (
                <option key={`${height} ${isOfPlaces}`} value={String(index)}>
                  {height === 0
                    ? `0, ride height${isOfPlaces ? ": where the points are" : ""}`
                    : shownTravel(height, units)}
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
        <Keyed key={`${turn} ${place}`} card={card} onSet={set}>
          {more}
        </Keyed>
      ) : (
        <TypedValue key={`${turn} ${place}`} typed="" dimension={card.dimension} onSet={set}>
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

/** What is read one after the other with the hub at one height. */
interface Round {
  readonly at: number;
  /** Where each point is, off the floor and by plumb bob; the others read cards and tubes. */
  readonly isOfPlaces: boolean;
  readonly cards: readonly { readonly card: Card; readonly reading: CardReading }[];
}

/** The hub is blocked by the floor, so that its height tells nothing new: it is there only where it was logged. */
function roundsOf(
  { corner }: Study,
  heights: readonly number[],
  asked: Pick<Card, "kind" | "of"> | undefined,
): readonly Round[] {
  const readings = logReadings(corner)
    .filter(({ kind }) => kind !== "hub-height" || asked?.kind === kind)
    .map((reading) => ({ card: cardOf(reading), reading }));
  const places = readings.filter(({ card }) => isOfRide(card));
  const others = readings.filter(({ card }) => !isOfRide(card));
  return [
    ...heights.map((at): Round => ({ at, isOfPlaces: false, cards: others })),
    { at: 0, isOfPlaces: true, cards: places },
  ];
}

/** Where it goes on: what was asked for, else what has not been read of the first round of which nothing has. */
function startOf(
  rounds: readonly Round[],
  document: CarDocument | null,
  travel: number | undefined,
  asked: Pick<Card, "kind" | "of"> | undefined,
): { readonly turn: number; readonly place: number } {
  const isAsked = ({ at, isOfPlaces, cards }: Round): boolean => {
    if (asked && isOfRide(asked)) return isOfPlaces;
    if (travel === undefined) return !cards.some(({ card }) => isLogged(document, card, at));
    return !isOfPlaces && Math.abs(at - travel) < 1e-6;
  };
  const turn = Math.max(0, rounds.findIndex(isAsked));
  const round = rounds[turn]!;
  const place = round.cards.findIndex(({ card }) =>
    asked ? isSameCard(card, asked) : !isLogged(document, card, round.at),
  );
  return { turn, place: Math.max(0, place) };
}

const isLogged = (document: CarDocument | null, card: Card, at: number): boolean => placeInLog(document, card, at) >= 0;

/** Where a reading stands in the log; -1 where it does not. */
const placeInLog = (document: CarDocument | null, card: Card, at: number): number =>
  (document?.asBuilt?.readings ?? []).findIndex(
    ({ what, of, at: height }) =>
      isSameCard(card, { kind: what, ...(of !== undefined && { of }) }) && height === typedLength(at, document!.units),
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
    ...(card.of !== undefined && { of: card.of }),
    at: typedLength(at, document.units),
    [card.dimension === "angle" ? "degrees" : "reads"]: value,
  } as FieldValue;
  const readings = document.asBuilt?.readings;
  if (!readings) return [{ path: "asBuilt", value: { readings: [entry] } }];
  const same = placeInLog(document, card, at);
  const index = path === undefined ? (same < 0 ? readings.length : same) : Number(parsePath(path)?.at(-1));
  return [{ path: `asBuilt.readings[${index}]`, value: entry }];
}

/** The edit that takes a reading off; with the last one the log goes too. */
const takenOff = (document: CarDocument, path: string): readonly Operation[] => [
  { path: (document.asBuilt?.readings ?? []).length > 1 ? path : "asBuilt", value: undefined },
];
