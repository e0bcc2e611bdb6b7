import {
  type AxleLanding,
  caseGround,
  cornerModel,
  type Landing,
  type LandingNeed,
  landingCases,
  makeCorner,
  runAxle,
  runLanding,
  study,
  USUAL_GYRATION,
} from "@armwright/engine";
import { readCar } from "../car-file.ts";
import { landingCsv } from "../csv/landing-csv.ts";
import { EXIT, type Io } from "../io.ts";
import { landJson } from "../json/land-json.ts";
import { landingEvent, sayEvent } from "../landing-words.ts";
import { deliver } from "../output.ts";
import type { Words } from "../parse-words.ts";
import { Refusal } from "../refusal.ts";
import { landLines } from "../report/land.ts";
import { pageFor } from "../text/page.ts";
import { hang } from "../text/wrap.ts";

export function perform(words: Words, io: Io): number {
  const { operands, flags } = words;
  if (flags.has("csv") && flags.has("json")) throw new Refusal("--csv and --json are two ways to write: keep one.");
  const reading = readCar(operands[0]!, io);
  if (!reading) return EXIT.refused;
  const { car } = reading;
  const event = landingEvent(words, car.units);
  const made = study(car);
  const found = cornerModel(made);
  if (!found.ok) throw new Refusal(NEEDS[found.need]);
  const { model } = found;
  const { corner } = made;
  const isOneSided =
    (event.kind === "drop" && event.otherLower !== undefined) || (event.kind === "bump" && event.oneWheel);
  let landing: Landing;
  let axle: AxleLanding | null = null;
  if (isOneSided && (event.kind === "drop" || event.kind === "bump")) {
    const other = car.right ? { corner: makeCorner(car.right), model: rightModel(car.right) } : { corner, model };
    const halfTrack = corner.wheelCentre.y;
    const gyration = USUAL_GYRATION * halfTrack;
    axle = runAxle(
      { left: corner, right: other.corner },
      { left: model, right: other.model, halfTrack, gyration },
      event,
    );
    landing = axle.left;
  } else landing = runLanding(corner, model, event);
  if (flags.has("csv")) {
    deliver(landingCsv(landing, car.units), words, io);
    return EXIT.sound;
  }
  const title = sayEvent(event, car.units);
  const ground = caseGround(made);
  const cases = ground ? landingCases(ground, model, landing, title) : [];
  if (flags.has("json")) {
    deliver(landJson({ car: car.name, title, model, landing, axle, cases }, car.units), words, io);
    return EXIT.sound;
  }
  const page = pageFor(io, car.units);
  const lines = [
    ...hang("", car.name, page.width).map(page.bold),
    ...landLines({ car, title, event, model, landing, axle, cases, stops: model.stops }, page),
  ];
  deliver(`${lines.join("\n")}\n`, words, io);
  return EXIT.sound;
}

function rightModel(right: Parameters<typeof study>[0]) {
  const found = cornerModel(study(right));
  if (!found.ok) throw new Refusal(`On the right side: ${NEEDS[found.need]}`);
  return found.model;
}

const NEEDS: Record<LandingNeed, string> = {
  shock: "The document has no shock: nothing would catch the wheel. Add the section shock.",
  springs:
    'The document has no springs: add "springs" to its shock, with a main spring\'s rate and free length to begin with.',
  "corner-weight": "weights.corner is missing: what one rear wheel carries on the scale, people in, tank half full.",
  "unsprung-weight": "weights.unsprung is missing: wheel, hub, brake, half of arm, shaft and shock.",
  "not-carried":
    "The springs do not carry the car between its stops, so there is nothing to land on: look at npx armwright springs first.",
};
