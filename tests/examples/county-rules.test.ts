// The example of a county's own rule: its files are read whole, and judge the shed beside them.
// COMPUTED: the shed's side lies at 5.20 m north of the boundary on the plan's own east line; 7.00 m are wanted: 1.80 m short.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { main } from "../../src/cli/main.ts";
import { root } from "../house/rule-files.ts";

const folder = join(root, "examples/county-rules");

async function run(...args: readonly string[]) {
  let out = "";
  let err = "";
  const streams = {
    out: (text: string) => (out += text),
    err: (text: string) => (err += text),
    readInput: () => "",
    today: "2026-11-25",
    columns: 200,
    colour: false,
  };
  const code = await main(args, streams);
  return { code, out: out.replace(/\s+/g, " "), err };
}

describe("examples/county-rules", () => {
  it("judges by the county's own law, and says who says so", async () => {
    const { code, out } = await run("check", join(folder, "shed.yaml"), "--rules", join(folder, "cards"));
    expect(code).toBe(1);
    expect(out).toContain("rules of: Marsh County, and any place");
    expect(out).toContain(
      'Building "tool shed" stands in the county set-back: 5.20 m clear of boundary "lane side"; at least 7.00 m is wanted.',
    );
    expect(out).toContain("Marsh County: Building code of Marsh County (invented), 4.2; law, recalled");
    expect(out).toMatch(/Do Move building "tool shed" 1\.9\d? m to the north/);
    expect(out).not.toContain("COULD NOT BE READ");
  });
  it("prints the rule in words", async () => {
    const { code, out } = await run("reason", "cards/set-back", "--rules", join(folder, "cards"));
    expect(code).toBe(0);
    expect(out).toContain("clear distance must be at least 7 m");
  });
  it("says in its README what its files hold", () => {
    const readme = readFileSync(join(folder, "README.md"), "utf8");
    for (const file of ["set-back", "sources", "places"]) expect(readme).toContain(`cards/${file}.yaml`);
  });
});
