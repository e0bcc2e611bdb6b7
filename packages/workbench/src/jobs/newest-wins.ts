/**
 * For what is asked anew with every movement of the hand: `begin` gives up what was begun before and gives the signal for
 * the new; `isNewest` tells whether it is still the last one.
 */
export interface NewestWins {
  readonly begin: () => AbortSignal;
  readonly isNewest: (signal: AbortSignal) => boolean;
  readonly giveUp: () => void;
}

export function newestWins(): NewestWins {
  let newest: AbortController | undefined;
  return {
    begin: () => {
      newest?.abort();
      newest = new AbortController();
      return newest.signal;
    },
    isNewest: (signal) => newest?.signal === signal && !signal.aborted,
    giveUp: () => newest?.abort(),
  };
}
