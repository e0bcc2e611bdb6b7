import { type ReactNode, useEffect, useId, useRef } from "react";
import { showPanel } from "../store/bench.ts";
import { BackMark } from "./Mark.tsx";

interface Props {
  readonly title: string;
  readonly children: ReactNode;
  /** Said at the right of the head. */
  readonly note?: string;
  /** Fills the whole screen, as on a phone. */
  readonly isFull?: boolean;
}

/** A sheet laid over the bench: kept in by the keyboard, closed with Escape or the way back. */
export function Dialog({ title, children, note, isFull = false }: Props): ReactNode {
  const dialog = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    const shown = dialog.current;
    // Taken off the page it closes by itself; closing it here would be told like a closing by the user.
    if (shown && !shown.open) shown.showModal();
  }, []);
  return (
    <dialog
      ref={dialog}
      className={isFull ? "panel full" : "panel"}
      aria-labelledby={id}
      onClose={() => showPanel(null)}
    >
      <header className="panel-head">
        <button
          type="button"
          className="pressable square"
          aria-label="Back to the bench"
          onClick={() => showPanel(null)}
        >
          <BackMark />
        </button>
        <h2 id={id}>{title}</h2>
        {note !== undefined && <p className="quiet">{note}</p>}
      </header>
      {children}
    </dialog>
  );
}
