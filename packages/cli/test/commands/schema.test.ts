import { carJsonSchema, carReference } from "@armwright/engine/document";
import { expect, it } from "vitest";
import { told } from "../fake-io.ts";

it("prints the form of the car document", async () => {
  expect(JSON.parse((await told(["schema"])).out)).toEqual(JSON.parse(JSON.stringify(carJsonSchema())));
});

it("prints the field reference", async () => {
  expect((await told(["schema", "--reference"])).out).toBe(carReference());
});

it("writes to a file", async () => {
  const { out, files } = await told(["schema", "--study", "--out", "study.schema.json"]);
  expect(out).toBe("");
  expect(JSON.parse(files.get("study.schema.json")!).title).toBe("Armwright study, version 1");
});
