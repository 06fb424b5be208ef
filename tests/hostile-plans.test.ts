// Plans that somebody makes to break the program: each gets an answer of bounded length, in bounded time, and the rest is checked.
// The bounds are generous for a slow machine; without what holds them each of these takes a minute or more, or all memory.

import { describe, expect, it } from "vitest";
import { checkPlan, inspect, printed, type Report, wants } from "../src/index.ts";

const head = "sightrail: 1\ntitle: T\nplace: [england]\n";
const wall = "walls: {w: {line: [[0, 0], [9, 0]], height: 1, existing: true}}\n";
const many = (count: number, one: (at: number) => string): string =>
  Array.from({ length: count }, (_, at) => one(at)).join(", ");
const look = (text: string): Report =>
  checkPlan({ file: "p.yaml", text: head + text }, { asOf: "2026-11-25", remedies: "plain" });
const scribble = many(1900, (at) => `[${(at * 37) % 100}, ${(at * 53) % 101}]`);

describe("a plan that goes on and on", () => {
  it.each([
    ["ten thousand stages", `stages: [${many(10_000, (at) => `s${at}`)}]\n${wall}`, /at most 200 entries/],
    [
      "five thousand options",
      `${wall}options: {${many(5000, (at) => `o${at}: {remove: {walls: [w]}}`)}}\n`,
      /at most 200 keys/,
    ],
    [
      "scribbled ways",
      `surfaces: {${many(20, (at) => `s${at}: {centre_line: [${scribble}], width: 3, existing: true}`)}}\n`,
      /meets itself 200 times/,
    ],
    [
      "a number of a hundred thousand digits",
      `walls: {w: {line: [[0, 0], [9, 0]], height: "${"1 ".repeat(50_000)}m"}}\n`,
      /1 1 1 \.\.\./,
    ],
    [
      "twenty thousand spaces",
      `walls: {w: {line: [[0, 0], [9, 0]], height: "${" ".repeat(200_000)}!"}}\n`,
      /begin with a number/,
    ],
  ])("with %s", (_, text, words) => {
    const start = performance.now();
    const { problems } = look(text);
    expect(performance.now() - start).toBeLessThan(20_000);
    expect(problems.map(({ expected, got, hint }) => `${expected} ${got} ${hint}`).join("\n")).toMatch(words);
    expect(JSON.stringify(problems).length).toBeLessThan(60_000);
  });

  it("asks for no more than two hundred files", () => {
    expect(wants({ file: "p.yaml", text: `${head}include: [${many(5000, (at) => `f${at}.yaml`)}]\n` })).toHaveLength(
      200,
    );
  });

  it("tells the same thing of one line once, with how often it is so", async () => {
    const text = `${head}${wall}options: {${many(30, (at) => `o${at}: {changes: {}}`)}}\n`;
    const words = await printed(inspect([{ file: "p.yaml", text }], { asOf: "2026-11-25" }), ".txt");
    expect(words.split('got the key "changes"')).toHaveLength(2);
    expect(words).toContain('got the key "changes". 30 times.');
  });
});

describe("a plan with words that mean something to a machine", () => {
  it("takes no name of the machine's for one of the plan's", () => {
    const report = look(
      `stages: [now, constructor]\n${wall.replace("{w:", "{toString:")}vehicles: {valueOf: {like: constructor}, __proto__: {like: pickup}}\ndepartures: [{rule: walls/constructor, features: [hasOwnProperty], because: a b c, agreed_by: A. Bell, review: 2027-01-01}]\n`,
    );
    expect(report.problems.map(({ got }) => got)).toEqual(
      expect.arrayContaining(['"constructor"', '"__proto__"', '"walls/constructor"', '"hasOwnProperty"']),
    );
    expect(Object.hasOwn(Object.prototype, "like")).toBe(false);
  });
  it("lets nothing out that a terminal or a browser would act on", async () => {
    const odd = "\\e[31mRED <script>alert(1)</script> ]]> & \\u202Eback\\u2066 \\u0007";
    const text = `sightrail: 1\ntitle: "${odd}"\nplace: [england]\n${wall}fences: {p: {line: [[0, 0.5], [9, 0.5]], height: 1.8, keep_out: [fox], keep_out_side: left, note: "${odd}"}}\n"${odd}": 3\n`;
    const inspection = inspect([{ file: "p\u001b[31m<b>\u202E.yaml", text }], { asOf: "2026-11-25" });
    for (const ending of [".txt", ".html", ".svg", ".sarif", ".json"] as const) {
      const page = await printed(inspection, ending);
      // eslint-disable-next-line no-control-regex
      expect(page, ending).not.toMatch(/[\u0000-\u0009\u000B-\u001F\u202A-\u202E\u2066-\u2069]/);
      if (ending === ".html" || ending === ".svg") expect(page, ending).not.toMatch(/<script>alert|<b>|]]> & /);
    }
  });
});
