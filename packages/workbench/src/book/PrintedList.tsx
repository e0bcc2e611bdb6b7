import type { ReactNode } from "react";
import type { Printed } from "./book-calls.ts";
import { type PrintedState, printedStates } from "./printed-state.ts";

/** Whether the paper that was made of this car still holds: every printed book, not the newest alone. */
export function PrintedList({
  printed,
  present,
}: {
  readonly printed: readonly Printed[];
  readonly present: string;
}): ReactNode {
  const states = printedStates(printed, present);
  const holding = states.find(({ holds }) => holds);
  const old = states.filter(({ holds }) => !holds);
  return (
    <div role="status" className="printed">
      {states.length === 0 && <p className="quiet">Nothing has been printed of this car yet.</p>}
      {holding && (
        <p>
          Paper made from {holding.fingerprint} ({daysOf(holding)}) still holds.
        </p>
      )}
      {old.length > 0 && (
        <>
          <p className="fault">
            OUT OF DATE, the car has changed since:{" "}
            {old.length === 1 ? "throw this paper away" : `throw these ${old.length} books away`}.
          </p>
          <ul>
            {old.map((state) => (
              <li key={state.fingerprint}>
                made from {state.fingerprint}, printed {daysOf(state)}
              </li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}

const MOST_DAYS = 3;

function daysOf({ days }: PrintedState): string {
  const shown = days.slice(0, MOST_DAYS).map(written).join(", ");
  return days.length > MOST_DAYS ? `${shown} and before` : shown;
}

/** `2026-11-25` as a day is written where the builder is. */
const written = (day: string): string =>
  new Date(`${day}T12:00:00`).toLocaleDateString(undefined, { day: "numeric", month: "long", year: "numeric" });
