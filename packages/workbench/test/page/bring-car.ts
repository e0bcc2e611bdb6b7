import type { Page } from "playwright-core";

/** Brings a car onto the bench as a file, by its document, complete or not, or by its text. */
export async function bringCar(page: Page, car: object | string): Promise<void> {
  const text = typeof car === "string" ? car : JSON.stringify(car);
  const { name } = JSON.parse(text) as { readonly name: string };
  await page.getByRole("button", { name: "Cars" }).click();
  await page
    .locator('input[type="file"]')
    .setInputFiles({ name: "brought.car.json", mimeType: "application/json", buffer: Buffer.from(text) });
  await page.getByRole("heading", { name, exact: true }).first().waitFor();
}
