import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Plugin } from "vite";
import { readCarDocument } from "../../engine/src/document/read.ts";

const DEMO = fileURLToPath(new URL("../../../examples/saltbush.car.json", import.meta.url));

/** The demo car, read when the page is built: a first visit to a page without a bench draws it before it can read documents. */
export function firstCar(): Plugin {
  return {
    name: "armwright-first-car",
    apply: "build",
    generateBundle() {
      const reading = readCarDocument(readFileSync(DEMO, "utf8"));
      if (!reading.ok) this.error("the demo car cannot be read");
      const source = JSON.stringify({ first: { name: "saltbush", car: reading.car } });
      this.emitFile({ type: "asset", fileName: "first-car.json", source });
    },
  };
}
