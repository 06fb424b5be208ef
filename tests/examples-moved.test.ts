// Every example moved, turned and mirrored: no verdict changes, and no value beyond rounding.
// The plots hang on peg A and the line to B: A is moved, the line is laid at a bearing, and left and right are exchanged.
// Turned, the bearing is a measurement more, of which the rules of the survey have something to say of their own.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { checkPlan, type Report } from "../src/index.ts";
import { root } from "./house/rule-files.ts";

const examples = [
  "gate-and-lorry",
  "sallow-yard",
  "heather-garth",
  "heather-garth-mended",
  "knocknabrack",
  "knocknabrack-mended",
  "sugar-ridge",
  "sugar-ridge-mended",
  "monte-da-azinheira",
  "monte-da-azinheira-mended",
  "tansy-bank",
  "tansy-bank-mended",
];

const textOf = (name: string): string => readFileSync(join(root, "examples", name, "plan.yaml"), "utf8");
const checked = (text: string): Report =>
  checkPlan({ file: "plan.yaml", text }, { asOf: "2026-11-25", remedies: false });

const moved = (text: string): string => text.replace("A: {at: [0, 0]}", "A: {at: [431.7, -1287.3]}");
const exchanged: Readonly<Record<string, string>> = { left: "right", right: "left" };
const mirrored = (text: string): string => text.replace(/\b(?:left|right)\b/g, (side) => exchanged[side] ?? side);

/** What is found of what, without the words. */
const told = (report: Report) =>
  report.findings
    .map(({ rule, features, stage, wanted, verdict, found }) => ({
      key: [rule, ...features.map(({ name }) => name), wanted?.limit, stage, verdict].join(" | "),
      value: found?.value ?? null,
    }))
    .sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : (a.value ?? 0) - (b.value ?? 0)));

const turned = (text: string, bearing: number): string =>
  text.replace(/\bB: \{line_to: A,/, `B: {from: A, bearing: ${bearing} deg grid,`);
const ofTheSurvey = /^survey\//;
/** Past one and past three right angles, and a slant that is no round part of one. */
const bearings = [63.4, 217.9, 301.3];

describe.each(examples)("%s", (name) => {
  const text = textOf(name);
  const plain = checked(text);
  it("moved says the same", () => same(plain, checked(moved(text)), () => true));
  it("moved and mirrored says the same", () => same(plain, checked(mirrored(moved(text))), () => true));
  it.each(bearings)("turned to %s degrees, moved and mirrored says the same", (bearing) => {
    const other = checked(mirrored(moved(turned(text, bearing))));
    same(plain, other, (key) => !ofTheSurvey.test(key));
  });
});

function same(one: Report, other: Report, looksAt: (key: string) => boolean): void {
  const [here, there] = [one, other].map((report) => told(report).filter(({ key }) => looksAt(key)));
  expect(there?.map(({ key }) => key)).toEqual(here?.map(({ key }) => key));
  for (const [k, { key, value }] of (there ?? []).entries())
    expect(Math.abs((value ?? 0) - (here?.[k]?.value ?? 0)), key).toBeLessThanOrEqual(
      5e-6 * Math.max(1, Math.abs(value ?? 0)),
    );
}
