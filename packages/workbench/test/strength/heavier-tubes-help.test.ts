import { study, studyStrength } from "@armwright/engine";
import { expect, test } from "vitest";
import { heavierTubesHelp } from "../../src/strength/heavier-tubes-help.ts";
import { exampleCar } from "../mounts/car.ts";

const found = studyStrength(study(exampleCar("saltbush").car))!;
const arm = found.arms[0]!;
const weakest = arm.checks[0]!;
const other = found.checks.find((check) => !arm.checks.includes(check))!;

test("heavier tubes are told with what they bring, and only where they bring something", () => {
  const { alternatives } = found;
  const present = alternatives.find(({ isPresent }) => isPresent)!;
  const heavier = alternatives.filter(({ mass }) => mass > present.mass);
  expect(heavier.length).toBeGreaterThan(0);
  expect(heavierTubesHelp(weakest, found, "inch-pound")).toMatch(
    /^Tubes of .*: \+\S+\slb, weakest factor then [\d.]+\.$/,
  );
  const noBetter = alternatives.map((each) =>
    each.isPresent ? each : { ...each, factor: (present.factor ?? 0) * 0.9 },
  );
  expect(heavierTubesHelp(weakest, { ...found, arms: found.arms, alternatives: noBetter }, "inch-pound")).toBeNull();
  expect(heavierTubesHelp(other, found, "inch-pound")).toBeNull();
});
