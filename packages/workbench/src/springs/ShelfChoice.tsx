import {
  bandOf,
  chooseSprings,
  formatNumber,
  readSpringShelf,
  type ShelfSpring,
  type SpringChoice,
  type SpringChoices,
  type SpringShelf,
  type SpringStudy,
  type Study,
  springOperations,
  type UnitSystem,
  USUAL_CROSSOVER_PAST,
  USUAL_PRELOAD,
  WEIGHT_ERROR,
} from "@armwright/engine";
import { type ChangeEvent, type ReactNode, useId, useMemo, useState } from "react";
import { useBench } from "../app/use-bench.ts";
import { ValueEntry } from "../mounts/ValueEntry.tsx";
import { bench, edit } from "../store/bench.ts";
import "../styles/mounts.css";
import { Reading } from "../words/Reading.tsx";
import { bare, shown, unitShown } from "../words/shown.ts";
import { INVENTED_SHELF } from "./invented-shelf.ts";
import { keepShelf, keptShelf } from "./kept-shelf.ts";

/** Shown of the ranked sets; the others differ little. */
const SHOWN = 5;

/** Sets of a shelf with which the car sits as wished, best first; one is taken as one step. */
export function ShelfChoice({ study, springs }: { readonly study: Study; readonly springs: SpringStudy }): ReactNode {
  const { car, corner } = study;
  const usual = bandOf(car.targets.use);
  const [isAsked, setAsked] = useState(false);
  const [shelf, setShelf] = useState(keptShelf);
  const [trouble, setTrouble] = useState("");
  const [lower, setLower] = useState(0);
  const [band, setBand] = useState<typeof usual | null>(null);
  const [crossoverPast, setCrossover] = useState(USUAL_CROSSOVER_PAST);
  const wanted = band ?? usual;
  const { stops, shockSpring, sprungMass } = springs;
  const { collarPitch } = springs.springs;
  const { tyreRate } = car.wheel;
  const isPossible = lower > stops.droop && lower < stops.bump;
  const choices = useMemo(
    () =>
      isAsked && isPossible
        ? chooseSprings(corner, shockSpring, shelf?.springs ?? INVENTED_SHELF, {
            sprungMass,
            ...(tyreRate !== undefined && { tyreRate }),
            stops,
            rideTravel: lower,
            band: wanted,
            crossoverPast,
            collarPitch,
          })
        : null,
    [
      isAsked,
      isPossible,
      corner,
      shockSpring,
      shelf,
      sprungMass,
      tyreRate,
      stops,
      lower,
      wanted,
      crossoverPast,
      collarPitch,
    ],
  );
  return (
    <section className="shelf-choice" aria-label="Springs from a shelf">
      <h3>Springs from a shelf</h3>
      <div className="two-wide">
        <ValueEntry
          label="Sits lower than drawn by"
          value={lower}
          onEnter={setLower}
          {...(lower === 0 && { note: "as drawn" })}
        />
        <ValueEntry
          label="Crossover, shock past ride"
          value={crossoverPast}
          least={0.001}
          {...(crossoverPast === USUAL_CROSSOVER_PAST && { note: "common practice" })}
          onEnter={setCrossover}
        />
        <ValueEntry
          label="Frequency, at least"
          dimension="frequency"
          value={wanted.from}
          least={0.1}
          {...(band === null && { note: "common practice" })}
          onEnter={(from) => setBand({ from, to: Math.max(wanted.to, from + LEAST_BAND) })}
        />
        <ValueEntry
          label="Frequency, at most"
          dimension="frequency"
          value={wanted.to}
          least={0.1}
          {...(band === null && { note: "common practice" })}
          onEnter={(to) => setBand({ from: Math.min(wanted.from, Math.max(0.1, to - LEAST_BAND)), to })}
        />
      </div>
      <Shelf shelf={shelf} trouble={trouble} onTrouble={setTrouble} onShelf={setShelf} />
      <p className="adders">
        <button type="button" className="pressable choose" aria-pressed={isAsked} onClick={() => setAsked(true)}>
          Choose springs
        </button>
      </p>
      {!isPossible && <p className="short">The car has to sit between its stops: take a smaller height.</p>}
      {choices && <Choices choices={choices} />}
    </section>
  );
}

/** The ends of a window are no nearer to one another, Hz. */
const LEAST_BAND = 0.05;

interface ShelfProps {
  readonly shelf: SpringShelf | null;
  readonly trouble: string;
  readonly onTrouble: (words: string) => void;
  readonly onShelf: (shelf: SpringShelf | null) => void;
}

function Shelf({ shelf, trouble, onTrouble, onShelf }: ShelfProps): ReactNode {
  const id = useId();
  const units = useBench((state) => state.units);
  const bring = (event: ChangeEvent<HTMLInputElement>): void => {
    const file = event.target.files?.[0];
    event.target.value = "";
    if (!file) return;
    void file.text().then((text) => {
      const { document, units: shownUnits } = bench.getState();
      const units = (document?.units ?? shownUnits) === "metric" ? "metric" : "inch-pound";
      const reading = readSpringShelf(text, file.name, units);
      onTrouble(reading.ok ? "" : reading.words);
      if (!reading.ok) return;
      keepShelf({ file: file.name, text, units });
      onShelf(reading.shelf);
    });
  };
  return (
    <>
      <p className="small">
        {shelf
          ? `${shelf.springs.length} springs of ${shelf.file}.`
          : `An invented shelf of ${INVENTED_SHELF.length} springs, ${lengthsOf(INVENTED_SHELF, units)} long; bring your own.`}
      </p>
      <p className="adders">
        <label className="pressable file-choice" htmlFor={id}>
          Bring a shelf <span className="quiet small">JSON or CSV</span>
        </label>
        <input id={id} type="file" className="unseen" accept=".json,.csv,.txt" data-spring-shelf onChange={bring} />
        {shelf && (
          <button
            type="button"
            className="pressable"
            onClick={() => {
              keepShelf(null);
              onShelf(null);
            }}
          >
            Put it away
          </button>
        )}
      </p>
      {trouble !== "" && (
        <p role="alert" className="short">
          {trouble}
        </p>
      )}
    </>
  );
}

function lengthsOf(springs: readonly ShelfSpring[], units: UnitSystem): string {
  const lengths = springs.map(({ freeLength }) => freeLength);
  return `${bare(Math.min(...lengths), "length", units)} to ${shown(Math.max(...lengths), "length", units)}`;
}

const nameOf = ({ main, tender }: SpringChoice): string => (tender ? `${tender.name} over ${main.name}` : main.name);

function Choices({ choices }: { readonly choices: SpringChoices }): ReactNode {
  const units = useBench((state) => state.units);
  const [looked, setLooked] = useState(0);
  const { sets, fitting, refused } = choices;
  const best = fitting.slice(0, SHOWN);
  const at = Math.min(looked, best.length - 1);
  const choice = best[at];
  const whys = Object.entries(refused).flatMap(([why, count]) =>
    count > 0 ? [`${count} ${WHY[why as keyof typeof WHY](shown(USUAL_PRELOAD.most, "length", units))}`] : [],
  );
  return (
    <>
      <p role="status" className="small">
        {fitting.length > 0
          ? `${fitting.length} of ${sets} sets fit; the best first.`
          : `None of ${sets} sets fits: other lengths or rates are needed.`}
      </p>
      {choice && (
        <div className="short-list scrolls">
          <table>
            <thead>
              <tr>
                <th scope="col" className="quiet">
                  set
                </th>
                {best.map((each, i) => (
                  <th scope="col" key={nameOf(each)} className={mark(i, at)}>
                    <button
                      type="button"
                      aria-pressed={i === at}
                      aria-label={`Look at set ${i + 1}`}
                      onClick={() => setLooked(i)}
                    >
                      {i + 1}
                    </button>
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {ROWS.map(({ label, dimension, of, decimals }) => (
                <tr key={label}>
                  <th scope="row">
                    {label}
                    {dimension && <span className="quiet"> {unitShown(dimension, units)}</span>}
                  </th>
                  {best.map((each, i) => {
                    const value = of(each);
                    return (
                      <td key={nameOf(each)} className={mark(i, at)}>
                        {value === null ? (
                          "none"
                        ) : dimension ? (
                          <Reading text={bare(value, dimension, units)} />
                        ) : (
                          formatNumber(value, decimals ?? 1)
                        )}
                      </td>
                    );
                  })}
                </tr>
              ))}
            </tbody>
          </table>
          <p className="adders">
            <button
              type="button"
              className="pressable take"
              onClick={() => {
                const { document } = bench.getState();
                const system = document?.units === "metric" ? "metric" : "inch-pound";
                edit(springOperations(choice.springs, system), `springs ${nameOf(choice)}`);
              }}
            >
              Take set {at + 1}
            </button>
          </p>
        </div>
      )}
      {whys.length > 0 && <p className="small quiet">The others: {whys.join(", ")}.</p>}
    </>
  );
}

const mark = (index: number, looked: number): string => (index === looked ? "looked" : "");

const ROWS: readonly {
  readonly label: string;
  readonly dimension?: "length" | "rate";
  readonly decimals?: number;
  readonly of: (choice: SpringChoice) => number | null;
}[] = [
  { label: "tender, rate", dimension: "rate", of: ({ tender }) => tender?.rate ?? null },
  { label: "tender, free length", dimension: "length", of: ({ tender }) => tender?.freeLength ?? null },
  { label: "main, rate", dimension: "rate", of: ({ main }) => main.rate },
  { label: "main, free length", dimension: "length", of: ({ main }) => main.freeLength },
  { label: "preload", dimension: "length", of: ({ springs }) => springs.preload },
  { label: "turns of the collar", of: ({ preloadTurns }) => preloadTurns },
  { label: "ride Hz", decimals: 2, of: ({ frequency }) => frequency },
  { label: "full bump Hz", decimals: 2, of: ({ frequencyAtBump }) => frequencyAtBump },
  { label: "left to solid", dimension: "length", of: ({ leftToSolid }) => leftToSolid },
  { label: `lower with +${100 * WEIGHT_ERROR} % weight`, dimension: "length", of: ({ heavier }) => heavier.lower },
  { label: "turns that mend it", of: ({ heavier }) => heavier.turns },
];

const WHY: Readonly<Record<keyof SpringChoices["refused"], (preload: string) => string>> = {
  "main-softer": () => "have the softer spring as main",
  preload: (most) => `need more than ${most} of preload or less than none`,
  room: () => "are too long for the shock",
  frequency: () => "miss the frequency",
  "tender-solid": () => "bring the tender near solid before its stop",
  "main-solid": () => "bring the main spring near solid before the bump stop is",
};
