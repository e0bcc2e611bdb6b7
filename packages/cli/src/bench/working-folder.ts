import { constants } from "node:fs";
import { access, copyFile, mkdir, readdir, stat } from "node:fs/promises";
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { Refusal } from "../refusal.ts";
import { CAR_ENDING } from "./folder/names.ts";

/** Where cars are worked on when no folder is named, under the folder the command is given in. */
export const DEFAULT_FOLDER = "cars";

/** The same distance up from the sources and from what is compiled of them. */
const EXAMPLES = fileURLToPath(new URL("../../../../examples/", import.meta.url));

export interface WorkingFolder {
  readonly path: string;
  /** Names of the examples that were copied into it just now. */
  readonly copied: readonly string[];
}

/**
 * The folder to serve: the one that was named, which has to be there; or `cars` here, made and filled with copies of the
 * examples the first time, so that the examples stay as they are. Throws Refusal.
 */
export async function workingFolder(
  named: string | undefined,
  here: string,
  examples = EXAMPLES,
): Promise<WorkingFolder> {
  const path = resolve(here, named ?? DEFAULT_FOLDER);
  const found = await stat(path).catch(() => undefined);
  if (found && !found.isDirectory())
    throw new Refusal(`${named ?? DEFAULT_FOLDER} is a file: name the folder it lies in.`);
  if (found) {
    const isOpen = await access(path, constants.R_OK | constants.W_OK).then(
      () => true,
      () => false,
    );
    if (isOpen) return { path, copied: [] };
    throw new Refusal(`${named ?? DEFAULT_FOLDER} is not yours to read and write: saves would fail.`);
  }
  if (named !== undefined)
    throw new Refusal(`There is no folder ${named}: make it first, or name none and work in ${DEFAULT_FOLDER}.`);
  await mkdir(path);
  const copied: string[] = [];
  for (const file of await readdir(examples).catch(() => [])) {
    if (!file.endsWith(CAR_ENDING)) continue;
    await copyFile(join(examples, file), join(path, file), constants.COPYFILE_EXCL);
    copied.push(file);
  }
  return { path, copied };
}
