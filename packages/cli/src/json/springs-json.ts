import type { SpringChoices, SpringStudy, Study, UnitSystem } from "@armwright/engine";
import { numberOut } from "../units-out.ts";

/** Version of the form below. */
const SPRINGS_FORM_VERSION = 1;
type Dimension = Parameters<typeof numberOut>[1];

/** The springs as the text of a JSON file, in the document's units; null where there is no number. */
export function springsJson(
  { car, findings }: Study,
  made: SpringStudy,
  choices: SpringChoices | null,
  units: UnitSystem,
): string {
  const out = (value: number | null, dimension: Dimension): number | null =>
    value === null || !Number.isFinite(value) ? null : numberOut(value, dimension, units);
  const spring = ({ rate, freeLength, solidLength }: SpringStudy["springs"]["main"]) => ({
    rate: out(rate, "rate"),
    freeLength: out(freeLength, "length"),
    solidLength: out(solidLength, "length"),
  });
  const { rest, crossover } = made;
  const whole = {
    armwrightSprings: SPRINGS_FORM_VERSION,
    units,
    car: car.name,
    rest: {
      on: rest.on,
      travel: out(rest.travel, "length"),
      shockLength: out(rest.state.shockLength, "length"),
      bumpLeft: out(made.left.bump, "length"),
      droopLeft: out(made.left.droop, "length"),
      sagShare: out(made.sagShare, "percent"),
      preloadForDesign: out(made.preloadForDesign, "length"),
    },
    frequency: {
      ride: out(made.frequency.ride, "frequency"),
      beyondCrossover: out(made.frequency.beyondCrossover, "frequency"),
    },
    crossover: crossover && {
      by: crossover.by,
      shockLength: out(crossover.shockLength, "length"),
      travel: out(crossover.travel, "length"),
      force: out(crossover.force, "force"),
    },
    looseAtDroop: out(made.looseAtDroop, "length"),
    positions: made.positions.map(({ name, state, frequency, damping }) => ({
      name,
      travel: out(state.travel, "length"),
      shockLength: out(state.shockLength, "length"),
      motionRatio: out(state.motionRatio, "ratio"),
      springForce: out(state.springs.force, "force"),
      springEnergy: out(state.springs.energy, "energy"),
      gasForce: out(state.gasForce, "force"),
      isSolid: state.springs.isSolid,
      shockRate: out(state.springs.isSolid ? null : state.shockRate, "rate"),
      wheelForce: out(state.wheelForce, "force"),
      wheelRate: out(state.springs.isSolid ? null : state.wheelRate, "rate"),
      frequency: out(frequency, "frequency"),
      criticalDampingAtShock: out(damping?.atShock ?? null, "damping"),
      springs: state.springs.members.map((member) => ({
        name: member.name,
        length: out(member.length, "length"),
        leftToSolid: out(member.leftToSolid, "length"),
      })),
    })),
    findings: findings
      .filter(({ place }) => place.startsWith("shock.springs"))
      .map(({ code, gravity }) => ({ code, gravity })),
    choices: choices && {
      sets: choices.sets,
      refused: choices.refused,
      fitting: choices.fitting.map((choice) => ({
        main: { name: choice.main.name, ...spring(choice.main) },
        tender: choice.tender ? { name: choice.tender.name, ...spring(choice.tender) } : null,
        preload: out(choice.springs.preload, "length"),
        preloadTurns: out(choice.preloadTurns, "turns"),
        crossoverAt: out(choice.springs.crossoverAt ?? null, "length"),
        frequency: out(choice.frequency, "frequency"),
        frequencyAtBump: out(choice.frequencyAtBump, "frequency"),
        leftToSolid: out(choice.leftToSolid, "length"),
        heavier: { lower: out(choice.heavier.lower, "length"), turns: out(choice.heavier.turns, "turns") },
        lighter: { lower: out(choice.lighter.lower, "length"), turns: out(choice.lighter.turns, "turns") },
      })),
    },
  };
  return `${JSON.stringify(whole, null, 2)}\n`;
}
