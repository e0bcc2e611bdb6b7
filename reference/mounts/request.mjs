// The request of each small problem, the same for the optimiser and for the finder's test.
const INCH = 0.0254;

/** One shock, the tubes of the lowest arm, a box of 12 by 8 by 10 in for the upper mount; slack and wrench not looked at. */
export function requestOf(car, corner) {
  const shock = {
    name: "ten",
    shortest: 15.25 * INCH,
    longest: 25.25 * INCH,
    bodyDiameter: 2 * INCH,
    springDiameter: 3.125 * INCH,
    misalignmentLimit: 0.3,
  };
  const middle = car.shock?.upper.point ?? { x: 6.25 * INCH, y: 17 * INCH, z: 31.5 * INCH };
  const half = { x: 6 * INCH, y: 4 * INCH, z: 5 * INCH };
  const shifted = (sign) => ({ x: middle.x + sign * half.x, y: middle.y + sign * half.y, z: middle.z + sign * half.z });
  return {
    shocks: [
      car.name === "Greasewood" ? { ...shock, name: "eight", shortest: 13.375 * INCH, longest: 21.375 * INCH } : shock,
    ],
    upper: { kind: "box", from: shifted(-1), to: shifted(1) },
    lower: corner.members
      .filter(({ body }) => body === corner.arms[0].body)
      .map(({ id, diameter }) => ({
        kind: "tube",
        member: id,
        standoff: diameter / 2 + 0.5 * INCH,
        from: 0.15,
        to: 0.95,
      })),
    step: 0.5 * INCH,
    travel: car.name === "Greasewood" ? { droop: -0.13, bump: 0.13 } : { droop: -8.25 * INCH, bump: 6.75 * INCH },
    reserve: { droop: 0.25 * INCH, bump: 0.375 * INCH },
    requirements: {
      strokeUsed: { least: 0.7, most: 0.92 },
      motionRatio: { least: 0.45, most: 0.95 },
      mayFall: 0.02,
      lean: (50 * Math.PI) / 180,
      toMetal: 0.25 * INCH,
      toTyre: 0.5 * INCH,
    },
    stations: 25,
    easySlack: 0,
    frame: [],
    shortList: 5,
  };
}
