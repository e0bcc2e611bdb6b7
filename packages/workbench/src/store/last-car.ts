const LAST = "armwright.last-car";

/** The car that was worked on last in this browser. */
export function lastCar(): string | null {
  try {
    return localStorage.getItem(LAST);
  } catch {
    return null;
  }
}

export function keepLastCar(name: string): void {
  try {
    localStorage.setItem(LAST, name);
  } catch {
    // A browser that keeps nothing still works.
  }
}
