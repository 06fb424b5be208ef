// The program starts the same with what was compiled beforehand, without it, and with what another node compiled.

import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, expect, test } from "vitest";
import { root } from "./house/rule-files.ts";

const folder = mkdtempSync(join(tmpdir(), "sightrail-start-"));
cpSync(join(root, "dist"), folder, { recursive: true });
const code = join(folder, readdirSync(folder).find((name) => name.endsWith(".code")) ?? "none");
afterAll(() => rmSync(folder, { recursive: true }));

const report = (): string =>
  spawnSync(
    process.execPath,
    [join(folder, "sightrail.cjs"), "check", join(root, "examples/gate-and-lorry/plan.yaml")],
    {
      encoding: "utf8",
    },
  ).stdout;

test("the code compiled beforehand changes nothing of the report, be it whole, foreign or gone", () => {
  const whole = report();
  expect(whole).toContain("LOOKED AT");
  writeFileSync(
    code,
    readFileSync(code).map((byte, i) => (i < 64 ? 255 - byte : byte)),
  );
  expect(report()).toBe(whole);
  rmSync(code);
  expect(report()).toBe(whole);
});

test("what the build compiled is taken over at the start", () => {
  const names = readdirSync(join(root, "dist"));
  const program = names.find((name) => /^program-.*\.cjs$/.test(name)) ?? "none";
  const loading = `import { loadProgram } from ${JSON.stringify(pathToFileURL(join(root, "src/cli/load-program.ts")).href)};
    console.log(loadProgram(new URL(${JSON.stringify(pathToFileURL(join(root, "dist", program)).href)})).script.cachedDataRejected);`;
  const said = spawnSync(process.execPath, ["--import", "tsx", "--input-type=module", "-e", loading], {
    encoding: "utf8",
    cwd: root,
  });
  expect(said.stdout.trim()).toBe("false");
});
