import { type CarDocument, readCarDocument, readCarValue, sayFault, startingDocument, writeCarDocument } from "@armwright/engine/document";
import type { CarState, DocumentSource, SourceEvent } from "../sync/source.ts";
import { applyOperations } from "./operations.ts";

/** Cars that live as long as the page: for tests, and where nothing else can be had. */
export function memorySource(): DocumentSource {
  const cars = new Map<string, CarDocument>([["start", startingDocument("h-arm", "inch-pound")]]);
  const earlier = new Map<string, { readonly id: string; readonly at: string; readonly text: string }[]>();
  const listeners = new Set<(event: SourceEvent) => void>();
  const stateOf = (name: string, document: CarDocument): CarState => {
    const reading = readCarValue(document);
    return {
      name,
      condition: reading.ok ? "sound" : "faulty",
      document,
      reading,
      faults: reading.ok ? [] : reading.faults.map((fault) => ({ path: fault.path, says: sayFault(fault) })),
      waiting: 0,
    };
  };
  const put = (name: string, document: CarDocument): CarState => {
    const before = cars.get(name);
    const list = earlier.get(name) ?? [];
    if (before) earlier.set(name, [{ id: String(list.length), at: new Date().toISOString(), text: writeCarDocument(before) }, ...list]);
    cars.set(name, document);
    return stateOf(name, document);
  };
  return {
    kind: "browser",
    status: () => ({ word: "not kept", waiting: 0, because: "kept only while this page is open" }),
    list: async () => ({
      cars: [...cars].map(([name, document]) => ({ name, title: document.name, condition: "sound" as const })),
      passedOver: [],
      removed: [],
    }),
    open: async (name) => {
      const document = cars.get(name);
      return document && stateOf(name, document);
    },
    apply: (name, edits) => {
      const document = cars.get(name);
      if (!document) throw new Error(`bug in the page: ${name} is not open`);
      return put(name, applyOperations(document, edits));
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    history: async (name) => (earlier.get(name) ?? []).map(({ id, at, text }) => ({ id, at, because: "edit" as const, bytes: text.length })),
    version: async (name, id) => earlier.get(name)?.find((each) => each.id === id)?.text,
    restore: async () => false,
    create: async (name, document) => {
      put(name, document);
      for (const listener of listeners) listener({ kind: "list" });
      return { ok: true, name };
    },
    importText: async (name, text) => {
      const reading = readCarDocument(text);
      if (!reading.ok) return { ok: false, because: reading.faults.map(sayFault).join("; ") };
      put(name, reading.document);
      return { ok: true, name };
    },
    exportText: (name) => {
      const document = cars.get(name);
      return document && writeCarDocument(document);
    },
    remove: async (name) => cars.delete(name),
    readMesh: async () => undefined,
    keepMesh: async () => ({ ok: false, because: "nothing is kept here" }),
    close: () => listeners.clear(),
  };
}
