import { area, type Box, bar, circle, type Primitive, rectangle, spot, stroke, text } from "@armwright/drawing";
import { distance, type ShaftJoint, unitOf } from "@armwright/engine";
import { levelDimensions } from "../paper/level-dimensions.ts";
import { endsOf } from "./ends-of-travel.ts";
import { flowSheets } from "./flow-sheets.ts";
import { lengthsIn, type Makings, type Sheet, tape } from "./sheet.ts";

/** The half shaft with its two joints: what it must measure, at ride height and at both ends of the travel. */
export function shaftSheets(makings: Makings): readonly Sheet[] {
  const { driveshaft, units } = makings.study.car;
  if (!driveshaft) return [];
  const mark = (metres: number): string => `${tape(makings, metres)} ${unitOf("length", units)}`;
  const joints = distance(driveshaft.inner.centre, driveshaft.outer.centre);
  return flowSheets(
    { id: "shaft", title: "Half shaft, make 2", note: `left and right alike; not to scale; ${lengthsIn(makings)}` },
    [
      { kind: "drawn", height: 56, draw: (box) => drawn(makings, box, joints) },
      {
        kind: "table",
        columns: [
          { head: "", share: 58 },
          { head: "must read", share: 24, align: "end", bold: true },
          { head: "left, as built", share: 18 },
          { head: "right, as built", share: 18 },
        ],
        rows: [
          ["joint centre to joint centre at ride height", mark(joints)],
          ...endsOf(makings, "shaftLength", "joint to joint"),
          ...(driveshaft.slip ? [["spline in at ride height", mark(driveshaft.slip.engagement)]] : []),
          ...endsOf(makings, "slipEngagement", "spline in"),
          ...(driveshaft.slip ? [["spline in, never less than", mark(driveshaft.slip.leastEngagement)]] : []),
          ["tube", mark(driveshaft.diameter)],
          ...endsOf(makings, "innerJoint", "inner joint bends"),
          ...endsOf(makings, "outerJoint", "outer joint bends"),
        ].map((row) => [...row, "", ""]),
        style: { isForm: true, size: "text" },
      },
      {
        kind: "words",
        words:
          "Cut it last, from the tacked and cycled car, not from this sheet. Yokes at both ends of the shaft in one plane. Slide it through by hand at full droop and full bump before it is welded. Welds of a shaft run out and break: have it welded and trued by a driveline shop. Never turn it under power with the wheels hanging free.",
        style: { ink: "ink-2" },
      },
    ],
    makings,
  );
}

/** The shaft from the side with its joints, its tube and the spline that slides. */
function drawn(makings: Makings, box: Box, joints: number): Primitive[] {
  const { driveshaft } = makings.study.car;
  if (!driveshaft) return [];
  const y = box.y + 20;
  const [left, right] = [box.x + 18, box.x + box.width - 18];
  const [tubeTo, sleeveFrom, sleeveTo] = [right - 13, left + 13, left + 62];
  const half = 5;
  const parts: Primitive[] = [
    area("shaft", rectangle(sleeveFrom + 26, y - half * 0.62, tubeTo - sleeveFrom - 26, 2 * half * 0.62)),
    area("shaft", bar(spot(sleeveTo + 14, y), spot(tubeTo, y), half)),
  ];
  if (driveshaft.slip) {
    parts.push(
      area("shaft", bar(spot(sleeveFrom, y), spot(sleeveTo, y), half * 1.35)),
      ...[-1, 1].map((way) =>
        stroke("spline", spot(sleeveFrom + 26, y + way * 2.4), spot(sleeveTo, y + way * 2.4), {
          weight: "thin",
          dash: "short",
        }),
      ),
      stroke("spline", spot(sleeveFrom + 26, y - 2.4), spot(sleeveFrom + 26, y + 2.4), {
        weight: "thin",
        dash: "short",
      }),
    );
  } else parts.push(area("shaft", bar(spot(sleeveFrom, y), spot(tubeTo, y), half)));
  parts.push(
    stroke("shaft", spot(left - 9, y), spot(right + 9, y), { weight: "hair", dash: "centre", ink: "ink-2" }),
    ...joint(left, y, driveshaft.inner),
    ...joint(right, y, driveshaft.outer),
    text("mark", spot(left, y - 13), "GEARBOX", { anchor: "middle", ink: "ink", bold: true }),
    text("mark", spot(right, y - 13), "WHEEL", { anchor: "middle", ink: "ink", bold: true }),
  );
  const wishes = [
    ...(driveshaft.slip
      ? [
          {
            id: "spline",
            from: spot(sleeveFrom + 26, y),
            to: spot(sleeveTo, y),
            text: `in ${tape(makings, driveshaft.slip.engagement)}`,
            offsets: [13, 15],
          },
        ]
      : []),
    {
      id: "joints",
      from: spot(left, y),
      to: spot(right, y),
      text: `joint to joint at ride ${tape(makings, joints)}`,
      offsets: [24, 27],
    },
  ];
  parts.push(...levelDimensions(wishes, { from: spot(left, y), to: spot(right, y), half: 8 }, box));
  return parts;
}

/** A joint: a ring, with a cross where it is a U-joint. */
function joint(x: number, y: number, { kind }: ShaftJoint): Primitive[] {
  const r = 6.5;
  const k = r * Math.SQRT1_2;
  return [
    area("joint", circle(spot(x, y), r)),
    ...(kind === "u-joint"
      ? [
          stroke("joint", spot(x - k, y - k), spot(x + k, y + k), { weight: "visible" }),
          stroke("joint", spot(x - k, y + k), spot(x + k, y - k), { weight: "visible" }),
        ]
      : [area("joint", circle(spot(x, y), r * 0.5))]),
  ];
}
