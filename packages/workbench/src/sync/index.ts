// Where cars are kept: a served folder or this browser, behind one interface.

export { type BrowserOptions, browserSource } from "./browser-source.ts";
export { type Chosen, chooseSource } from "./choose-source.ts";
export { browserItems, type Items, memoryItems, storageItems } from "./items.ts";
export { type ServerOptions, serverSource } from "./server-source.ts";
export { browserShelf, memoryShelf, type Shelf } from "./shelf.ts";
export type {
  CarEntry,
  CarState,
  Condition,
  DocumentSource,
  Edit,
  Listing,
  Made,
  SaidFault,
  SourceEvent,
  Status,
  Version,
} from "./source.ts";
