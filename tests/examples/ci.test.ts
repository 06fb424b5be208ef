// The script for a repository of plans: its answer is the worst of all plans, whatever they are called.

import { execFileSync, spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { root } from "../house/rule-files.ts";

const place = mkdtempSync(join(tmpdir(), "plans-"));
afterAll(() => rmSync(place, { recursive: true }));

// Stands in for the program: exits with the number that the plan holds, and writes what it is told to save.
const stub = join(place, "stub.sh");
writeFileSync(stub, 'plan=$2\nshift 2\nwhile [ $# -gt 1 ]; do : > "$2"; shift 2; done\nexit "$(cat "$plan")"\n');
execFileSync("chmod", ["+x", stub]);

function check(plans: Readonly<Record<string, string>>) {
  const folder = mkdtempSync(join(place, "case-"));
  for (const [file, text] of Object.entries(plans)) {
    mkdirSync(join(folder, "plans", file, ".."), { recursive: true });
    writeFileSync(join(folder, "plans", file), text);
  }
  const script = join(root, "examples/ci/check-plans.sh");
  const env = { ...process.env, SIGHTRAIL: `sh ${stub}` };
  const { status } = spawnSync("sh", [script, "plans", "out"], { cwd: folder, env });
  return { status, saved: readdirSync(join(folder, "out")).sort() };
}

describe("check-plans.sh", () => {
  it.each([
    [{ "a/plan.yaml": "0", "b/plan.yaml": "0" }, 0],
    [{ "a/plan.yaml": "1", "b/plan.yaml": "0" }, 1],
    [{ "a/plan.yaml": "1", "b/plan.yaml": "2", "c/plan.yaml": "0" }, 2],
    [{ "a/plan.yaml": "3", "b/plan.yaml": "2" }, 3],
    [{ "a/plan.yaml": "127" }, 3],
  ] as const)("of %j is %i", (plans, worst) => {
    expect(check(plans).status).toBe(worst);
  });
  it("saves a SARIF file and a text for every plan, and takes blanks in names", () => {
    const { status, saved } = check({
      "low yard/plan.yaml": "0",
      "top.plan.yaml": "0",
      "node_modules/x/plan.yaml": "3",
    });
    expect(status).toBe(0);
    expect(saved).toEqual([
      "plans__low yard__plan.sarif",
      "plans__low yard__plan.txt",
      "plans__top.plan.sarif",
      "plans__top.plan.txt",
    ]);
  });
  it("is 2 where there is no plan", () => {
    expect(check({ "readme.txt": "0" }).status).toBe(2);
  });
});
