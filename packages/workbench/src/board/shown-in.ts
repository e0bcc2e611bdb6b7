import type { Study, UnitSystem } from "@armwright/engine";

const shownStudies = new WeakMap<Study, Study>();

/** The same study for the eyes of the other unit system: drawings write their readings in the car's units. */
export function shownIn(study: Study, units: UnitSystem): Study {
  if (study.car.units === units) return study;
  const made = shownStudies.get(study);
  if (made) return made;
  const shown = { ...study, car: { ...study.car, units } };
  shownStudies.set(study, shown);
  return shown;
}
