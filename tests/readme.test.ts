// README's first plan gives the finding that README prints.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { inspect, printed } from "../src/index.ts";
import { root } from "./house/rule-files.ts";

const readme = readFileSync(join(root, "README.md"), "utf8");
const plan = /```yaml\n([\s\S]*?)```/.exec(readme)?.[1] ?? "";
const shown = /```\n( 1\. [\s\S]*?)```/.exec(readme)?.[1] ?? "";

describe("README", () => {
  it("opens with the job in one paragraph", () => {
    expect(readme.split("\n\n")[1]?.length).toBeGreaterThan(300);
  });
  it("shows the finding that its plan gives", async () => {
    const inspection = inspect([{ file: "paddock.yaml", text: plan }], { asOf: "2026-11-25" });
    expect(inspection.report.problems).toEqual([]);
    const text = await printed(inspection, ".txt", { width: 100 });
    expect(shown.trim().length).toBeGreaterThan(50);
    expect(text.replace(/\s+/g, " ")).toContain(shown.trim().replace(/\s+/g, " "));
  });
});
