/** A tape reading being keyed in: whole inches as digits, and sixteenths as one key of an inch laid out. */
export interface KeyedReading {
  readonly minus: boolean;
  /** Feet keyed in before the inches; empty where none. */
  readonly feet: string;
  readonly whole: string;
  /** 0 to 15. */
  readonly sixteenths: number;
}

export const EMPTY_READING: KeyedReading = { minus: false, feet: "", whole: "", sixteenths: 0 };

/** No tape is longer. */
const MOST_DIGITS = 3;

export function keyDigit(reading: KeyedReading, digit: string): KeyedReading {
  const whole = `${reading.whole === "0" ? "" : reading.whole}${digit}`;
  return whole.length > MOST_DIGITS ? reading : { ...reading, whole };
}

export const keySixteenths = (reading: KeyedReading, sixteenths: number): KeyedReading => ({ ...reading, sixteenths });

/** What was keyed so far are feet; inches follow. */
export const keyFeet = (reading: KeyedReading): KeyedReading =>
  reading.feet === "" && reading.whole !== "" ? { ...reading, feet: reading.whole, whole: "" } : reading;

export const keyMinus = (reading: KeyedReading): KeyedReading => ({ ...reading, minus: !reading.minus });

/** Takes back the last thing keyed: the sixteenths, then digits, then the feet. */
export function rubOut(reading: KeyedReading): KeyedReading {
  if (reading.sixteenths !== 0) return { ...reading, sixteenths: 0 };
  if (reading.whole !== "") return { ...reading, whole: reading.whole.slice(0, -1) };
  if (reading.feet !== "") return { ...reading, whole: reading.feet, feet: "" };
  return { ...reading, minus: false };
}

/** As the document keeps it: `35 1/16`, `1' 4 1/2"`; empty where nothing was keyed. */
export function readingText({ minus, feet, whole, sixteenths }: KeyedReading): string {
  if (feet === "" && whole === "" && sixteenths === 0) return "";
  const part = sixteenths === 0 ? "" : lowest(sixteenths);
  const inches = [whole === "" && part !== "" ? "" : whole === "" ? "0" : whole, part]
    .filter((each) => each !== "")
    .join(" ");
  return `${minus ? "-" : ""}${feet === "" ? inches : `${feet}' ${inches === "" ? "0" : inches}"`}`;
}

/** A fraction of an inch in its lowest terms: 8 is `1/2`. */
export function lowest(sixteenths: number): string {
  let top = sixteenths;
  let bottom = 16;
  while (top % 2 === 0 && bottom > 1) {
    top /= 2;
    bottom /= 2;
  }
  return `${top}/${bottom}`;
}

/** A length in metres as a reading to start from; to the nearest sixteenth. */
export function readingOf(metres: number): KeyedReading {
  const parts = Math.round(Math.abs(metres) / (0.0254 / 16));
  return {
    minus: metres < 0 && parts > 0,
    feet: "",
    whole: String(Math.floor(parts / 16)),
    sixteenths: parts % 16,
  };
}
