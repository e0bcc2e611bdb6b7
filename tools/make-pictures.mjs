// Makes the README's pictures of the workbench on the demo car: npm run pictures. Needs Chromium (CHROMIUM_PATH, or
// chromium on the path); the page has to be built.
import { spawn } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";

const ROOT = fileURLToPath(new URL("..", import.meta.url));
const OUT = join(ROOT, "docs", "pictures");

const PICTURES = [
  { name: "bench-light", width: 1440, height: 900, colorScheme: "light", act: async () => {} },
  { name: "bench-dark", width: 1440, height: 900, colorScheme: "dark", act: (page) => page.keyboard.press("3") },
  { name: "phone", width: 390, height: 844, colorScheme: "light", act: async () => {} },
];

const folder = mkdtempSync(join(tmpdir(), "armwright-pictures-"));
for (const file of readdirSync(join(ROOT, "examples")).filter((name) => name.endsWith(".car.json"))) {
  cpSync(join(ROOT, "examples", file), join(folder, file));
}
const bench = spawn(process.execPath, [join(ROOT, "packages/cli/bin/armwright.js"), "bench", folder, "--no-open"]);
const address = await new Promise((resolve, reject) => {
  let said = "";
  bench.stdout.on("data", (text) => {
    said += text;
    const found = /http:\/\/\S+/.exec(said);
    if (found) resolve(found[0]);
  });
  bench.on("exit", () => reject(new Error(`the bench did not open: ${said}`)));
});
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM_PATH ?? "/usr/bin/chromium",
  args: ["--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-sync"],
});
try {
  mkdirSync(OUT, { recursive: true });
  for (const { name, width, height, colorScheme, act } of PICTURES) {
    const page = await browser.newPage({ viewport: { width, height }, colorScheme });
    await page.goto(address);
    await page.locator("nav").first().waitFor();
    await page.waitForTimeout(1000);
    await act(page);
    await page.waitForTimeout(2000);
    await page.screenshot({ path: join(OUT, `${name}.png`) });
    await page.close();
    console.log(`docs/pictures/${name}.png`);
  }
} finally {
  await browser.close();
  bench.kill();
  rmSync(folder, { recursive: true, force: true });
}
