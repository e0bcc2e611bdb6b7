import { test } from "vitest";
import { readCarValue, setField } from "../../src/document/index.ts";
import { study } from "../../src/study/study.ts";
import { sayFinding } from "../../src/findings/say-finding.ts";
import { studyStops } from "../../src/stops/study-stops.ts";
import { proposeStops } from "../../src/stops/propose-stops.ts";
import { EXAMPLES, exampleCar, exampleDocument, carOfDocument } from "../example-documents.ts";
test("x", () => {
  for (const n of EXAMPLES) {
    const made = study(exampleCar(n));
    for (let i = 0; i < 5; i++) studyStops(made);
    const t0 = performance.now();
    studyStops(made);
    const t1 = performance.now();
    console.log(n, (t1 - t0).toFixed(1), made.findings.map((f) => f.code + " " + f.gravity).join(", "), JSON.stringify(proposeStops(made).operations));
    const d = exampleDocument(n) as any;
    delete d.strap; delete d.bumpStop; delete d.stops;
    const bare = study(carOfDocument(d));
    const p = proposeStops(bare);
    let doc = d;
    for (const o of p.operations) doc = setField(doc, o.path, o.value as never);
    const after = study(carOfDocument(doc));
    console.log("BARE", JSON.stringify({...p.strap, operations:0}), JSON.stringify({...p.bumpStop,operations:0}), JSON.stringify(p.operations), "\nAFTER", after.travel.bump.stop, after.travel.droop.stop, after.findings.map((f) => f.gravity + ": " + sayFinding(f, "inch-pound").sentence).join("\n"));
  }
});
