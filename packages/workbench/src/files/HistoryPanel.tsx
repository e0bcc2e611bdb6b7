import { study } from "@armwright/engine";
import { readCarDocument } from "@armwright/engine/document";
import { type ReactNode, useEffect, useState } from "react";
import { useStore } from "zustand";
import { Dialog } from "../app/Dialog.tsx";
import { bench, compareWith, edit, showPanel } from "../store/bench.ts";
import { connection, historyOf, restoreVersion, type Version, versionText } from "../store/connection.ts";
import { differences } from "./differences.ts";

/** Earlier versions of this car: looked through, laid over the present one, brought back. */
export function HistoryPanel(): ReactNode {
  const id = useStore(connection, (state) => state.name);
  const [versions, setVersions] = useState<readonly Version[] | null>(null);
  const [said, setSaid] = useState("");
  useEffect(() => {
    if (id !== null) void historyOf(id).then(setVersions);
  }, [id]);
  if (id === null) return null;
  const read = async (version: Version) => {
    const reading = readCarDocument(await versionText(id, version.id));
    if (!reading.ok) setSaid("That version cannot be read.");
    return reading.ok ? reading : null;
  };
  const lay = async (version: Version): Promise<void> => {
    const reading = await read(version);
    if (!reading) return;
    compareWith({ label: `before, ${whenOf(version)}`, study: study(reading.car) });
    showPanel(null);
  };
  const bringBack = async (version: Version): Promise<void> => {
    const { document } = bench.getState();
    if (!document || connection.getState().isGone) {
      // Nothing that edits could be made to: the file is exchanged as a whole.
      if (await restoreVersion(id, version.id)) showPanel(null);
      else setSaid("That version could not be brought back.");
      return;
    }
    const reading = await read(version);
    if (!reading) return;
    edit(differences(document, reading.document), `brought back as of ${whenOf(version)}`);
    showPanel(null);
  };
  return (
    <Dialog title="Earlier versions">
      <p className="fault" role="alert">
        {said}
      </p>
      {versions !== null && versions.length === 0 && <p className="quiet">None yet: each change makes one.</p>}
      <ul className="version-list">
        {(versions ?? []).map((version) => (
          <li key={version.id}>
            <span>
              {whenOf(version)} <small className="quiet">{BECAUSE[version.because]}</small>
            </span>
            <button type="button" className="pressable" onClick={() => void lay(version)}>
              Lay over
            </button>
            <button type="button" className="pressable" onClick={() => void bringBack(version)}>
              Bring back
            </button>
          </li>
        ))}
      </ul>
    </Dialog>
  );
}

const BECAUSE: Readonly<Record<Version["because"], string>> = {
  edit: "before a change",
  program: "before another program's change",
  restore: "before an earlier version was brought back",
  remove: "before it was taken away",
};

const whenOf = ({ at }: Version): string =>
  new Date(at).toLocaleString([], {
    month: "short",
    day: "numeric",
    hour: "2-digit",
    minute: "2-digit",
    second: "2-digit",
  });
