import { type ChangeEvent, type ReactNode, useEffect, useRef, useState } from "react";
import { useStore } from "zustand";
import { Dialog } from "../app/Dialog.tsx";
import { showPanel } from "../store/bench.ts";
import { type CarEntry, connection, exportCar, importCar, listCars, openCar, removeCar } from "../store/connection.ts";

/** Cars: open one, begin one, bring one in, take one out. */
export function FilesPanel(): ReactNode {
  const [cars, setCars] = useState<readonly CarEntry[]>([]);
  const [said, setSaid] = useState("");
  const chooser = useRef<HTMLInputElement>(null);
  const lists = useStore(connection, (state) => state.lists);
  const open = useStore(connection, (state) => state.name);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the list is asked for again whenever it has changed.
  useEffect(() => {
    void listCars().then(setCars);
  }, [lists]);
  const bringIn = async (event: ChangeEvent<HTMLInputElement>): Promise<void> => {
    const file = event.target.files?.[0];
    if (!file) return;
    const refused = await importCar(await file.text(), file.name);
    if (refused === null) showPanel(null);
    else setSaid(refused);
  };
  return (
    <Dialog title="Cars">
      <ul className="car-list">
        {cars.map(({ name, title, condition }) => (
          <li key={name}>
            <button
              type="button"
              className="pressable wide"
              aria-current={name === open ? "true" : undefined}
              onClick={() => void openCar(name).then(() => showPanel(null))}
            >
              <span>{title}</span>
              <small className={condition === "sound" ? "quiet" : "fault"}>{CONDITION[condition] ?? name}</small>
            </button>
            {name !== open && (
              <button
                type="button"
                className="pressable quiet small"
                onClick={() => void removeCar(name).then(() => listCars().then(setCars))}
              >
                Take away<span className="unseen"> {title}</span>
              </button>
            )}
          </li>
        ))}
      </ul>
      <p className="fault" role="alert">
        {said}
      </p>
      <div className="actions">
        <button type="button" className="pressable" onClick={() => showPanel({ kind: "new-car" })}>
          New car
        </button>
        <button type="button" className="pressable" onClick={() => chooser.current?.click()}>
          Bring a file in
        </button>
        <input
          ref={chooser}
          type="file"
          accept=".json,application/json"
          hidden
          onChange={(event) => void bringIn(event)}
        />
        <button type="button" className="pressable" disabled={open === null} onClick={takeOut}>
          Take this car out as a file
        </button>
        <button type="button" className="pressable" onClick={() => showPanel({ kind: "history" })}>
          Earlier versions
        </button>
        <button type="button" className="pressable" onClick={() => print()}>
          Print
        </button>
      </div>
    </Dialog>
  );
}

const CONDITION: Partial<Record<CarEntry["condition"], string>> = {
  faulty: "entries to mend",
  broken: "cannot be read",
  gone: "its file was taken away",
};

function takeOut(): void {
  const file = exportCar();
  if (!file) return;
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([file.text], { type: "application/json" }));
  link.download = file.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
