export type { Fault, FaultCode } from "./fault.ts";
export { sayFault } from "./fault-words.ts";
export { meaningOf } from "./field-meaning.ts";
export { fingerprintOf } from "./fingerprint.ts";
export { carJsonSchema } from "./json-schema.ts";
export { MIGRATIONS, type Migrated, type Migration, migrate } from "./migrate.ts";
export { nearestWord } from "./nearest-word.ts";
export { applyOperations, type Operation } from "./operation.ts";
export { formatPath, type Path, parsePath, valueAt } from "./path.ts";
export { type CarReading, readCarDocument, readCarValue } from "./read.ts";
export { readSurvey, type SurveyReport } from "./read-survey.ts";
export { carReference } from "./reference.ts";
export {
  type BumpStopDocument,
  type CarDocument,
  carSchema,
  type DriveshaftDocument,
  FORMAT_VERSION,
  type KeepOutDocument,
  type LinkageDocument,
  type PointDocument,
  type RightDocument,
  type RodEndDocument,
  type RodEndsDocument,
  type ShockDocument,
  type StrapDocument,
  type Typed,
  type WheelDocument,
} from "./schema.ts";
export { simplestDocument, startingDocument } from "./start.ts";
export { type FieldObject, type FieldValue, setField, writeCarDocument } from "./write.ts";
