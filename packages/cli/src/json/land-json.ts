import {
  type AxleLanding,
  type CornerModel,
  DEGREE,
  type Dimension,
  type Landing,
  type LoadCase,
  oilHeat,
  type Peak,
  type UnitSystem,
} from "@armwright/engine";
import { numberOut } from "../units-out.ts";

/** Version of the form below. */
const LAND_FORM_VERSION = 1;

export interface Landed {
  readonly car: string;
  readonly title: string;
  readonly model: CornerModel;
  readonly landing: Landing;
  readonly axle: AxleLanding | null;
  readonly cases: readonly LoadCase[];
}

const GRAVITY = 9.80665;

/** A landing as the text of a JSON file, in the document's units: peaks, counts and what was assumed; histories are CSV. */
export function landJson({ car, title, model, landing, axle, cases }: Landed, units: UnitSystem): string {
  const out = (value: number, dimension: Dimension): number => numberOut(value, dimension, units);
  const peak = ({ value, time, travel }: Peak, dimension: Dimension) => ({
    value: out(value, dimension),
    time: Number(time.toPrecision(7)),
    travel: out(travel, "length"),
  });
  const side = (each: Landing) => ({
    travel: { bump: out(each.travel.bump, "length"), droop: out(each.travel.droop, "length") },
    peaks: {
      wheelLoad: peak(each.peaks.wheelLoad, "force"),
      shockForce: peak(each.peaks.shockForce, "force"),
      shockSpeedIn: peak(each.peaks.shockSpeedIn, "speed"),
      shockSpeedOut: peak(each.peaks.shockSpeedOut, "speed"),
      stopForce: peak(each.peaks.stopForce, "force"),
      strapForce: peak(each.peaks.strapForce, "force"),
      bodyAccelerationG: Number((each.peaks.bodyAcceleration.value / GRAVITY).toPrecision(6)),
    },
    bottomings: each.bottomings,
    stopTouches: each.stopTouches,
    strapSnatches: each.strapSnatches,
    flights: each.flights,
    airTime: Number(each.airTime.toPrecision(6)),
    damper: { work: out(each.damper.work, "energy"), meanPowerW: Number(each.damper.meanPower.toPrecision(6)) },
    energyOff: each.energy.off,
  });
  const whole = {
    armwrightLanding: LAND_FORM_VERSION,
    units,
    car,
    event: title,
    assumed: model.assumed.map(({ what }) => what),
    ...side(landing),
    oil: oilHeat(landing.damper.meanPower),
    right: axle && side(axle.right),
    rollDegrees: axle && { most: degrees(axle.roll.most), least: degrees(axle.roll.least) },
    cases: cases.map(({ name, at, carrier, vertical }) => ({
      name,
      at: typeof at === "number" ? out(at, "length") : at,
      carrier,
      vertical: Number(vertical.toPrecision(5)),
    })),
  };
  return `${JSON.stringify(whole, null, 2)}\n`;
}

const degrees = (radians: number): number => Number((radians / DEGREE).toPrecision(6));
