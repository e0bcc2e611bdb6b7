import { CAR_FORMS } from "../../src/bench/folder/judge-text.ts";
import { saveWithoutEnd } from "./saver.ts";

await saveWithoutEnd(CAR_FORMS);
