import { useStore } from "zustand";
import { connection } from "../store/connection.ts";

/** Where the work is kept, in words. */
export const useSaved = (): string => useStore(connection, ({ saved }) => saved);
