import type { Wheel } from "../../car/car.ts";
import type { WheelDocument } from "../schema.ts";
import { WHEEL_ASSUMED } from "../sections/wheel.ts";
import type { Resolver } from "./resolver.ts";

export function resolveWheel(document: WheelDocument, r: Resolver): Wheel {
  const freeRadius = r.length(document.freeRadius);
  const sectionWidth = r.length(document.sectionWidth);
  const rimDiameter = r.length(document.rimDiameter);
  const rimWidth = r.length(document.rimWidth);
  const sized = { freeRadius, sectionWidth, rimDiameter };
  const rimInside = r.either(
    document.rimInsideDiameter,
    ["wheel", "rimInsideDiameter"],
    WHEEL_ASSUMED.rimInsideDiameter,
    sized,
  );
  return {
    hubFace: r.point(document.hubFace),
    camber: r.either(document.camber, ["wheel", "camber"], WHEEL_ASSUMED.camber, sized),
    toe: r.either(document.toe, ["wheel", "toe"], WHEEL_ASSUMED.toe, sized),
    offset: resolveOffset(document, rimWidth, r),
    freeRadius,
    loadedRadius: r.either(document.loadedRadius, ["wheel", "loadedRadius"], WHEEL_ASSUMED.loadedRadius, sized),
    ...(document.tyreRate === undefined ? {} : { tyreRate: r.value(document.tyreRate, "rate") }),
    sectionWidth,
    shoulderRadius: r.either(document.shoulderRadius, ["wheel", "shoulderRadius"], WHEEL_ASSUMED.shoulderRadius, sized),
    rimDiameter,
    rimWidth,
    rimInsideRadius: rimInside / 2,
  };
}

/**
 * Backspacing is taped from the rim's inboard edge, which lies half the rim's width and one flange in from the
 * centre plane: offset = backspacing − rimWidth/2 − flangeWidth, m.
 */
function resolveOffset(document: WheelDocument, rimWidth: number, r: Resolver): number {
  if (document.backspacing === undefined) {
    return r.either(document.offset, ["wheel", "offset"], WHEEL_ASSUMED.offset, {
      freeRadius: 0,
      sectionWidth: 0,
      rimDiameter: 0,
    });
  }
  const none = { freeRadius: 0, sectionWidth: 0, rimDiameter: 0 };
  const flange = r.either(document.flangeWidth, ["wheel", "flangeWidth"], WHEEL_ASSUMED.flangeWidth, none);
  return r.length(document.backspacing) - rimWidth / 2 - flange;
}
