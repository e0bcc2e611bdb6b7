import type { UnitSystem } from "@armwright/engine";
import { STEPS, type StepId } from "../steps/steps.ts";
import type { ThemeChoice } from "./bench-state.ts";

/** What this browser remembers of how its user likes to look at cars. */
export interface Preferences {
  readonly units: UnitSystem;
  readonly theme: ThemeChoice;
  readonly step: StepId;
}

const KEY = "armwright.preferences";

const START: Preferences = { units: "inch-pound", theme: "auto", step: "travel" };

export function keptPreferences(): Preferences {
  const kept = readKept();
  return {
    units: kept["units"] === "metric" ? "metric" : START.units,
    theme: kept["theme"] === "light" || kept["theme"] === "dark" ? kept["theme"] : START.theme,
    step: STEPS.find(({ id }) => id === kept["step"])?.id ?? START.step,
  };
}

const ROOM = "armwright.sheet-room";

/** Whether the sheet takes the charts' place at full height, as the user chose last; null leaves it to the step. */
export function keptSheetRoom(): boolean | null {
  try {
    const kept = localStorage.getItem(ROOM);
    return kept === null ? null : kept === "more";
  } catch {
    return null;
  }
}

export function keepSheetRoom(isRoomy: boolean): void {
  try {
    localStorage.setItem(ROOM, isRoomy ? "more" : "less");
  } catch {
    // A browser that keeps nothing still works.
  }
}

/** True where the user has been here before: a first visit takes the units from the car. */
export const hasPreferences = (): boolean => Object.keys(readKept()).length > 0;

export function keepPreferences(preferences: Preferences): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(preferences));
  } catch {
    // A browser that keeps nothing still works.
  }
}

function readKept(): Readonly<Record<string, unknown>> {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? "{}");
    return typeof kept === "object" && kept !== null ? (kept as Record<string, unknown>) : {};
  } catch {
    return {};
  }
}
