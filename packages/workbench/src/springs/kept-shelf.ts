import { readSpringShelf } from "@armwright/engine";
import { shelfKeeper } from "../store/shelf-keeper.ts";

/** The shelf of springs that this browser keeps. */
export const { kept: keptShelf, keep: keepShelf } = shelfKeeper("armwright.springs-shelf", readSpringShelf);
