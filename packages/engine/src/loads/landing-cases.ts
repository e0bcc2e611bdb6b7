import type { CornerModel } from "../landing/corner-model.ts";
import type { Landing, Peak } from "../landing/landing.ts";
import { STANDARD_GRAVITY } from "../units/convert.ts";
import type { CaseGround } from "./case-forces.ts";
import type { LoadCase } from "./load-case.ts";

/**
 * The worst of a landing as load cases for the document. Where the wheel is loaded most: the ground's load, which hub and
 * spindle feel. Where the stop is pressed most: what passes from wheel to body then, m·(a + g) of the sprung mass m, so that
 * the wheel's own inertia is in it; the damper's share, which a case at rest does not know, goes to the part that holds.
 */
export function landingCases(
  { staticLoad }: CaseGround,
  { sprungMass }: CornerModel,
  landing: Landing,
  name: string,
): readonly LoadCase[] {
  const { wheelLoad, stopForce } = landing.peaks;
  const caseAt = (what: string, peak: Peak, force: number): LoadCase => ({
    name: `${name}, ${what}`,
    at: peak.travel,
    carrier: isOnStop(landing, peak) ? "bump-stop" : "shock",
    vertical: force / staticLoad,
    inward: 0,
    forward: 0,
    acts: "contact",
    of: "corner",
    turning: "rolling",
    isLimited: false,
    from: "a landing",
  });
  const cases: LoadCase[] = [];
  if (wheelLoad.value > 0) cases.push(caseAt("wheel loaded most", wheelLoad, wheelLoad.value));
  if (stopForce.value > 0) {
    const acceleration = landing.history.bodyAcceleration[indexAt(landing, stopForce)] ?? 0;
    const passed = sprungMass * (acceleration + STANDARD_GRAVITY);
    cases.push({ ...caseAt("stop pressed most", stopForce, passed), carrier: "bump-stop" });
  }
  return cases;
}

const indexAt = (landing: Landing, { time }: Peak): number => landing.history.time.indexOf(time);

const isOnStop = (landing: Landing, peak: Peak): boolean => {
  const at = indexAt(landing, peak);
  return (landing.history.stopForce[at] ?? 0) > (landing.history.shockForce[at] ?? 0);
};
