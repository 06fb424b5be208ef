// Texts that mean harm come out as letters, and change no sum.

import { describe, expect, it } from "vitest";
import { printed } from "../../src/index.ts";
import { inspectionOf } from "./scene.ts";

const hostile = inspectionOf("heather-garth-hostile");
const plain = inspectionOf("heather-garth");
// Characters that a terminal, a page or a reader acts on: C0 but for the line break, C1, turned and hidden letters.
// eslint-disable-next-line no-control-regex
const acts = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u200b-\u200f\u2028-\u202e\u2066-\u2069\ufeff]/;

describe("a plan with texts that mean harm", () => {
  it("is read but for the three names that are none, and says where they stand", () => {
    const got = hostile.report.problems.map((one) => one.got);
    expect(got).toEqual(['"=1+1"', '"<b>ewes</b>"', '"../../etc/passwd"']);
    for (const one of hostile.report.problems) expect(one.line).toBeGreaterThan(400);
  });

  it("gives every sum of the plain twin", () => {
    const sums = (of: typeof plain) =>
      of.report.findings
        .filter((one) => !one.rule.startsWith("access/") && one.found !== null)
        .map((one) => [one.rule, ...one.features.map((feature) => feature.name), one.found?.value].join("|"))
        .sort();
    expect(sums(hostile)).toEqual(sums(plain));
  });

  it.each([".txt", ".svg", ".html"] as const)("lets no character through that acts, in %s", async (ending) => {
    expect(acts.exec(await printed(hostile, ending))?.[0]).toBeUndefined();
  });

  it.each([".svg", ".html"] as const)("lets no markup through in %s", async (ending) => {
    const text = await printed(hostile, ending);
    expect(text).not.toMatch(/<script|<img|<b>|<i>|<svg onload|<a\s+href=['"]?javascript/i);
    // what a tag may hold: no attribute of ours listens to anything
    expect(text).not.toMatch(/<[a-z][^>]*\son[a-z]+\s*=/i);
  });

  it.each([".json", ".sarif"] as const)("stays one readable %s, without characters that act", async (ending) => {
    const text = await printed(hostile, ending);
    expect(() => JSON.parse(text) as unknown).not.toThrow();
    expect(acts.exec(text)?.[0]).toBeUndefined();
  });
});
