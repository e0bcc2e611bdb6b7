import {
  coilRate,
  coilStress,
  coilsForRate,
  formatNumber,
  formatValue,
  INCH,
  parseQuantity,
  SPRING_STEEL,
  solidLengthOf,
  type UnitSystem,
  wireForRate,
} from "@armwright/engine";
import { EXIT, type Io } from "../io.ts";
import type { Words } from "../parse-words.ts";
import { Refusal } from "../refusal.ts";
import { pageFor } from "../text/page.ts";
import { hang } from "../text/wrap.ts";
import { lengthFrom, numberFrom } from "./spring-words.ts";

/** A spring's rate out of wire, diameter and coils, or that one of the three which is not given out of the rate. */
export function perform({ values, flags }: Words, io: Io): number {
  const units: UnitSystem = flags.has("metric") ? "metric" : "inch-pound";
  const outside = lengthFrom(values, "outside", units, "positive");
  const givenWire = lengthFrom(values, "wire", units, "positive");
  const coils = numberFrom(values, "coils", 0.5, 100);
  const rate = rateFrom(values, units);
  const squeezed = lengthFrom(values, "squeeze", units, "positive");
  const freeLength = lengthFrom(values, "free", units, "positive");
  if (outside === undefined) throw new Refusal("coil needs --outside: the diameter over the coils.");
  const known = [givenWire, coils, rate].filter((each) => each !== undefined).length;
  if (known !== 2) throw new Refusal("coil needs two of --wire, --coils (active ones) and --rate; it finds the third.");
  const shearModulus = SPRING_STEEL;
  // The mean diameter rests on the wire: a few rounds find both.
  let wire = givenWire ?? outside / 8;
  if (givenWire === undefined) {
    for (let round = 0; round < 60; round += 1)
      wire = wireForRate({ meanDiameter: outside - wire, activeCoils: coils!, shearModulus }, rate!);
  }
  const meanDiameter = outside - wire;
  if (!(meanDiameter / wire >= 2))
    throw new Refusal("Such a wire does not go round such a coil: look at both diameters.");
  const activeCoils = coils ?? coilsForRate({ wire, meanDiameter, shearModulus }, rate!);
  const made = coilRate({ wire, meanDiameter, activeCoils, shearModulus });
  const solid = solidLengthOf(wire, activeCoils + 2, "squared");
  const way = squeezed ?? (freeLength === undefined ? undefined : freeLength - solid);
  if (way !== undefined && way <= 0) throw new Refusal("--free: shorter than the coils stacked solid.");
  const force = way === undefined ? undefined : made * way;
  if (flags.has("json")) {
    const stress = force === undefined ? null : coilStress({ wire, meanDiameter }, force);
    const whole = { units: "SI", rate: made, wire, meanDiameter, activeCoils, solid, squeeze: way ?? null, stress };
    io.out(`${JSON.stringify({ armwrightCoil: 1, ...whole }, null, 2)}\n`);
    return EXIT.sound;
  }
  const page = pageFor(io, units);
  const say = (value: number, dimension: Parameters<typeof formatValue>[1]) => formatValue(value, dimension, units);
  const fine = (metres: number) =>
    units === "metric" ? `${formatNumber(metres * 1000, 2)} mm` : `${formatNumber(metres / INCH, 3)} in`;
  const lines = [
    `Rate ${say(made, "rate")}: wire ${fine(wire)}, ${fine(outside)} over the coils, ${formatNumber(activeCoils, 2)} active coils.`,
    `Solid at about ${say(solid, "length")}, taken with one more dead coil at each end (common practice: squared and ground).`,
    ...(force === undefined || way === undefined
      ? ["Add --free LENGTH for the stress when solid, or --squeeze LENGTH for that of a squeeze."]
      : [
          `Squeezed ${say(way, "length")}${squeezed === undefined ? ", to solid" : ""}: ${say(force, "force")}, stress in the wire ${say(coilStress({ wire, meanDiameter }, force), "stress")}.`,
        ]),
    "k = G d^4 / (8 D^3 N), stress with the Wahl factor (Bhandari, Design of Machine Elements, ch. 10); G 79.3 GPa, from memory. What the wire bears, its maker says.",
  ];
  io.out(`${lines.flatMap((line) => hang("", line, page.width)).join("\n")}\n`);
  return EXIT.sound;
}

function rateFrom(values: Words["values"], units: UnitSystem): number | undefined {
  const text = values.get("rate");
  if (text === undefined) return undefined;
  const parsed = parseQuantity(text, "rate", units);
  if (parsed.ok && parsed.value > 0) return parsed.value;
  throw new Refusal(`--rate: ${JSON.stringify(text)} is not a rate such as 250.`);
}
