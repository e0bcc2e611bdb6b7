import { area, type Primitive, rectangle, spot, stroke, text } from "@armwright/drawing";
import { paragraph } from "../paper/words.ts";
import type { Makings, Sheet } from "./sheet.ts";

/** One thing to make, and what has to be true before going on. */
interface Gate {
  readonly make: string;
  readonly measure: string;
  readonly otherwise: string;
}

interface Words {
  readonly jigTrue: string;
}

/** The builder's own sequence: common practice. */
const gates = ({ jigTrue }: Words): readonly Gate[] => [
  {
    make: "Level the car on jack stands at ride height. Chalk the centreline and the datum on the floor.",
    measure: `Both frame rails level within 0.2°, the same height left and right within ${jigTrue}.`,
    otherwise: "Shim the stands. Every number of this book counts from here.",
  },
  {
    make: "Build the jigs by the jig sheets, left and right. Mark FRONT, OUT and UP on each.",
    measure: `Every distance between centres, diagonals too, as printed within ${jigTrue}.`,
    otherwise: "Move the place that all its wrong distances share.",
  },
  {
    make: "Cut and cope tubes by the cut list; dry fit in the jig with the real bolts and rod ends or dummies.",
    measure: "Gaps at copes no wider than a welding rod; rod ends at mid thread.",
    otherwise: "Recut the tube, do not fill the gap.",
  },
  {
    make: "Tack arms, spindles and chassis tabs. Never weld out yet.",
    measure: "Out of the jig, the distances again.",
    otherwise: "Break the tack and set it again: cheap now, dear later.",
  },
  {
    make: "Raise the car evenly so that the wheel can hang. Fit the corner, springs off, gas let down, a drilled bar or the bare shock in the shock's place.",
    measure: "Cycle droop to bump with the real tyre. Fill in the cycle cards, each height.",
    otherwise: "Enter the readings as built: the likeliest cause and what to turn or move comes back.",
  },
  {
    make: "Look along every rod end, joint, tyre and hose at each height.",
    measure: "Nothing touches, nothing binds; the gaps on the cards.",
    otherwise: "Stop here. Change the design first, print anew, throw this book away.",
  },
  {
    make: "Weld out in the jig, bolts or dummy joints in, sides alternating, letting it cool.",
    measure: "Distances and cycle cards again, both sides.",
    otherwise: "Shim, turn rod ends by the adjuster sheet, or cut and set again.",
  },
  {
    make: "Springs, straps, stops, hoses on. Set height, camber and toe by the settings sheet.",
    measure: "Strap tight before the shock is open, stop solid before it is closed.",
    otherwise: "Another strap hole or stop collar position; never let the shock be the stop.",
  },
  {
    make: "First runs slow, on ground you know.",
    measure: "Torque every bolt anew, look for cracks, look where the shaft's ring and the pads' paint went.",
    otherwise: "Park it. A licensed engineer and the rule book decide what is safe.",
  },
];

/** What to make, what to measure before going on, what to do when it differs. */
export function orderSheets({ room, study }: Makings): readonly Sheet[] {
  const parts: Primitive[] = [];
  const head = paragraph(
    "Go on only when the gate is open: tick it, and write who looked. Common practice, not law.",
    room.x,
    room.y,
    room.width,
    { ink: "ink-2" },
  );
  parts.push(...head.parts);
  let top = head.bottom + 2;
  const jigTrue = study.car.units === "metric" ? "1.5 mm" : "1/16 in";
  gates({ jigTrue }).forEach((gate, index) => {
    const left = room.x + 11;
    const width = room.width - 11 - 26;
    const make = paragraph(gate.make, left, top, width, { size: "text", bold: true });
    const measure = paragraph(`Gate: ${gate.measure}`, left, make.bottom, width, { size: "text" });
    const otherwise = paragraph(`If not: ${gate.otherwise}`, left, measure.bottom, width);
    parts.push(
      text("order", spot(room.x, top + 5), String(index + 1), { size: "title", bold: true, ink: "ink" }),
      ...make.parts,
      ...measure.parts,
      ...otherwise.parts,
      area("order", rectangle(room.x + room.width - 23, top + 1, 7, 7), { fill: "none" }),
      text("order", spot(room.x + room.width - 14, top + 6), "open", { ink: "ink-2" }),
      stroke("order", spot(room.x + room.width - 23, top + 17), spot(room.x + room.width, top + 17), {
        weight: "hair",
      }),
    );
    top = otherwise.bottom + 1.6;
    parts.push(stroke("order", spot(room.x, top), spot(room.x + room.width, top), { weight: "hair", ink: "ink-2" }));
    top += 1.4;
  });
  return [{ id: "order", title: "Order of work, with gates", note: "springs off until gate 8", parts }];
}
