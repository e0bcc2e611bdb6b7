// Writes problems.json: what optimise.py is to solve, in metres, taken from the example cars as the engine reads them.
import { readFileSync, writeFileSync } from "node:fs";
import { spinAxisOf, stations, study, wheelCentreOf } from "@armwright/engine";
import { readCarDocument } from "@armwright/engine/document";

const PROBLEMS = [
  {
    name: "saltbush, upper link's inner end, camber",
    car: "saltbush",
    question: "constant-camber",
    point: "upperLink.inner",
    reach: { y: 0.05, z: 0.05 },
  },
  {
    name: "saltbush, upper link's outer end, camber",
    car: "saltbush",
    question: "constant-camber",
    point: "upperLink.outer",
    reach: { y: 0.05, z: 0.05 },
  },
  {
    name: "juniper, upper link's inner end, camber",
    car: "juniper",
    question: "constant-camber",
    point: "upperLink.inner",
    reach: { y: 0.08, z: 0.05 },
  },
  {
    name: "saltbush, chassis pivots in and out, plunge",
    car: "saltbush",
    question: "least-plunge",
    point: "chassis-pivots",
    reach: { y: 0.05 },
  },
  {
    name: "saltbush, chassis pivots, plunge",
    car: "saltbush",
    question: "least-plunge",
    point: "chassis-pivots",
    reach: { y: 0.03, z: 0.03 },
  },
  {
    name: "juniper, gearbox output, plunge",
    car: "juniper",
    question: "least-plunge",
    point: "shaft-inner",
    reach: { y: 0.05, z: 0.03 },
  },
  {
    name: "juniper, rear inner pivot, toe",
    car: "juniper",
    question: "least-toe",
    point: "lowerArm.innerRear",
    reach: { x: 0.02, y: 0.02, z: 0.02 },
  },
];

const problems = PROBLEMS.map((problem) => {
  const reading = readCarDocument(
    readFileSync(new URL(`../../examples/${problem.car}.car.json`, import.meta.url), "utf8"),
  );
  if (!reading.ok) throw new Error(`${problem.car} does not read`);
  const { car } = reading;
  const { bump, droop } = study(car).travel;
  const from = Math.round(droop.stop.travel * 1000) / 1000;
  const to = Math.round(bump.stop.travel * 1000) / 1000;
  const { lowerArm, upperLink } = car.linkage;
  return {
    ...problem,
    from,
    to,
    travels: [...stations(from, to, 17)],
    points: {
      "lowerArm.innerFront": lowerArm.innerFront,
      "lowerArm.innerRear": lowerArm.innerRear,
      "lowerArm.outerFront": lowerArm.outerFront,
      "lowerArm.outerRear": lowerArm.outerRear,
      "upperLink.inner": upperLink.inner,
      "upperLink.outer": upperLink.outer,
      "shaft-inner": car.driveshaft.inner.centre,
      "shaft-outer": car.driveshaft.outer.centre,
      wheelCentre: wheelCentreOf(car.wheel),
      spinAxis: spinAxisOf(car.wheel),
    },
  };
});
writeFileSync(new URL("problems.json", import.meta.url), `${JSON.stringify(problems, null, 1)}\n`);
