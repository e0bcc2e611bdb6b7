import type { UnitSystem } from "../car/car.ts";
import { formatWall } from "../strength/size-words.ts";
import { formatValue } from "../units/format.ts";
import type { Finding, FindingCode, FindingValue } from "./finding.ts";
import { CERTAINTY_SENTENCES } from "./say-certainty.ts";
import { STOPS_SENTENCES } from "./say-stops.ts";
import { SURVEY_SENTENCES } from "./say-survey.ts";
import { WEAK_PART_SENTENCES } from "./say-weak-part.ts";

/** A finding in words: what is, and what can be done about it. */
export interface SaidFinding {
  readonly sentence: string;
  readonly remedy: string;
}

/** Says a finding in the units of the reader; the only place where findings become words. */
export function sayFinding(finding: Finding, system: UnitSystem): SaidFinding {
  const words: Words = {};
  for (const [key, value] of Object.entries(finding.values)) {
    words[key] = say(value, system);
    if (typeof value !== "string" && value.dimension === "length") words[`${key}Where`] = where(value.value, system);
  }
  return SENTENCES[finding.code](words);
}

type Words = Record<string, string>;

function say(value: FindingValue, system: UnitSystem): string {
  if (typeof value === "string") return value;
  if (value.isWall) return formatWall(value.value, system);
  const style = value.denominator ? { denominator: value.denominator } : {};
  const text = formatValue(value.value, value.dimension, system, style);
  return value.dimension === "length" && /^0 /.test(text) && value.value !== 0 ? `under ${leastLength(system)}` : text;
}

const leastLength = (system: UnitSystem): string => (system === "metric" ? "0.5 mm" : "1/16 in");

/** A travel as a place: `at ride height`, `3 1/2 in up`, `4 in down`. */
function where(travel: number, system: UnitSystem): string {
  if (Math.abs(travel) < 5e-4) return "at ride height";
  return `${formatValue(Math.abs(travel), "length", system)} ${travel > 0 ? "up" : "down"} from ride`;
}

const HOW_TO_FREE: Record<string, string> = {
  "shock-shortest": "Move a shock mount, take a shorter shock, or let the stop come sooner.",
  "shock-longest": "Shorten the strap, move a shock mount, or take a longer shock.",
  "inner-joint":
    "Stop the wheel sooner, bring the gearbox output nearer to the wheel's height, or take a joint that bends more.",
  "outer-joint":
    "Stop the wheel sooner, or take a joint that bends more; camber that follows the shaft eases the outer joint.",
  "slip-engagement":
    "Make the shaft longer, stop the wheel sooner, or move the spindle pivot toward the outer joint's centre.",
  "slip-bottoms": "Make the shaft shorter, or stop the wheel sooner.",
  underbody: "Raise the ride height, let the bump stop come sooner, or lift what hangs lowest.",
  clearance: "Move or notch the one or the other, or stop the wheel sooner.",
  "rod-end":
    "Use high-misalignment spacers, turn the bracket so that the swing falls along the bolt, or stop the wheel sooner.",
  linkage: "Stop the wheel sooner, or lengthen the members that fall into line.",
};

/** What happens at a limit, as the subject and verb of a sentence. */
function met(code: string | undefined, label: string | undefined): string {
  const name = label ?? "";
  switch (code) {
    case "shock-shortest":
      return "The shock is at its shortest";
    case "shock-longest":
      return "The shock is at its longest";
    case "inner-joint":
    case "outer-joint":
      return `The ${name.replace(/ angle$/, "")} reaches the end of its angle`;
    case "slip-engagement":
      return "The spline is down to its least engagement";
    case "slip-bottoms":
      return "The slip yoke bottoms";
    case "underbody":
      return "The underbody is on the ground";
    case "rod-end":
      return `The ball of the ${name.replace(/^rod end, /, "rod end at the ")} reaches the end of its tilt`;
    case "clearance":
      return `${capital(name)}: they touch`;
    case "linkage":
      return `The ${name.replace("linkage at", "linkage is at")}`;
    default:
      return capital(name);
  }
}

const TOE_REMEDY: Record<string, string> = {
  "h-arm": "Make the lower arm's two hinge lines parallel, seen from above and from the side: that holds toe.",
  "double-a-arm": "Move the inner end of the toe link up or down, and watch which way the curve bends.",
  "five-link": "Move the inner end of the link that sets toe up or down, and watch which way the curve bends.",
  "trailing-arm": "A pivot line squarer to the car, and level, changes toe less.",
};

const CAMBER_REMEDY: Record<string, string> = {
  "h-arm": "An upper link equal and parallel to the lower arm holds camber (common practice).",
  "double-a-arm": "A shorter upper arm gains camber in bump; equal and parallel arms hold it (common practice).",
  "five-link":
    "Links equal and parallel to each other hold camber; shorter upper ones gain it in bump (common practice).",
  "trailing-arm": "A pivot line square to the car holds camber; raking it gains camber in bump (common practice).",
};

const SENTENCES: Record<FindingCode, (w: Words) => SaidFinding> = {
  "past-at-ride": (w) => ({
    sentence: `${met(w["code"], w["limit"])} already with the car at ride height.`,
    remedy: "Check the entry first; then move one of the two.",
  }),
  "limit-before-stop": (w) => ({
    sentence: `${met(w["code"], w["limit"])} ${w["travel"]} into ${w["way"]}, ${w["before"]}${w["plusMinus"] ? ` (± ${w["plusMinus"]})` : ""} before the ${w["stop"]} ends it.`,
    remedy: HOW_TO_FREE[w["code"] ?? ""] ?? `Let the ${w["part"]} come sooner.`,
  }),
  "limit-close": (w) => ({
    sentence: `At full ${w["way"]} only ${w["spare"]} ${w["spareWord"]} is left: ${w["limit"]}. Common practice leaves ${w["wanted"]}.`,
    remedy:
      w["stop"] === "shock"
        ? "Add a part that ends the travel a little sooner."
        : `Let the ${w["stop"]} come a little sooner.`,
  }),
  "stop-past-at-ride": (w) =>
    w["part"] === "strap"
      ? {
          sentence: `The strap is ${w["over"]} too short for the car to stand at ride height.`,
          remedy: "Check its length, hole to hole, and where its two holes are.",
        }
      : {
          sentence: `The bump stop would be squeezed ${w["over"]} past solid at ride height.`,
          remedy: "Check its length, and where it is bolted and lands.",
        },
  "another-part-stops-first": (w) => ({
    sentence: `The ${w["stop"]} ends ${w["way"]} at ${w["travel"]}, before the ${w["chosen"]} that was chosen.`,
    remedy: `Choose the ${w["stop"]} as the stop, or move it farther out.`,
  }),
  "wheel-off-the-ground": (w) => ({
    sentence: `At ride height the loaded tyre ends ${w["off"]} ${w["way"]} the ground: wheel centre at ${w["hub"]}, loaded radius ${w["loaded"]}.`,
    remedy: "Tape from floor to hub centre with the car at rest: the two figures should agree.",
  }),
  "joint-off-the-stub-axle": (w) => ({
    sentence: `The outer ${w["joint"]}'s centre lies ${w["off"]} off the wheel's spin axis, and so not on its stub axle.`,
    remedy: "Tape both again: the joint turns with the stub axle, and its centre lies on the axle's line.",
  }),
  "shock-lengthens-in-bump": () => ({
    sentence: "The shock gets longer when the wheel goes up.",
    remedy: "Its upper eye belongs above its lower one: check both mounts.",
  }),
  "stop-does-not-work": (w) => ({
    sentence: `The ${w["stop"]} never ends the ${w["way"]} travel. ${met(w["code"], w["first"])} first, ${w["travel"]} into ${w["way"]}.`,
    remedy: `Change the ${w["stop"]}'s length or place until it comes first.`,
  }),
  "no-part-stops-the-wheel": (w) => ({
    sentence: `No ${w["part"]} is entered, so ${w["way"]} ends at the ${w["travel"]} aimed at only on paper.`,
    remedy: `Enter a ${w["part"]} that ends the travel there.`,
  }),
  "shock-is-the-stop": (w) => ({
    sentence: `The shock itself ends the ${w["way"]} travel.`,
    remedy: `Add a ${w["part"]}: a shock used as a stop loses its end or its rod.`,
  }),
  "bump-stop-touched-at-ride": (w) => ({
    sentence: "The bump stop is already squeezed at ride height.",
    remedy: `Shorten it or move it up; it should land in the last ${w["from"]} to ${w["to"]} of travel (common practice).`,
  }),
  "clearance-short": (w) => ({
    sentence: `${capital(w["pair"])}: ${w["gap"]} apart ${w["travelWhere"]}, ${w["wanted"]} wanted.`,
    remedy: `Make ${w["more"]} more room.`,
  }),
  "travel-short": (w) => ({
    sentence: `${capital(w["way"])} travel is ${w["got"]}, ${w["short"]} short of the ${w["wanted"]} aimed at.`,
    remedy: `Let what ends ${w["way"]} come later, as far as the limits beyond it leave room.`,
  }),
  "shock-short-for-travel": (w) => ({
    sentence:
      w["way"] === "droop"
        ? `The shock is too short for the droop aimed at: it is fully open ${w["end"]} down, ${w["wanted"]} is aimed at, with ${w["reserve"]} of shaft left over (common practice). Droop ends at ${w["got"]} now.`
        : `The shock is too long, closed, for the bump aimed at: it is fully closed ${w["end"]} up, ${w["wanted"]} is aimed at, with ${w["reserve"]} of shaft left over (common practice). Bump ends at ${w["got"]} now.`,
    remedy:
      w["way"] === "droop"
        ? "Take a longer shock, or mount it elsewhere; or aim at less droop."
        : "Take a shock that is shorter when closed, or mount it elsewhere; or aim at less bump.",
  }),
  "ground-clearance-short": (w) => ({
    sentence: `At full bump the underbody is ${w["got"]} off the ground, ${w["wanted"]} wanted.`,
    remedy: "Raise the ride height or let the bump stop come sooner.",
  }),
  "track-differs": (w) => ({
    sentence: `Track width comes to ${w["got"]}, ${w["wanted"]} wanted.`,
    remedy: `Move each hub face ${w["each"]} ${w["move"]}, or change the wheel's offset.`,
  }),
  "wheelbase-differs": (w) => ({
    sentence: `The wheelbase entered is ${w["got"]}, ${w["wanted"]} wanted.`,
    remedy: "Move the hub face along the car, or correct the entry.",
  }),
  "joint-angle-at-ride": (w) => ({
    sentence: `The ${w["joint"]} already bends ${w["bend"]} at ride height; beyond ${w["most"]} it runs hot and wears (common practice).`,
    remedy: "Bring gearbox output, shaft and stub axle closer to one line at ride height.",
  }),
  "joint-limit-unknown": (w) => ({
    sentence: `No angle limit is given for the ${w["joint"]}; it bends up to ${w["bend"]}, ${w["travelWhere"]}.`,
    remedy: "Ask its maker, or bend it by hand and read the angle finder, and enter the figure.",
  }),
  "speed-ripple": (w) => ({
    sentence: `At ride height the pair of U-joints ripples by ${w["ripple"]}, as one joint bent ${w["as"]}; up to ${w["smooth"]} runs smooth (common practice).`,
    remedy: "Make both joint angles equal, in one plane, with the shaft's yokes in phase.",
  }),
  "toe-change": (w) => ({
    sentence: `Toe goes ${w["way"]} by ${w["atTyre"]} across the tyre (${w["change"]}) ${w["travelWhere"]}; ${w["most"]} is what most accept over the middle of the travel.`,
    remedy: TOE_REMEDY[w["kind"] ?? ""] ?? "",
  }),
  "toe-at-ride": (w) => ({
    sentence: `The wheel toes out ${w["toe"]} at ride height (${w["rim"]} across the tyre).`,
    remedy: "Rear wheels are set straight or slightly in (common practice).",
  }),
  "camber-range": (w) => ({
    sentence: `Camber goes from ${w["least"]} (${w["leastAtWhere"]}) to ${w["most"]} (${w["mostAtWhere"]}).`,
    remedy: CAMBER_REMEDY[w["kind"] ?? ""] ?? "",
  }),
  "motion-ratio-low": (w) => ({
    sentence: `The shock moves only ${w["ratio"]} of the wheel's way at ride height; below ${w["low"]} springs get big and control coarse (common practice).`,
    remedy: "Move the lower mount out along the arm, or stand the shock squarer to it.",
  }),
  "motion-ratio-falls": (w) => ({
    sentence: `The motion ratio falls from ${w["ride"]} at ride to ${w["bump"]} at full bump: the suspension softens when it should stiffen.`,
    remedy: "Move the upper mount so that the shock comes square to the arm toward full bump.",
  }),
  "springs-missing": () => ({
    sentence: "No springs are entered: what holds the car up is not known.",
    remedy: "Choose them from what one rear wheel carries, and enter rate, free length and solid length.",
  }),
  "springs-need-weights": () => ({
    sentence: "Springs are entered, but not what they carry: where the car sits cannot be told.",
    remedy: "Enter what one rear wheel carries on the scale, and what of it is not sprung.",
  }),
  "springs-do-not-fit": (w) => ({
    sentence: `The springs stand ${w["together"]} long on a shock that is ${w["shock"]} eye to eye when open.`,
    remedy: "Take shorter springs: together they fit between the seats with the shock fully open.",
  }),
  "coil-bind-before-stop": (w) => ({
    sentence: `The ${w["spring"]} spring is solid, coil on coil, before the bump travel ends ${w["travelWhere"]}.`,
    remedy:
      w["spring"] === "tender"
        ? "Let the slider meet its stop sooner, or take a longer tender spring."
        : "Take a longer or stiffer main spring, wind preload off, or let the bump stop come sooner.",
  }),
  "spring-loose-at-droop": (w) => ({
    sentence: `With the wheel hanging the springs are loose by ${w["gap"]} and can jump off their seats.`,
    remedy: `Wind the collar down at least ${w["turns"]} turns, shorten the strap, or take a longer spring.`,
  }),
  "car-sits-on-its-stop": (w) =>
    w["end"] === "bump"
      ? {
          sentence: "The springs do not carry the car: it sits on the bump stop.",
          remedy: "Take stiffer springs, or check rates and weights.",
        }
      : {
          sentence: "The springs lift the car until the wheel hangs at full droop: no droop travel is left.",
          remedy: "Take softer springs, wind preload off, or check rates and weights.",
        },
  "ride-height-off": (w) => ({
    sentence: `On these springs the car sits ${w["off"]} ${w["way"]} than drawn.`,
    remedy:
      w["isWrong"] === "yes"
        ? `Wrong spring: the preload that mends it is outside what is usual (common practice: none to ${w["most"]}). Take ${w["want"]} ones.`
        : `Wind the collar ${w["wind"]} ${w["turns"]} turns, to a preload of ${w["preload"]}, and set the slider's stop anew.`,
  }),
  "ride-frequency": (w) => ({
    sentence: `The ride frequency is ${w["frequency"]}; ${w["from"]} to ${w["to"]} is common practice for ${w["use"]} use.`,
    remedy: `${w["want"]} springs bring it there.`,
  }),
  "main-softer-than-tender": (w) => ({
    sentence: `The main spring (${w["main"]}) is softer than the tender (${w["tender"]}): the suspension softens past crossover.`,
    remedy: "Put the stiffer spring where the main one is.",
  }),
  "crossover-at-ride": (w) => ({
    sentence: `${w["by"]} already where the car sits: the main spring works alone from there, which is harsh.`,
    remedy: `Set the stop ${w["from"]} to ${w["to"]} of shock past ride (common practice).`,
  }),
  ...CERTAINTY_SENTENCES,
  ...STOPS_SENTENCES,
  ...WEAK_PART_SENTENCES,
  ...SURVEY_SENTENCES,
  "rod-end-limits-unknown": (w) => ({
    sentence: `${w["count"]} rod ends have no misalignment limit entered; the most tilted is ${w["where"]}: ${w["tilt"]} ${w["travelWhere"]}.`,
    remedy: "Enter what the maker allows with your spacers, and this list will say which one binds.",
  }),
  "assumed-values": (w) => ({
    sentence: `${w["count"]} values were not in the document and are assumed; they are listed.`,
    remedy: "Enter your own where they matter.",
  }),
  "cycle-before-welding": () => ({
    sentence: "This is geometry only: it knows no flex, no slop and no weld pull.",
    remedy:
      "Tack, then cycle the real parts stop to stop on jack stands, springs out and gas let down, before welding out. Whether parts hold is only screened (see Strength); a licensed engineer and your rule book decide.",
  }),
};

const capital = (text: string | undefined): string => (text ? text.charAt(0).toUpperCase() + text.slice(1) : "");
