import type { Finding } from "@armwright/engine";

/** Tells a finding from the others of its study, and the same one again in the next. */
export const findingKey = ({ code, place, values }: Finding): string =>
  `${code} ${place} ${String(values["limit"] ?? values["way"] ?? "")}`;
