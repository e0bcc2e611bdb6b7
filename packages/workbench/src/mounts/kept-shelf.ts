import { readShockShelf } from "@armwright/engine";
import { shelfKeeper } from "../store/shelf-keeper.ts";

/** The shelf of shocks that this browser keeps. */
export const { kept: keptShelf, keep: keepShelf } = shelfKeeper("armwright.shocks-shelf", readShockShelf);
