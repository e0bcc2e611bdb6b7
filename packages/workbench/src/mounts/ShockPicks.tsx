import { type Corner, defaultRequest, OWN_SHOCK, readShockShelf, type ShockOption } from "@armwright/engine";
import { type ChangeEvent, type ReactNode, useId } from "react";
import { useBench } from "../app/use-bench.ts";
import { bench } from "../store/bench.ts";
import { Reading } from "../words/Reading.tsx";
import { shownLength, unitShown } from "../words/shown.ts";
import { keepShelf } from "./kept-shelf.ts";
import { mountsBench, useMounts, wish } from "./mounts-store.ts";
import { shocksOf } from "./request-now.ts";
import { useRestingStudy } from "./use-resting-study.ts";
import type { Zones } from "./zone.ts";

/** Which shocks are tried: the car's own, and those of a shelf that the builder brings. */
export function ShockPicks(): ReactNode {
  const car = useRestingStudy()?.car;
  const units = useBench((state) => state.units);
  const chosen = useMounts((state) => state.chosen);
  const shelf = useMounts((state) => state.shelf);
  const wanted = useMounts((state) => state.wanted);
  const trouble = useMounts((state) => state.shelfTrouble);
  const id = useId();
  if (!car) return null;
  const shocks = shocksOf(car, { shelf, wanted });
  const unit = unitShown("length", units);
  const toggle = (name: string): void =>
    wish({ chosen: chosen.includes(name) ? chosen.filter((each) => each !== name) : [...chosen, name] });
  return (
    <fieldset className="finder-part">
      <legend>Shocks to try</legend>
      {shocks.length === 0 && (
        <p className="small quiet">The car has no shock yet: bring a list of those to choose from.</p>
      )}
      {shocks.map(({ name, shortest, longest }) => (
        <label key={name} className="pick">
          <input type="checkbox" checked={chosen.includes(name)} onChange={() => toggle(name)} />
          <span>{name}</span>
          <span className="quiet">
            <Reading text={`${shownLength(shortest, units)} to ${shownLength(longest, units)} ${unit}`} />
          </span>
        </label>
      ))}
      <p className="adders">
        <label className="pressable file-choice" htmlFor={id}>
          {shelf ? "Bring another shelf" : "Bring a shelf"} <span className="quiet small">JSON or CSV</span>
        </label>
        <input id={id} type="file" className="unseen" accept=".json,.csv,.txt" data-shelf-file onChange={bring} />
        {shelf ? (
          <button type="button" className="pressable quiet" onClick={putAway}>
            Put {shelf.file} away
          </button>
        ) : (
          <button type="button" className="pressable" onClick={() => void bringExample()}>
            Try the example shelf
          </button>
        )}
      </p>
      {trouble !== "" && (
        <p className="fault" role="alert">
          {trouble}
        </p>
      )}
    </fieldset>
  );
}

function bring(event: ChangeEvent<HTMLInputElement>): void {
  const file = event.target.files?.[0];
  event.target.value = "";
  if (file) void file.text().then((text) => take(text, file.name));
}

async function bringExample(): Promise<void> {
  const { default: text } = await import("../../../../examples/shocks.shelf.json?raw");
  take(text, "the example shelf");
}

function take(text: string, file: string): void {
  const units = bench.getState().document?.units ?? bench.getState().units;
  const reading = readShockShelf(text, file, units);
  if (!reading.ok) {
    mountsBench.setState({ shelfTrouble: reading.words });
    return;
  }
  keepShelf({ file, text, units });
  const { shelf } = reading;
  const { study } = bench.getState().live;
  const hasOwn = study?.car.shock !== undefined;
  // A car without a shock is looked at with all of the shelf, its upper zone as high as these shocks are long.
  mountsBench.setState(({ chosen, zones }) => ({
    shelf,
    shelfTrouble: "",
    chosen: hasOwn ? chosen.filter((name) => name === OWN_SHOCK) : shelf.shocks.map(({ name }) => name),
    ...(study && !hasOwn && { zones: zonesFor(study.corner, shelf.shocks, zones) }),
  }));
}

/** Zones that nobody has moved yet are drawn anew for these shocks. */
function zonesFor(corner: Corner, shocks: readonly ShockOption[], zones: Zones | null): Zones | null {
  const drawn = (options: readonly ShockOption[]): Zones => {
    const { upper, lower } = defaultRequest(corner, options);
    return { upper, lower };
  };
  return JSON.stringify(zones) === JSON.stringify(drawn([])) ? drawn(shocks) : zones;
}

function putAway(): void {
  keepShelf(null);
  mountsBench.setState({ shelf: null, shelfTrouble: "", chosen: [OWN_SHOCK] });
}
