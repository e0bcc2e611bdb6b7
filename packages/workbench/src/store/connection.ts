import type { CarDocument, CarReading, FieldValue } from "@armwright/engine/document";
import { createStore } from "zustand/vanilla";
import type { CarEntry, CarState, DocumentSource, SourceEvent, Version } from "../sync/source.ts";
import { say, sendEditsTo, setUnits, showCar, showChangedElsewhere, showUnreadable } from "./bench.ts";
import { keepLastCar, lastCar } from "./last-car.ts";
import { hasPreferences } from "./preferences.ts";

export type { CarEntry, Version };

/** What is open, and where the work is kept. */
export interface Connection {
  readonly name: string | null;
  /** Its file was taken away: what is entered waits until it is back. */
  readonly isGone: boolean;
  /** In words, e.g. `kept in the folder, 9:41`. */
  readonly saved: string;
  /** The same in a word or two. */
  readonly short: string;
  /** Grows whenever the list of cars has changed. */
  readonly lists: number;
  /** What another hand did to entries of this page, in words, the newest last; until it has been seen. */
  readonly notices: readonly string[];
}

export const connection = createStore<Connection>(() => ({
  name: null,
  isGone: false,
  saved: "",
  short: "",
  lists: 0,
  notices: [],
}));

let source: DocumentSource | undefined;

/** Does a piece of work that reads cars, with whatever has to be fetched for it. */
export type Reading = <T>(work: () => Promise<T>) => Promise<T>;

/** Works on this source from now on, and opens the car worked on last, or the first there is. */
export async function connect(to: DocumentSource, reading: Reading = (work) => work()): Promise<void> {
  source = to;
  to.subscribe(hear);
  sendEditsTo((operations) => {
    const { name } = connection.getState();
    if (name === null) return;
    to.apply(name, operations);
    tellSaved();
  });
  tellSaved();
  const { cars } = await reading(() => to.list());
  const last = lastCar();
  const first = cars.find(({ name }) => name === last) ?? cars.find(({ name }) => name === "saltbush") ?? cars[0];
  if (first) await reading(() => openCar(first.name));
}

export async function openCar(name: string): Promise<void> {
  const isFirstVisit = !hasPreferences();
  const state = await source?.open(name);
  if (!state) {
    say(`there is no car ${name} any more`);
    return;
  }
  const before = connection.getState().name;
  connection.setState({ name, isGone: state.condition === "gone" });
  keepLastCar(name);
  if (!state.document) {
    showUnreadable(faultsOf(state), before === name ? "the same car" : "another car");
    return;
  }
  if (isFirstVisit) setUnits(state.document.units === "metric" ? "metric" : "inch-pound");
  showCar(state.document);
}

function hear(event: SourceEvent): void {
  if (event.kind === "car") hearCar(event);
  else if (event.kind === "list") connection.setState(({ lists }) => ({ lists: lists + 1 }));
  else if (event.kind === "status") tellSaved();
  else notice(event.name, wordsOf(event));
}

/** More than this nobody reads. */
const MOST_NOTICES = 12;

/** Says it, and shows it until it has been seen; of another car with that car's name. */
function notice(car: string, words: string): void {
  const said = car === connection.getState().name ? words : `${car}: ${words}`;
  say(said);
  connection.setState(({ notices }) => ({ notices: [...notices, said].slice(-MOST_NOTICES) }));
}

export const seeNotices = (): void => connection.setState({ notices: [] });

function hearCar({ state, by }: Extract<SourceEvent, { kind: "car" }>): void {
  if (state.name !== connection.getState().name || by === "here") return;
  if (state.document) showChangedElsewhere(state.document);
  else showUnreadable(faultsOf(state), "the same car");
  const wasGone = connection.getState().isGone;
  const isGone = state.condition === "gone";
  connection.setState({ isGone });
  if (!isGone) say(by === "program" ? "changed by another program" : "changed on another screen");
  else if (!wasGone)
    notice(state.name, "the file was taken away: what you enter waits here until an earlier version is brought back");
}

/** A field in words, e.g. `Strap, length`; forms know how, once they are there. */
let nameOfField: (path: string) => string = (path) => path;
export const nameFieldsBy = (name: (path: string) => string): void => {
  nameOfField = name;
};

/** What another hand did to a field of ours, or why an edit could not be made. */
function wordsOf(event: Extract<SourceEvent, { kind: "overruled" | "replaced" | "refused" }>): string {
  switch (event.kind) {
    case "overruled":
      return `${nameOfField(event.path)}: your ${sayValue(event.yours)} was replaced by ${sayValue(event.theirs)}, entered ${event.by === "program" ? "by another program" : "on another screen"}`;
    case "replaced":
      return `${nameOfField(event.path)}: replaced ${sayValue(event.theirs)}, entered on another screen just before`;
    case "refused":
      return `${nameOfField(event.edit.path)} could not be changed: ${event.because}`;
  }
}

const sayValue = (value: FieldValue): string =>
  value === undefined ? "nothing" : typeof value === "object" ? "entry" : String(value);

const faultsOf = (state: CarState) => (state.reading.ok ? [] : state.reading.faults);

function tellSaved(): void {
  if (!source) return;
  const { word, waiting, because } = source.status();
  const time = new Date().toLocaleTimeString([], { hour: "numeric", minute: "2-digit" });
  const where = source.kind === "server" ? "kept in the folder" : "kept here";
  const words = {
    kept: `${where}, ${time}`,
    sending: "being kept",
    "waiting to send": waiting === 1 ? "1 change waits to be sent" : `${waiting} changes wait to be sent`,
    "must pair": "this device is not paired",
    "not kept": "not kept",
  }[word];
  const short = word === "waiting to send" ? `${waiting} ${waiting === 1 ? "waits" : "wait"}` : word;
  connection.setState({ saved: because === undefined ? words : `${words}: ${because}`, short });
}

export const listCars = async (): Promise<readonly CarEntry[]> => (await source?.list())?.cars ?? [];

/** Keeps a new car and opens it; the reason where it was refused. */
export async function createCar(document: CarDocument): Promise<string | null> {
  return opened(await source?.create(fileName(document.name), document));
}

export async function importCar(text: string, file: string): Promise<string | null> {
  return opened(await source?.importText(fileName(file.replace(/(\.car)?\.json$/i, "")), text));
}

async function opened(made: Awaited<ReturnType<DocumentSource["create"]>> | undefined): Promise<string | null> {
  if (!made) return "there is nowhere to keep it";
  if (!made.ok) return made.because;
  await openCar(made.name);
  return null;
}

const fileName = (title: string): string =>
  title
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "") || "car";

/** The text of the car on the bench, and a name for its file. */
export function exportCar(): { readonly name: string; readonly text: string } | null {
  const { name } = connection.getState();
  const text = name === null ? undefined : source?.exportText(name);
  return name === null || text === undefined ? null : { name: `${name}.car.json`, text };
}

/** Another car, to be laid beside the one on the bench. */
export const readCar = async (name: string): Promise<CarReading | undefined> => (await source?.open(name))?.reading;

export async function removeCar(name: string): Promise<void> {
  await source?.remove(name);
}

export const historyOf = async (name: string): Promise<readonly Version[]> => (await source?.history(name)) ?? [];
/** Puts an earlier version in the place of a file that cannot be read, whose text goes into the history. False where it could not be done. */
export async function restoreVersion(name: string, id: string): Promise<boolean> {
  const isDone = (await source?.restore(name, id)) ?? false;
  if (isDone) await openCar(name);
  return isDone;
}
export const versionText = async (name: string, id: string): Promise<string> => (await source?.version(name, id)) ?? "";

/** The server that this page works with makes paper too; a page without one cannot. */
export const hasServer = (): boolean => source?.kind === "server";

/** A scan that is kept beside the cars; undefined where there is none of that name. */
export const readMesh = async (file: string): Promise<Uint8Array<ArrayBuffer> | undefined> => source?.readMesh(file);
export const keepMesh = async (file: string, bytes: Uint8Array<ArrayBuffer>): ReturnType<DocumentSource["keepMesh"]> =>
  (await source?.keepMesh(file, bytes)) ?? { ok: false, because: "there is nowhere to keep it" };
