import type { Study, UnitSystem } from "@armwright/engine";
import { studyWith } from "../store/study-with.ts";

const shownStudies = new WeakMap<Study, Study>();

/** The same study for the eyes of the other unit system: drawings write their readings in the car's units. */
export function shownIn(study: Study, units: UnitSystem): Study {
  if (study.car.units === units) return study;
  const made = shownStudies.get(study);
  if (made) return made;
  const shown = studyWith(study, { car: { ...study.car, units } });
  shownStudies.set(study, shown);
  return shown;
}
