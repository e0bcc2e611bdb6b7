import { saveWithoutEnd } from "./saver.ts";

// Any JSON is a sound document here: so the process starts fast, and does the same to the files.
await saveWithoutEnd({
  judge: (text) => ({ condition: "sound", faults: [], fields: JSON.parse(text) }),
  write: (fields) => `${JSON.stringify(fields, null, 2)}\n`,
});
