import {
  hangShock,
  lowerKeepOut,
  nearKeepOut,
  notchKeepOut,
  type Opening,
  OWN_SHOCK,
  type ShockOption,
  type UnitSystem,
} from "@armwright/engine";
import { bench, edit } from "../store/bench.ts";
import { shown } from "../words/shown.ts";
import { mountsBench } from "./mounts-store.ts";
import { requestNow } from "./request-now.ts";
import { openingWords } from "./words.ts";

/** A hair more than what opens a place, so that rounding does not close it again, m. */
const HAIR = 1e-6;

export interface Way {
  readonly label: string;
  readonly apply: () => void;
}

/**
 * What a press makes of a change, a way each: to the car (one step that can be undone) or to what is asked. None where it
 * cannot be done by a press.
 */
export function waysToApply(opening: Opening): readonly Way[] {
  const { change, by, notch } = opening;
  const { document, live, units } = bench.getState();
  const { study, car } = live;
  if (!document || !study || !car) return [];
  const state = mountsBench.getState();
  const request = requestNow(study, state);
  if (!request) return [];
  const { travel, requirements } = request;
  const set = mountsBench.setState;
  switch (change.kind) {
    case "less-bump":
      return [{ label: "Ask for that", apply: () => set({ travel: { ...travel, bump: travel.bump - by - HAIR } }) }];
    case "less-droop":
      return [{ label: "Ask for that", apply: () => set({ travel: { ...travel, droop: travel.droop + by + HAIR } }) }];
    case "wider-stroke-window": {
      const { least, most } = requirements.strokeUsed;
      const strokeUsed = { least: Math.max(0, least - by - HAIR), most: Math.min(1, most + by + HAIR) };
      return [{ label: "Ask for that", apply: () => set({ requirements: { ...requirements, strokeUsed } }) }];
    }
    case "shorter-wrench": {
      const { wrench } = requirements;
      if (!wrench) return [];
      const shorter = { ...wrench, length: Math.max(0, wrench.length - by - HAIR) };
      return [{ label: "Ask for that", apply: () => set({ requirements: { ...requirements, wrench: shorter } }) }];
    }
    case "longer-shock":
    case "shorter-shock": {
      const more = change.kind === "longer-shock" ? by : -by;
      const wanted = request.shocks.map((shock) => stretched(shock, more, units));
      return [
        {
          label: "Look with that",
          apply: () =>
            set((before) => ({
              wanted: [...before.wanted.filter((old) => wanted.every(({ name }) => name !== old.name)), ...wanted],
              chosen: wanted.map(({ name }) => name),
            })),
        },
      ];
    }
    case "lower-keep-out": {
      const operations = lowerKeepOut(document, change.keepOut, by);
      if (!operations) return [];
      const words = `${change.keepOut} lowered by ${shown(by, "length", units)}`;
      return [{ label: "Lower it on the drawing", apply: () => edit(operations, words) }];
    }
    case "notch-keep-out": {
      const nearer = nearKeepOut(document, car, change.keepOut, by);
      const closer: readonly Way[] = nearer
        ? [{ label: "Let it come nearer", apply: () => edit(nearer, openingWords(opening, units)) }]
        : [];
      const cut = notch && notchKeepOut(document, car, notch);
      if (!cut) return closer;
      // The notch is made for this one place, so the shock goes there with it.
      const { operations } = hangShock(document, car, opening.proposal);
      const label = "Cut the notch and hang the shock there";
      const words = `${change.keepOut} notched, and the shock hung there`;
      return [...closer, { label, apply: () => edit([...cut, ...operations], words) }];
    }
  }
}

/** A shock with more or less stroke, named by what it is. */
function stretched(shock: ShockOption, more: number, units: UnitSystem): ShockOption {
  const name = shock.name === OWN_SHOCK ? "own" : shock.name;
  const amount = shown(Math.abs(more), "length", units);
  return {
    ...shock,
    name: `${name}, ${amount} ${more > 0 ? "more" : "less"} stroke`,
    shortest: shock.shortest + more,
    longest: shock.longest + 2 * more,
  };
}
