import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Hands } from "./page/page.ts";
import { type ScenePage, scenePage } from "./scene-page.ts";

declare global {
  var hands: Hands;
}

const SMALL = { width: 480, height: 360 };
let scenes: ScenePage;
beforeAll(async () => {
  scenes = await scenePage();
});
afterAll(() => scenes?.close());

/** How many pixels of the canvas are near a colour, after one draw in the same task. */
const count = (page: Page, token: string): Promise<number> =>
  page.evaluate((name) => {
    hands.scene.draw();
    const canvas = document.querySelector("canvas")!;
    const copy = document.createElement("canvas");
    copy.width = canvas.width;
    copy.height = canvas.height;
    const context = copy.getContext("2d")!;
    context.drawImage(canvas, 0, 0);
    const { data } = context.getImageData(0, 0, copy.width, copy.height);
    const hex = getComputedStyle(canvas).getPropertyValue(name).trim();
    const wanted = [1, 3, 5].map((i) => Number.parseInt(hex.slice(i, i + 2), 16));
    let found = 0;
    for (let i = 0; i < data.length; i += 4) {
      if (wanted.every((value, k) => Math.abs(value - data[i + k]!) < 24)) found += 1;
    }
    return found;
  }, token);

const spotOf = (page: Page, path: string) =>
  page.evaluate((wanted) => {
    const grip = hands.scene.grips().find((each) => each.path === wanted);
    if (!grip) throw new Error(`no grip at ${wanted}`);
    return { ...hands.scene.spotOf(grip.at), at: grip.at };
  }, path);

const inch = 0.0254;

describe("the scene", () => {
  test.each(["h-arm", "double-a-arm", "trailing-arm", "five-link"] as const)(
    "draws a %s in both themes",
    async (kind) => {
      for (const theme of ["light", "dark"]) {
        const { page, complaints } = await scenes.open(`theme=${theme}`, SMALL);
        await page.evaluate((each) => hands.showKind(each), kind);
        const all = SMALL.width * SMALL.height;
        const ink = await count(page, "--ink");
        const paper = await count(page, "--paper");
        // A line drawing: a few percent ink on mostly paper, no red, no violet.
        expect(ink).toBeGreaterThan(all * 0.02);
        expect(ink).toBeLessThan(all * 0.35);
        expect(paper).toBeGreaterThan(all * 0.4);
        expect(await count(page, "--stop")).toBe(0);
        expect(await count(page, "--hold")).toBe(0);
        expect(complaints).toEqual([]);
        await page.close();
      }
    },
  );

  test("is the same picture as with the whole of three", async () => {
    const whole = await scenePage("whole");
    const picture = async (from: ScenePage): Promise<string> => {
      const { page, complaints } = await from.open("quality=high", SMALL);
      await page.evaluate(() => hands.showAtLimit("h-arm", "outer-joint"));
      await page.evaluate(() => hands.scene.draw());
      const made = (await page.locator("canvas").screenshot()).toString("base64");
      expect(complaints).toEqual([]);
      await page.close();
      return made;
    };
    try {
      const lean = await picture(scenes);
      expect(lean.length).toBeGreaterThan(10_000);
      expect(lean === (await picture(whole))).toBe(true);
    } finally {
      await whole.close();
    }
  });

  test("what is held is violet, and named", async () => {
    const { page } = await scenes.open("", SMALL);
    await page.evaluate(() => hands.showKind("h-arm", 0, { held: "linkage.upperLink.inner" }));
    expect(await count(page, "--hold")).toBeGreaterThan(30);
    expect(await page.locator(".scene-label-hold").textContent()).toBe("upper link, inner");
    await page.close();
  });

  test("a joint at its limit is red, and its label says so", async () => {
    const { page } = await scenes.open("", SMALL);
    // The starting car's joints bend 28° at most; it is shown where the outer one does.
    await page.evaluate(() => hands.showAtLimit("h-arm", "outer-joint"));
    expect(await count(page, "--stop")).toBeGreaterThan(30);
    expect(await page.locator(".scene-label-stop").allInnerTexts()).toContainEqual(
      expect.stringMatching(/outer U-joint at its limit\s+28\.0° of 28\.0°/),
    );
    await page.close();
  });

  test("a point is taken hold of and dragged as far as the hand goes", async () => {
    const { page } = await scenes.open("", { width: 640, height: 480 });
    await page.evaluate(() => {
      hands.showKind("h-arm");
      hands.scene.view("behind");
      hands.scene.draw();
    });
    const path = "linkage.upperLink.inner";
    const before = await spotOf(page, path);
    expect(await page.evaluate(({ x, y }) => hands.scene.pick(x, y)?.path, before)).toBe(path);
    const metre = await page.evaluate(({ x, at }) => x - hands.scene.spotOf({ ...at, y: at.y + 1 }).x, before);
    await page.mouse.move(before.x + 2, before.y + 1);
    await page.mouse.down();
    await page.mouse.move(before.x + 2 + 10, before.y + 1 - 5, { steps: 4 });
    await page.mouse.move(before.x + 2 + 20, before.y + 1 - 30, { steps: 4 });
    await page.mouse.up();
    const dragged = await page.evaluate(() => hands.dragged);
    expect(dragged[0]).toMatchObject({ path, phase: "start", ...before.at });
    const last = dragged.at(-1)!;
    expect(last.phase).toBe("end");
    // From behind, right on the screen is in toward the centreline: 20 px in and 30 px up, whatever the point was grabbed by.
    expect(last.x).toBeCloseTo(before.at.x, 9);
    expect(last.y).toBeCloseTo(before.at.y - 20 / metre, 6);
    expect(last.z).toBeCloseTo(before.at.z + 30 / metre, 6);
    expect(await page.evaluate(() => hands.selected)).toEqual([path]);
    await page.close();
  });

  test("a point on a moved body is told in the design position", async () => {
    const { page } = await scenes.open("", { width: 640, height: 480 });
    await page.evaluate(() => {
      hands.showKind("h-arm", 0.06);
      hands.scene.view("behind");
      hands.scene.draw();
    });
    const path = "linkage.lowerArm.outerRear";
    const before = await spotOf(page, path);
    await page.mouse.move(before.x, before.y);
    await page.mouse.down();
    await page.mouse.move(before.x + 8, before.y, { steps: 2 });
    await page.mouse.move(before.x, before.y, { steps: 2 });
    await page.mouse.up();
    const [start, last] = await page.evaluate(() => [hands.dragged[0]!, hands.dragged.at(-1)!]);
    // There and back is where the document has it, though the wheel stands some 2 3/8 in up.
    expect(before.at.z).toBeGreaterThan(start!.z + inch);
    for (const axis of ["x", "y", "z"] as const) expect(last![axis]).toBeCloseTo(start![axis], 9);
    await page.close();
  });

  test("an arrow of the held point drags along its axis alone", async () => {
    const { page } = await scenes.open("", { width: 640, height: 480 });
    await page.evaluate(() => {
      hands.showKind("h-arm", 0, { held: "shock.upper" });
      hands.scene.draw();
    });
    const before = await spotOf(page, "shock.upper");
    // Up is seen upright in every view but from above.
    await page.mouse.move(before.x, before.y - 48);
    await page.mouse.down();
    await page.mouse.move(before.x + 15, before.y - 90, { steps: 3 });
    await page.mouse.up();
    const last = await page.evaluate(() => hands.dragged.at(-1)!);
    expect(last.path).toBe("shock.upper");
    expect([last.x, last.y]).toEqual([before.at.x, before.at.y]);
    expect(last.z).toBeGreaterThan(before.at.z + 0.02);
    await page.close();
  });

  test("keys turn the view, choose points, and take a drag back", async () => {
    const { page } = await scenes.open("", SMALL);
    await page.evaluate(() => hands.showKind("double-a-arm"));
    await page.focus("canvas");
    const before = await spotOf(page, "shock.upper");
    await page.keyboard.press("ArrowRight");
    const after = await spotOf(page, "shock.upper");
    expect(Math.hypot(after.x - before.x, after.y - before.y)).toBeGreaterThan(5);
    await page.keyboard.press("n");
    expect(await page.evaluate(() => hands.selected)).toEqual(["linkage.lowerArm.innerFront"]);
    await page.mouse.move(after.x, after.y);
    await page.mouse.down();
    await page.mouse.move(after.x + 20, after.y + 20, { steps: 3 });
    await page.keyboard.press("Escape");
    await page.mouse.up();
    const { phase, x, y, z } = await page.evaluate(() => hands.dragged.at(-1)!);
    expect({ phase, x, y, z }).toEqual({ phase: "cancel", ...after.at });
    await page.close();
  });

  test("draws nothing while nothing changes", async () => {
    const { page } = await scenes.open("", SMALL);
    const frames = await page.evaluate(async () => {
      hands.showKind("h-arm");
      await new Promise((later) => setTimeout(later, 200));
      const shown = hands.framesAsked();
      await new Promise((later) => setTimeout(later, 300));
      return { shown, after: hands.framesAsked() };
    });
    expect(frames.shown).toBeGreaterThan(0);
    expect(frames.after).toBe(frames.shown);
    await page.close();
  });

  test("a mesh is read in a worker, placed by three points, shown, asked, and put away", async () => {
    const { page, complaints } = await scenes.open("", SMALL);
    // A plate of 200 × 200 mm in a file of millimetres, two triangles, stood upright fore and aft at y = 4 in.
    const text = "v 0 0 0\nv 200 0 0\nv 200 200 0\nv 0 200 0\nf 1 2 3\nf 1 3 4\n";
    const place = (x: number, y: number) => ({
      file: { x, y, z: 0 },
      car: { x: (x - 100) / 1000, y: 4 * inch, z: 0.3 + y / 1000 },
    });
    const found = await page.evaluate(
      async ({ content, pairs }) => {
        hands.showKind("h-arm");
        const bytes = new TextEncoder().encode(content).buffer as ArrayBuffer;
        return hands.useMesh("plate.obj", bytes, pairs);
      },
      { content: text, pairs: [place(0, 0), place(200, 0), place(200, 200)] },
    );
    expect(found.triangles).toBe(2);
    expect(Math.max(...found.residuals)).toBeLessThan(1e-9);
    // The half shaft's inner joint lies at y = 10 in, z = 16 1/4 in, right over against the plate: 6 in less half of its own diameter.
    const shaft = found.gaps.find(({ id }) => id === "shaft")!.gap!;
    const diameter = await page.evaluate(() => hands.shaftDiameter());
    expect(shaft).toBeCloseTo(6 * inch - diameter / 2, 6);
    expect(found.hit).toBeNull();
    expect(await page.evaluate(() => hands.geometries())).toBeGreaterThan(0);
    const before = await page.evaluate(() => hands.geometries());
    await page.evaluate(() => {
      hands.dropMesh();
      hands.scene.draw();
    });
    expect(await page.evaluate(() => hands.geometries())).toBe(before - 1);
    expect(complaints).toEqual([]);
    await page.close();
  });

  test("a mesh that cannot be read is refused in plain words", async () => {
    const { page } = await scenes.open("", SMALL);
    const words = await page.evaluate(async () => {
      hands.showKind("h-arm");
      return hands.useMesh("frame.step", new ArrayBuffer(8), []).catch((error: Error) => error.message);
    });
    expect(words).toMatch(/\.stl, \.obj and \.glb/);
    await page.close();
  });

  test("put away, it leaves nothing on the page but its canvas", async () => {
    const { page, complaints } = await scenes.open("", SMALL);
    const left = await page.evaluate(() => {
      hands.showKind("h-arm");
      hands.scene.draw();
      hands.scene.dispose();
      return document.querySelector("#room")!.children.length;
    });
    expect(left).toBe(1);
    await page.keyboard.press("ArrowRight");
    expect(complaints).toEqual([]);
    await page.close();
  });
});
