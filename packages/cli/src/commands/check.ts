import { sayFinding, study } from "@armwright/engine";
import { readCar } from "../car-file.ts";
import { EXIT, type Io } from "../io.ts";
import type { Words } from "../parse-words.ts";
import { GRAVITY } from "../report/findings.ts";
import { pageFor } from "../text/page.ts";
import { counted } from "../text/say.ts";
import { hang } from "../text/wrap.ts";

export function perform({ operands }: Words, io: Io): number {
  const path = operands[0]!;
  const reading = readCar(path, io);
  if (!reading) return EXIT.refused;
  const { car } = reading;
  const page = pageFor(io, car.units);
  const sides = car.right ? [study(car), study(car.right)] : [study(car)];
  const findings = sides.flatMap((side, index) =>
    side.findings.map((finding) => ({
      finding,
      side: sides.length === 1 ? "" : index === 0 ? "left wheel: " : "right wheel: ",
    })),
  );
  const count = (gravity: "must" | "mind" | "note") =>
    findings.filter(({ finding }) => finding.gravity === gravity).length;
  const musts = count("must");
  const name = path === "-" ? "The document" : path;
  const verdict = musts === 0 ? "nothing that must be changed" : `${musts} that must be changed`;
  const lines = [
    ...hang(
      "",
      `${name} reads well: ${verdict}, ${count("mind")} to mind, ${counted(count("note"), "note")}.`,
      page.width,
    ),
    ...findings
      .filter(({ finding }) => finding.gravity !== "note")
      .flatMap(({ finding, side }) =>
        hang(`${GRAVITY[finding.gravity]}  `, `${side}${sayFinding(finding, car.units).sentence}`, page.width).map(
          finding.gravity === "must" ? page.bold : (line) => line,
        ),
      ),
  ];
  io.out(`${lines.join("\n")}\n`);
  return musts > 0 ? EXIT.must : EXIT.sound;
}
