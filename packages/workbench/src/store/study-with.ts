import type { Study } from "@armwright/engine";

/** A study with some of its parts exchanged. What a study makes only when it is asked for stays unmade, as a copy's would not. */
export const studyWith = (study: Study, parts: Partial<Study>): Study => Object.assign(Object.create(study), parts);
