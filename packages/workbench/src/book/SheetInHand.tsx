import type { CarDocument } from "@armwright/engine/document";
import { type ReactNode, useState } from "react";
import { useStore } from "zustand";
import { connection } from "../store/connection.ts";
import { type SheetState, sheetState, tidyFingerprint } from "./printed-state.ts";

const WHOLE = /^[0-9A-F]{4}-[0-9A-F]{4}-[0-9A-F]{4}$/;

/** A sheet in the hand: the builder types what stands at its foot, and is told whether it still holds. */
export function SheetInHand({
  document,
  print,
}: {
  readonly document: CarDocument;
  readonly print: string;
}): ReactNode {
  const name = useStore(connection, (state) => state.name);
  const [typed, setTyped] = useState("");
  const [answer, setAnswer] = useState<{ readonly of: string; readonly state: SheetState } | null>(null);
  const fingerprint = tidyFingerprint(typed);
  const look = async (): Promise<void> => {
    const state = await sheetState(name, document, fingerprint).catch((): SheetState => ({ is: "out of reach" }));
    setAnswer({ of: `${fingerprint} ${print}`, state });
  };
  const shown = answer?.of === `${fingerprint} ${print}` ? answer.state : null;
  return (
    <form
      className="sheet-in-hand"
      onSubmit={(event) => {
        event.preventDefault();
        if (WHOLE.test(fingerprint)) void look();
      }}
    >
      <label>
        A sheet in your hand: “made from”, at its foot
        <input
          value={typed}
          onChange={(event) => setTyped(event.target.value)}
          placeholder={print}
          autoComplete="off"
          autoCapitalize="characters"
          spellCheck={false}
        />
      </label>
      <button type="submit" className="pressable" disabled={!WHOLE.test(fingerprint)}>
        Does it still hold?
      </button>
      <p role="status">{shown && says(shown)}</p>
    </form>
  );
}

const MOST_NAMED = 4;

function says(state: SheetState): string {
  switch (state.is) {
    case "current":
      return "It holds: it was made from the car as it is now.";
    case "unknown":
      return "Made from no state of this car that its history still has: print it anew.";
    case "out of reach":
      return "The car's history is out of reach: ask again when the server is back.";
    case "out of date": {
      const { changed, since } = state;
      const until = since === null ? "" : `the car was so until ${new Date(since).toLocaleDateString()}. `;
      const named = changed.slice(0, MOST_NAMED).join(", ");
      const more = changed.length > MOST_NAMED ? ` and ${changed.length - MOST_NAMED} more` : "";
      const count = changed.length === 1 ? "1 field has" : `${changed.length} fields have`;
      return `OUT OF DATE: ${until}${count} changed since: ${named}${more}. Print it anew, throw this one away.`;
    }
  }
}
