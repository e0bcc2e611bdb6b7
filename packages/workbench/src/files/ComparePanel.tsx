import { compareStudies, study, type UnitSystem } from "@armwright/engine";
import { type ReactNode, useEffect, useState } from "react";
import { Dialog } from "../app/Dialog.tsx";
import { useBench } from "../app/use-bench.ts";
import { bench, compareWith, showPanel } from "../store/bench.ts";
import { type CarEntry, listCars, readCar } from "../store/connection.ts";
import { Reading } from "../words/Reading.tsx";
import { shown, shownTravel } from "../words/shown.ts";

/** Two cars, or today and before, laid over one another. */
export function ComparePanel(): ReactNode {
  const comparing = useBench((state) => state.comparing);
  const now = useBench(({ live }) => live.study);
  const units = useBench((state) => state.units);
  const [cars, setCars] = useState<readonly CarEntry[]>([]);
  useEffect(() => {
    void listCars().then(setCars);
  }, []);
  const keepNow = (): void => {
    const { live } = bench.getState();
    if (live.study) compareWith({ label: "as it was when kept", study: live.study });
    showPanel(null);
  };
  const other = async ({ name, title }: CarEntry): Promise<void> => {
    const reading = await readCar(name);
    if (reading?.ok) compareWith({ label: title, study: study(reading.car) });
  };
  return (
    <Dialog title="Compare">
      <p className="quiet">The other car's curves are drawn dashed beside this one's.</p>
      <div className="actions">
        <button type="button" className="pressable" onClick={keepNow}>
          With the car as it is now, while I change it
        </button>
        <button type="button" className="pressable" onClick={() => showPanel({ kind: "history" })}>
          With an earlier version
        </button>
        {cars.map((car) => (
          <button type="button" key={car.name} className="pressable" onClick={() => void other(car)}>
            With {car.title}
          </button>
        ))}
        {comparing && (
          <button type="button" className="pressable" onClick={() => compareWith(null)}>
            Compare no more
          </button>
        )}
      </div>
      {comparing && now && <Differences label={comparing.label} units={units} />}
    </Dialog>
  );
}

function Differences({ label, units }: { readonly label: string; readonly units: UnitSystem }): ReactNode {
  const now = useBench(({ live }) => live.study);
  const comparing = useBench((state) => state.comparing);
  if (!now || !comparing) return null;
  const { stops, quantities } = compareStudies(comparing.study, now);
  return (
    <table className="compare-table">
      <thead>
        <tr>
          <th scope="col">where they differ most</th>
          <th scope="col">at</th>
          <th scope="col">{label}</th>
          <th scope="col">now</th>
        </tr>
      </thead>
      <tbody>
        {stops.map(({ direction, a, b }) => (
          <tr key={direction}>
            <th scope="row">stop in {direction}</th>
            <td />
            <td>
              <Reading text={shownTravel(a, units)} />
            </td>
            <td>
              <Reading text={shownTravel(b, units)} />
            </td>
          </tr>
        ))}
        {quantities.map(({ id, label: name, dimension, signed, at, a, b }) => (
          <tr key={id}>
            <th scope="row">{name}</th>
            <td>
              <Reading text={shownTravel(at, units)} />
            </td>
            <td>
              <Reading text={shown(a, dimension, units, { sign: signed })} />
            </td>
            <td>
              <Reading text={shown(b, dimension, units, { sign: signed })} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
