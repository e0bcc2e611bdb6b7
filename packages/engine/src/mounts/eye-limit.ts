import type { ShockOption } from "./request.ts";

/** Across an eye whose width is not said, m: common practice, no source. */
export const USUAL_EYE_WIDTH = 1.5 * 0.0254;

/**
 * Most that an eye may tilt on its bolt, rad; null where nothing limits it. The least of what the bearing's maker says and of
 * where the eye's rim touches its tabs: an eye of width w and outside diameter D, tilted by t, is w·cos t + D·sin t wide
 * along the bolt, and has the room between the tabs.
 */
export function eyeLimit({ misalignmentLimit, eyeWidth, eyeDiameter, tabGap }: ShockOption): number | null {
  const stated = misalignmentLimit ?? Number.POSITIVE_INFINITY;
  const touches =
    eyeWidth === undefined || eyeDiameter === undefined || tabGap === undefined
      ? Number.POSITIVE_INFINITY
      : touchesAt(eyeWidth, eyeDiameter, tabGap);
  const least = Math.min(stated, touches);
  return least === Number.POSITIVE_INFINITY ? null : least;
}

/** w·cos t + D·sin t = √(w² + D²)·cos(t − p) with tan p = D/w; infinite where it is never as wide as the gap. */
function touchesAt(width: number, diameter: number, gap: number): number {
  const widest = Math.hypot(width, diameter);
  if (gap >= widest) return Number.POSITIVE_INFINITY;
  if (gap <= width) return 0;
  return Math.atan2(diameter, width) - Math.acos(gap / widest);
}
