import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { cornerModel } from "../../src/landing/corner-model.ts";
import type { Landing } from "../../src/landing/landing.ts";
import type { LandingEvent } from "../../src/landing/landing-event.ts";
import { USUAL_STEPS } from "../../src/landing/run-corner.ts";
import { runLanding } from "../../src/landing/run-landing.ts";
import { study } from "../../src/study/study.ts";
import { carOfDocument } from "../example-documents.ts";

// Made by reference/landing/rebuild.sh: SciPy's DOP853 on the whole model, written from the equations alone.
interface Reference {
  readonly rest: number;
  readonly drop: number;
  readonly bump: { readonly height: number; readonly length: number; readonly speed: number };
  readonly events: readonly {
    readonly name: "drop" | "bump";
    readonly until: number;
    readonly step: number;
    readonly peaks: Readonly<
      Record<"wheelLoad" | "shockForce" | "stopForce" | "strapForce", { value: number; time: number }>
    >;
    /** body, its speed, wheel, its speed at each step. */
    readonly states: readonly (readonly [number, number, number, number])[];
  }[];
}
const read = (name: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../../../reference/landing/${name}`, import.meta.url), "utf8"));
const reference = read("landing.json") as Reference;

const made = study(carOfDocument(read("car.json")));
const found = cornerModel(made);
if (!found.ok) throw new Error(found.need);
const { model } = found;

/**
 * Steps so short that what differs is the model: then heights (m, over 1.2 s) agree to the reading between milliseconds,
 * measured 2.2e-7, and peaks to 5e-5. The usual steps: 1.7e-5 m, and 0.4 % of the shock's peak, which is metal on metal.
 */
const SETTINGS = [
  ["fine steps", { error: 1e-12, longest: 1e-4 }, 5e-7, 1e-4],
  ["usual steps", USUAL_STEPS, 2e-5, 5e-3],
] as const;
const CASES = reference.events.flatMap((event) => SETTINGS.map((setting) => [event.name, ...setting, event] as const));

/** Height between two of the reference's steps: a cubic by both ends' heights and speeds. */
function heightAt({ states, step }: Reference["events"][number], time: number, place: 0 | 2): number {
  const index = Math.min(Math.floor(time / step), states.length - 2);
  const s = (time - index * step) / step;
  const [a, b] = [states[index]!, states[index + 1]!];
  const [y0, m0, y1, m1] = [a[place], a[place + 1]! * step, b[place], b[place + 1]! * step];
  return (1 + 2 * s) * (1 - s) ** 2 * y0 + s * (1 - s) ** 2 * m0! + s * s * (3 - 2 * s) * y1 + s * s * (s - 1) * m1!;
}

describe("a landing on the whole nonlinear model against a general library of integrators", () => {
  const events: Readonly<Record<"drop" | "bump", LandingEvent>> = {
    drop: { kind: "drop", height: reference.drop },
    bump: { kind: "bump", ...reference.bump, oneWheel: false },
  };

  it("rests where it rests", () => {
    expect(Math.abs(model.rest - reference.rest)).toBeLessThan(1e-7);
  });

  it.each(CASES)("%s, %s: heights and peaks", (name, _, rules, heights, share, event) => {
    const landing: Landing = runLanding(made.corner, model, events[name], rules);
    const { time, bodyHeight, wheelHeight } = landing.history;
    let compared = 0;
    let worst = 0;
    for (let i = 0; i < time.length && time[i]! <= event.until; i += 1) {
      worst = Math.max(
        worst,
        Math.abs(bodyHeight[i]! - heightAt(event, time[i]!, 0)),
        Math.abs(wheelHeight[i]! - heightAt(event, time[i]!, 2)),
      );
      compared += 1;
    }
    expect(compared).toBeGreaterThan(400);
    expect(worst).toBeLessThan(heights);
    for (const key of ["wheelLoad", "shockForce", "stopForce", "strapForce"] as const) {
      const { value, time: at } = event.peaks[key];
      const peak = landing.peaks[key];
      expect(Math.abs(peak.value - value), key).toBeLessThanOrEqual(share * value);
      if (value > 0) expect(Math.abs(peak.time - at), key).toBeLessThan(0.001);
    }
  });
});
