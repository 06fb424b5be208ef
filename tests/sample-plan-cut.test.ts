// The sample plan with one thing taken away at a time: the answer is a need or a problem that reads well, never silence
// where a rule waited for it, never a crash.

import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse, stringify } from "yaml";
import { checkPlan, type Report } from "../src/index.ts";

const text = readFileSync(new URL("tables/sample-plan.yaml", import.meta.url), "utf8");
type Data = Record<string, unknown>;
const whole = (): Data => parse(text) as Data;

function without(path: readonly string[]): Report {
  const data = whole();
  let at: Data = data;
  for (const key of path.slice(0, -1)) at = at[key] as Data;
  const last = path.at(-1) ?? "";
  expect(Object.hasOwn(at, last), path.join("/")).toBe(true);
  delete at[last];
  return checkPlan({ file: "cut.yaml", text: stringify(data) }, { asOf: "2026-11-25", remedies: false });
}

/** Every path to a value of the sample, feature properties included. */
function paths(data: unknown, path: readonly string[] = []): readonly (readonly string[])[] {
  if (typeof data !== "object" || data === null || Array.isArray(data)) return [];
  return Object.entries(data).flatMap(([key, value]) => [[...path, key], ...paths(value, [...path, key])]);
}

const said = (report: Report): string =>
  [
    ...report.problems.map(({ expected, got, hint }) => `${expected} | ${got} | ${hint}`),
    ...report.needs.map((need) => `${need.path} | ${need.asks}`),
  ].join("\n");

describe("the sample plan, cut", () => {
  const all = paths(whole());
  it("has more than two hundred things to take away", () => {
    expect(all.length).toBeGreaterThan(200);
  });
  it("never crashes, and says nothing unreadable", () => {
    // Every fifth of them, in turn over all kinds; the whole list takes a minute and a half.
    for (const path of all.filter((_, index) => index % 5 === 0)) {
      const words = said(without(path));
      expect(words, path.join("/")).not.toMatch(/undefined|\[object|NaN/);
    }
  });
  const table: readonly (readonly [path: string, words: RegExp])[] = [
    ["sightrail", /sightrail/],
    ["title", /title/],
    ["place", /place/],
    ["survey/stations/P1", /P1/],
    ["survey/stations/P2/tape", /tape/],
    ["survey/stations/P3/side", /side/],
    ["survey/stations/P3/ties", /P3|ties/],
    ["survey/stations/B3/out", /out/],
    ["survey/compass", /compass/],
    ["walls/march wall/line", /line/],
    ["walls/march wall/height", /height of wall "march wall"/],
    ["fences/goat fence/height", /height of fence "goat fence"/],
    ["fences/goat fence/left", /left/],
    ["animals/goats", /on which side of fence "goat fence" the stock is/],
    ["trees/ash/girth", /ash/],
    ["trees/ash/at", /at/],
    ["drains/kitchen/bore", /bore of drain/],
    ["drains/kitchen/inverts", /invert|fall/],
    ["vehicles/pickup/turning_circle", /turning|circle/],
    ["drains/kitchen/line", /line/],
    ["septic_tanks/tank", /tank/],
    ["outfalls/ditch end", /ditch end/],
    ["chambers/inspection 1", /inspection 1/],
    ["buildings/bunkhouse/outline", /outline|B/],
    ["surfaces/yard", /yard/],
    ["surfaces/track/width", /width/],
    ["gates/foot gate/along", /along/],
    ["animals/goats/species", /write for instance "species: goat"/],
    ["water/well/kind", /write for instance "kind: well"/],
    ["walls/march wall/line", /write for instance ["{].*line: /],
    ["banks/cutting/crest", /"crest" \| "cutting" without it \| (?!add one of them)/],
    ["survey/stations/B1/left", /the key "left" or "right" \| peg B1 without it \| write for instance "left: 2.30"/],
    ["vehicles/pickup", /how wide the vehicle of manoeuvre "park pickup" is/],
    ["surfaces/yard/for", /what mass surface "yard" is known to carry/],
    ["survey/stations/B4/out", /or leave "square_off" out/],
  ];
  it.each(table)("without %s", (path, words) => {
    expect(said(without(path.split("/")))).toMatch(words);
  });
});

describe("a question", () => {
  it("is asked once, by whoever asks it most closely", () => {
    const about = (path: string, words: string): readonly string[] =>
      without(path.split("/"))
        .needs.map(({ asks }) => asks)
        .filter((asks) => asks.includes(words));
    expect(about("drains/yard drain/form", 'trench "yard drain"').filter((asks) => /deep|depth/.test(asks))).toEqual([
      'how deep trench "yard drain" is dug',
    ]);
    expect(about("strips/behind the fence/for", "used for")).toHaveLength(1);
    expect(
      about("drains/kitchen/carries", 'drain "kitchen"').filter((asks) => /carries|runs in/.test(asks)),
    ).toHaveLength(1);
  });
});

describe("silence", () => {
  it("is never a pass: with no services and no `none`, the report asks and the exit code is 1 or 2", () => {
    const data = whole();
    delete data["services"];
    delete data["none"];
    const report = checkPlan({ file: "silent.yaml", text: stringify(data) }, { asOf: "2026-11-25", remedies: false });
    expect(report.problems).toEqual([]);
    expect(
      report.needs.some(
        (need) => need.reason === "unsaid" && need.stakes === "safety" && /overhead lines/.test(need.asks),
      ),
    ).toBe(true);
    expect(
      report.needs.some(
        (need) => need.reason === "unsaid" && need.stakes === "safety" && /buried services/.test(need.asks),
      ),
    ).toBe(true);
  });
});
