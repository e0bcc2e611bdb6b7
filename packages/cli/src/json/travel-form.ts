import type { ClearanceReport, DirectionReport, LimitReport, Study, TravelReport } from "@armwright/engine";
import { DIMENSIONS } from "../units-out.ts";
import { type Field, fieldsOf } from "./declare.ts";

const l = fieldsOf<LimitReport>();
const limit = l.record("One limit.", {
  id: l.text("Names this limit among all of this car.", ({ id }) => id),
  code: l.text("What kind of limit it is.", ({ code }) => code),
  label: l.text("In the trade's words.", ({ label }) => label),
  nature: l.word("made: a part made to stop the wheel; hard: anything else.", ["hard", "made"], ({ nature }) => nature),
  place: l.text("Place in the car document.", ({ place }) => place),
  travel: l.quantity("Wheel travel at which it is met, bump positive.", "length", ({ travel }) => travel),
  pastAtRide: l.flag("Already past in the design position; travel is then 0.", ({ pastAtRide }) => pastAtRide),
  travelLeft: l.quantity(
    "From the chosen stop outward to it; negative where it comes before the stop.",
    "length",
    ({ travelLeft }) => travelLeft,
  ),
  spare: l.quantityOf(
    "What is left of it with the wheel at the chosen stop.",
    ({ dimension }) => dimension,
    ({ spare }) => spare,
  ),
  dimension: l.word("Of the spare.", DIMENSIONS, ({ dimension }) => dimension),
  spareWord: l.text("What the spare is of, e.g. `of bend`.", ({ spareWord }) => spareWord),
  isProtected: l.flag("The chosen stop keeps the wheel from it.", ({ isProtected }) => isProtected),
});

const s = fieldsOf<DirectionReport["stop"]>();
const stop = s.record("Where the travel ends by the builder's choice.", {
  by: s.word("What ends it.", ["bump-stop", "strap", "shock", "travel"], ({ by }) => by),
  travel: s.quantity("Wheel travel there, bump positive.", "length", ({ travel }) => travel),
  works: s.flag(
    "False where the part chosen never stops the wheel; travel is then where it is stopped instead.",
    ({ works }) => works,
  ),
});

const d = fieldsOf<DirectionReport>();
const direction = d.record("One direction of travel.", {
  stop: d.part(stop, (report) => report.stop),
  limits: d.list("Every limit that the wheel would meet, in order outward.", limit, ({ limits }) => limits),
  first: d.orNothing(
    "Id of the first hard one; null where there is none.",
    l.text("Its id.", ({ id }) => id),
    ({ first }) => first,
  ),
});

const c = fieldsOf<ClearanceReport>();
const clearance = c.record("One pair of things that could meet.", {
  id: c.text("Names this pair among all of this car.", ({ id }) => id),
  label: c.text("In the trade's words.", ({ label }) => label),
  place: c.text("Place in the car document.", ({ place }) => place),
  leastGap: c.quantity("Smallest gap between the stops, negative on overlap.", "length", ({ leastGap }) => leastGap),
  travel: c.quantity("Wheel travel at which it is smallest.", "length", ({ travel }) => travel),
  at: c.point("Where on the car that is.", ({ at }) => at),
  gapAtRide: c.quantity("Gap in the design position.", "length", ({ gapAtRide }) => gapAtRide),
  wanted: c.quantity("Gap wanted.", "length", ({ wanted }) => wanted),
  wantedFrom: c.word("Where that figure comes from.", ["document", "common practice"], ({ wantedFrom }) => wantedFrom),
});

const t = fieldsOf<TravelReport>();
export const travelForm: Field<TravelReport> = t.record("What stops the wheel, upward (bump) and downward (droop).", {
  total: t.quantity(
    "Bump and droop travel together.",
    "length",
    ({ bump, droop }) => bump.stop.travel - droop.stop.travel,
  ),
  bump: t.part(direction, ({ bump }) => bump),
  droop: t.part(direction, ({ droop }) => droop),
  clearances: t.list("Least gap of every pair that could meet.", clearance, ({ clearances }) => clearances),
});

const r = fieldsOf<Study["range"]>();
export const rangeForm = r.record("Wheel travel at which the linkage itself is at full stretch.", {
  bump: r.quantity("Upward.", "length", ({ bump }) => bump.travel),
  droop: r.quantity("Downward, negative.", "length", ({ droop }) => droop.travel),
});
