import { CarFolder } from "../../src/bench/folder/car-folder.ts";
import type { Forms } from "../../src/bench/folder/judgement.ts";

/** Saves without end, each acknowledged on a line of its own, until the process is killed in the middle of one. */
export async function saveWithoutEnd(forms: Forms): Promise<never> {
  const [root = "", name = "", from = "0"] = process.argv.slice(2);
  const folder = await CarFolder.open(root, forms);
  for (let count = Number(from); ; count++) {
    const operation = { id: `saved-${String(count).padStart(8, "0")}`, path: "name", value: `Save ${count}` };
    const applied = await folder.place(name).apply("saver-client", [operation]);
    if (!applied.ok) throw new Error(`not saved: ${applied.why}`);
    process.stdout.write(`${count} ${applied.outcomes[0]?.outcome}\n`);
  }
}
