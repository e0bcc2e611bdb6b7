import { addScaled, distance, midpoint, placeOn } from "@armwright/engine";
import { bar, circle, gapOf, headingOf, offset } from "../path.ts";
import type { Primitive, Spot } from "../primitive.ts";
import { inTrouble, isHeld, type Scene } from "../scene.ts";
import { area, group, patch, stroke } from "../sketch.ts";

const INCH = 0.0254;

/** Half shaft: tube, sleeve of the slip with two hairs for its spline, output flange, joints turned to the shaft. */
export function shaftParts(scene: Scene): { readonly depth: number; readonly parts: Primitive } | null {
  const shaft = scene.car.driveshaft;
  if (!shaft) return null;
  const { view, scale, pen, position } = scene;
  const innerPoint = shaft.inner.centre;
  const outerPoint = placeOn(position, shaft.outer.centre, "spindle");
  const a = view.at(innerPoint);
  const b = view.at(outerPoint);
  const h = headingOf(a, b);
  const shown = gapOf(a, b) / Math.max(distance(innerPoint, outerPoint) * scale, 1e-9);
  const half = Math.max((shaft.diameter / 2) * scale, 1.6 * pen);
  const output = (out: number): Spot => view.at(addScaled(innerPoint, shaft.outputAxis, out));
  const parts: Primitive[] = [
    area("shaft", bar(output(0), output(-1.7 * INCH), 0.75 * INCH * scale)),
    area("shaft", bar(output(-1.7 * INCH), output(-2.2 * INCH), 1.7 * INCH * scale)),
    area("shaft", bar(a, b, half), { meaning: "driveshaft" }),
  ];
  if (shaft.slip) {
    // The sleeve keeps its length as the shaft plunges.
    const sleeve = 0.38 * distance(shaft.inner.centre, shaft.outer.centre) * scale * shown;
    const from = offset(a, h, 0, 0);
    const mouth = offset(a, h, sleeve, 0);
    const stop = inTrouble(scene, "driveshaft.slip");
    for (const side of [-0.4, 0.4]) {
      const spline = Math.min(2.2 * INCH * scale * shown, gapOf(a, b) - sleeve);
      parts.push(
        stroke("shaft", offset(mouth, h, 0, side * half), offset(mouth, h, spline, side * half), {
          weight: "hair",
          ink: "ink-2",
        }),
      );
    }
    parts.push(
      area("shaft", bar(from, mouth, half * 1.5), { meaning: "driveshaft.slip", ink: stop ? "stop" : "ink" }),
      area("shaft", bar(offset(mouth, h, -0.8 * INCH * scale * shown, 0), mouth, half * 1.75), {
        meaning: "driveshaft.slip",
        ink: stop ? "stop" : "ink",
      }),
    );
  }
  parts.push(stroke("shaft", a, b, { ink: "ink-2", weight: "hair", dash: "centre" }));
  return {
    depth: view.depth(midpoint(innerPoint, outerPoint)),
    parts: group("shaft", parts, { meaning: "driveshaft", label: "half shaft" }),
  };
}

/** Joints lie over the rest: a U-joint is a ring with a cross, a constant-velocity joint a ring in a ring. */
export function jointParts(scene: Scene): Primitive[] {
  const shaft = scene.car.driveshaft;
  if (!shaft) return [];
  const { view, position, pen } = scene;
  const inner = view.at(shaft.inner.centre);
  const outer = view.at(placeOn(position, shaft.outer.centre, "spindle"));
  const h = headingOf(inner, outer);
  const size = (scene.detail === "full" ? 9 : 3.2) * pen;
  return (["inner", "outer"] as const).map((side) => {
    const c = side === "inner" ? inner : outer;
    const place = `driveshaft.${side}`;
    const ink = inTrouble(scene, place)
      ? "stop"
      : isHeld(scene, side === "inner" ? "driveshaft.output.point" : "driveshaft.outer.centre")
        ? "hold"
        : "ink";
    const cross = [1, -1].map((way) =>
      stroke(
        "shaft",
        offset(c, h, size * Math.SQRT1_2, way * size * Math.SQRT1_2),
        offset(c, h, -size * Math.SQRT1_2, -way * size * Math.SQRT1_2),
        { ink },
      ),
    );
    return group(
      "shaft",
      [
        area("shaft", circle(c, size), { ink, weight: ink === "stop" ? "outline" : "visible" }),
        ...(shaft[side].kind === "u-joint" ? cross : [area("shaft", circle(c, size * 0.55), { ink, weight: "thin" })]),
        patch("shaft", circle(c, 2 * pen), { fill: ink }),
      ],
      { meaning: place, label: `${side} joint` },
    );
  });
}
