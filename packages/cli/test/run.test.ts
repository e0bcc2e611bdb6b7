import { describe, expect, it } from "vitest";
import { COMMANDS } from "../src/commands/catalogue.ts";
import { run } from "../src/run.ts";
import { told } from "./fake-io.ts";

describe("help and version", () => {
  it.each([[[]], [["help"]], [["--help"]], [["-h"]]])("%j tells every command", async (words) => {
    const { code, out, err } = await told(words);
    expect(code).toBe(0);
    expect(err).toBe("");
    const widest = Math.max(...COMMANDS.map(({ name }) => name.length));
    for (const { name, summary } of COMMANDS) expect(out).toContain(`${name.padEnd(widest)}   ${summary}`);
    expect(out).toContain("Exit codes");
  });

  it.each(COMMANDS.map(({ name }) => name))("help %s tells usage, options and at least two examples", async (name) => {
    const command = COMMANDS.find((each) => each.name === name)!;
    const { code, out } = await told(["help", name]);
    expect(code).toBe(0);
    expect(command.examples.length).toBeGreaterThanOrEqual(2);
    for (const [, line] of command.examples) expect(out).toContain(line);
    for (const option of command.options) expect(out).toContain(`--${option.name}`);
    expect(out).toContain("Exit codes");
    expect((await told([name, "--help"])).out).toBe(out);
    expect(Math.max(...out.split("\n").map((line) => line.length))).toBeLessThanOrEqual(110);
  });

  it("tells its version", async () => {
    expect((await told(["--version"])).out).toMatch(/^armwright \d+\.\d+\.\d+\n$/);
  });
});

describe("words not understood end with exit code 2, one line on the errors and nothing on the output", () => {
  it.each<readonly [readonly string[], RegExp]>([
    [["stdy"], /^There is no command "stdy": did you mean study\?$/],
    [["frobnicate"], /^There is no command "frobnicate": the commands are study, .* and help\.$/],
    [["-x"], /^Options come after the command, found -x first: try npx armwright help$/],
    [["help", "chek"], /did you mean check\?$/],
    [["study"], /^study needs a car document/],
    [["study", "a", "b"], /^study does not know what to do with "b"/],
    [["study", "a", "--statons", "3"], /^study has no option --statons: did you mean --stations\?$/],
    [["study", "a", "-j"], /^study has no option -j: its options are --at,/],
    [["check", "a", "--json"], /^check has no option --json: it has none\.$/],
    [["study", "a", "--at"], /^--at needs a value: --at TRAVELS$/],
    [["study", "a", "--json=3"], /^--json takes no value, found 3\.$/],
    [["study", "a", "--json", "--json"], /^--json is given twice: keep one\.$/],
    [["study", "a", "--json", "--csv"], /^--json and --csv are two forms: keep one\.$/],
    [["study", "a", "--si"], /^--si goes with --json or --csv\.$/],
    [["study", "nix"], /^nix cannot be read: there is no such file or folder\.$/],
    [["compare", "a"], /^compare needs a second car document/],
    [["compare", "-", "-"], /^Only one document can come from standard input/],
    [["schema", "--study", "--reference"], /keep one\.$/],
  ])("%j", async (words, sentence) => {
    const { code, out, err } = await told(words);
    expect(code).toBe(2);
    expect(out).toBe("");
    expect(err.trimEnd()).toMatch(sentence);
    expect(err.endsWith("\n")).toBe(true);
    expect(err).not.toMatch(/\n\s+at /);
  });
});

it.each([
  [["check", "a\u001b[31mb\u009bc\u202e"], "a [31mb c"],
  [["st\u001b]0;x\u0007"], "There is no command"],
  [["study", "a", "--at\u001bx"], "has no option"],
  [["new", "--kind", "h-arm\u009b"], "is not known"],
])("cleans what was typed before it is said again, %j", async (words, said) => {
  const { code, err } = await told(words);
  expect(code).toBe(2);
  expect(err).toContain(said);
  expect(err.trimEnd()).not.toMatch(/[\p{Cc}\p{Cf}]/u);
});

it("cleans the names of files that it wrote, and a car's name", async () => {
  const { err, out } = await told(["new", "--kind", "h-arm", "--out", "a\u001b[31m.json"]);
  expect(out).toBe("");
  expect(err.replaceAll("\n", "")).not.toMatch(/[\p{Cc}\p{Cf}]/u);
  expect(JSON.parse((await told(["new", "--kind", "h-arm", "--name", "my\u009b31m car"])).out).name).toBe("my 31m car");
});

it("calls its own error a bug, with the place and without a stack", async () => {
  let err = "";
  const code = await run(["check", "a"], {
    out: () => {},
    err: (text) => {
      err += text;
    },
    read: () => {
      throw new TypeError("no such thing");
    },
    write: () => {},
    writeBytes: () => {},
    makeFolder: () => {},
    exists: () => false,
    isSame: () => false,
    columns: 80,
    colour: { out: false, err: false },
  });
  expect(code).toBe(70);
  expect(err).toMatch(/^This is a bug in armwright; please report it with the car document\. \(no such thing; .+\)\n$/);
});
