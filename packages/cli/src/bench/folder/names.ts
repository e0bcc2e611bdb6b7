/** Ending of a car document's file. */
export const CAR_ENDING = ".car.json";

/** Letters, digits, blanks, - and _: a name that means the same file on every system, and never a path. */
const CAR_NAME = /^[A-Za-z0-9](?:[A-Za-z0-9 _-]{0,78}[A-Za-z0-9_-])?$/;
const MESH_NAME = /^[A-Za-z0-9](?:[A-Za-z0-9 _-]{0,78}[A-Za-z0-9_-])?\.(?:stl|obj|glb)$/i;
/** Names that some systems keep for devices. */
const DEVICE = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/i;

export const isCarName = (name: string): boolean => CAR_NAME.test(name) && !DEVICE.test(name);
export const isMeshName = (name: string): boolean => MESH_NAME.test(name) && !DEVICE.test(name);

export const NAME_RULE =
  "a name is made of letters, digits, blanks, - and _, begins with a letter or digit, and has 80 characters at most";

export const carFile = (name: string): string => `${name}${CAR_ENDING}`;

/** The car's name for a file's name; undefined where the file is no car document's, or its name breaks the rule. */
export function carNameOf(file: string): string | undefined {
  if (!file.endsWith(CAR_ENDING)) return undefined;
  const name = file.slice(0, -CAR_ENDING.length);
  return isCarName(name) ? name : undefined;
}
