// What somebody writes who has seen one plan: each slip is answered with what to write instead.

import { describe, expect, it } from "vitest";
import { checkPlan, inspect, printed, type Report } from "../src/index.ts";

const head = "sightrail: 1\ntitle: A first plan\nplace: [england]\n";
const reportOf = (text: string): Report => checkPlan({ file: "first.yaml", text }, { asOf: "2026-11-25" });
const hints = (text: string): readonly string[] => reportOf(text).problems.map(({ hint }) => hint);

describe("a first plan", () => {
  it.each([
    ["no first line", "title: A\nplace: [england]\n", 'write for instance "sightrail: 1"'],
    ["no place", "sightrail: 1\ntitle: A\n", 'write for instance "place: [england]"'],
    [
      "a well under its own word",
      `${head}wells: {by the house: {at: [3, 4], existing: true}}\n`,
      "write water, with kind: well in each",
    ],
    [
      "a fence without a name",
      `${head}fence: {line: [[0, 0], [9, 0]], height: 1.2}\n`,
      "write fences, and give the thing a name: fences: {my fence: {line: ...}}",
    ],
    ["a pond without a name", `${head}pond: {at: [3, 4]}\n`, "water: {my pond: {at: ...}}"],
    ["a peg that is only a pair", `${head}survey: {stations: {A: [0, 0]}}\n`, "write {at: [0, 0]}"],
    [
      "a peg by a word of one's own",
      `${head}survey: {stations: {A: {at: [0, 0]}, B: {from: A, tape: 30.2}}}\n`,
      "write for instance {line_to: P1, tape: 42.35} or {ties:",
    ],
  ])("with %s is told what to write", (_, text, hint) => {
    const told = hints(text);
    expect(told).toHaveLength(1);
    expect(told[0]).toContain(hint);
  });
});

describe("the place of a plan", () => {
  it.each([
    ["England", ["england"]],
    ["Portugal", ["portugal"]],
    ["the United States", ["united states"]],
    ["new-zealand", ["new zealand"]],
    ["UK", ["uk"]],
  ])("%s is understood", (written, places) => {
    const report = reportOf(head.replace("[england]", written));
    expect(report.problems).toEqual([]);
    expect(report.place).toEqual(places);
  });
  it("that is not known is told, with a larger one to name, and is not in the head as though it had rules", async () => {
    const [told] = hints(head.replace("england", "Vermont"));
    expect(told).toContain("name a larger place round it");
    const inspection = inspect([{ file: "first.yaml", text: head.replace("england", "Vermont") }], {
      asOf: "2026-11-25",
    });
    const head1 = (await printed(inspection, ".txt")).split("\n\n")[0];
    expect(head1).toContain("rules of: any place");
    expect(head1).not.toContain("Vermont");
  });
});
