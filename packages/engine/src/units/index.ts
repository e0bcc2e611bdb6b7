export {
  ATMOSPHERE,
  BAR,
  CUBIC_CENTIMETRE,
  CUBIC_INCH,
  DEGREE,
  FOOT,
  FOOT_POUND_FORCE,
  fromUnit,
  INCH,
  MILLIMETRE,
  POUND_FORCE,
  POUND_FORCE_INCH,
  POUND_FORCE_PER_INCH,
  POUND_MASS,
  PSI,
  STANDARD_GRAVITY,
  toUnit,
  unitOf,
} from "./convert.ts";
export { formatLength, formatNumber, formatValue, type LengthStyle, NO_VALUE } from "./format.ts";
export { type ParsedQuantity, parseQuantity } from "./quantity.ts";
export { type ParsedLength, parseLength } from "./tape.ts";
export { parseThread, type Thread } from "./thread.ts";
