// Broken texts and what is told of each: code, line, column (counted by hand), and the words that matter.

import { describe, expect, test } from "vitest";
import type { ProblemCode } from "../../src/model/problem.ts";
import { readYaml } from "../../src/reading/read-yaml.ts";

interface Broken {
  readonly name: string;
  readonly text: string;
  readonly code: ProblemCode;
  readonly at: readonly [number, number];
  /** Found in expected, got and hint together. */
  readonly says: readonly string[];
  /** What is still read. */
  readonly data: unknown;
}

const broken: readonly Broken[] = [
  {
    name: "decimal comma in braces",
    text: "gate: {width: 2,6}\n",
    code: "decimal-comma",
    at: [1, 15],
    says: ['"2,6"', "write 2.6"],
    data: {},
  },
  {
    name: "decimal commas in braces, with doubt and a neighbour",
    text: "ash: {girth: 1,75 ± 0,02, height: 9}\n",
    code: "decimal-comma",
    at: [1, 14],
    says: ['"1,75 ± 0,02"', "write 1.75 ± 0.02"],
    data: { ash: { height: 9 } },
  },
  {
    name: "decimal commas in a pair",
    text: "P1: {at: [48,52, 12,30]}\n",
    code: "decimal-comma",
    at: [1, 10],
    says: ["[48.52, 12.30]", "2 numbers"],
    data: { P1: {} },
  },
  {
    name: "decimal comma on its own line",
    text: "wall:\n  height: 1,26\n  thickness: 0.6\n",
    code: "decimal-comma",
    at: [2, 11],
    says: ['"1,26"', "write 1.26"],
    data: { wall: { thickness: 0.6 } },
  },
  {
    name: "decimal comma with a unit",
    text: "wall:\n  height: 1,26 m\n",
    code: "decimal-comma",
    at: [2, 11],
    says: ["write 1.26 m"],
    data: { wall: {} },
  },
  {
    name: "no space behind the colon, in braces",
    text: "P1: {run:8, left: 2}\n",
    code: "not-yaml",
    at: [1, 6],
    says: ["space behind the colon", '"run: 8"'],
    data: { P1: { left: 2 } },
  },
  {
    name: "no space behind the colon, in brackets",
    text: "line: [at:B1, B2]\n",
    code: "not-yaml",
    at: [1, 8],
    says: ["space behind the colon", '"at: B1"'],
    data: {},
  },
  {
    name: "no space behind the colon, on a line",
    text: "walls:\n  march:\n    height:1.2\n    thickness: 0.6\n  low:\n    height: 0.4\n",
    code: "not-yaml",
    at: [3, 5],
    says: ["space behind the colon", '"height: 1.2"'],
    data: { walls: { low: { height: 0.4 } } },
  },
  {
    name: "unclosed bracket",
    text: "walls:\n  march:\n    line: [P1, P2\n    height: 2\nrain: 3\n",
    code: "not-yaml",
    at: [3, 11],
    says: ["[ that is never closed", "closing ]"],
    data: { walls: {}, rain: 3 },
  },
  {
    name: "unclosed brace",
    text: "a: {b: 1\nc: 2\n",
    code: "not-yaml",
    at: [1, 4],
    says: ["{ that is never closed"],
    data: { c: 2 },
  },
  {
    name: "unclosed quote",
    text: 'c: 2\na: "x\nb: 1\n',
    code: "not-yaml",
    at: [2, 4],
    says: ['" that is never closed'],
    data: { c: 2 },
  },
  {
    name: "bracket closed by the wrong sign",
    text: "a: [1, 2}\nb: 1\n",
    code: "not-yaml",
    at: [1, 4],
    says: ["[ that is never closed"],
    data: { b: 1 },
  },
  {
    name: "closing bracket too many",
    text: "b: 1\na: ]\n",
    code: "not-yaml",
    at: [2, 4],
    says: ["nothing to close"],
    data: { b: 1 },
  },
  {
    name: "two colons on a line",
    text: "a: b: c\n",
    code: "not-yaml",
    at: [1, 4],
    says: ["quotes"],
    data: {},
  },
  {
    name: "line without a colon",
    text: "a: 1\nheight\nb: 2\n",
    code: "not-yaml",
    at: [2, 1],
    says: ["colon", '"height"'],
    data: { a: 1 },
  },
  {
    name: "crooked list",
    text: "c: 4\na:\n  - 1\n - 2\nb: 3\n",
    code: "not-yaml",
    at: [4, 1],
    says: ["same column"],
    data: { c: 4 },
  },
  {
    name: "tabs as indent, told once",
    text: "a:\n\tb: 1\n\tc: 2\n",
    code: "not-yaml",
    at: [2, 1],
    says: ["a tab, here and on 1 more", "two spaces"],
    data: { a: { b: 1, c: 2 } },
  },
  {
    name: "two commas",
    text: "a: [1,, 2]\n",
    code: "not-yaml",
    at: [1, 7],
    says: ["two commas"],
    data: {},
  },
  {
    name: "sign that cannot begin a text",
    text: "a: @home\nb: 1\n",
    code: "not-yaml",
    at: [1, 4],
    says: ["begins with @", "quotes"],
    data: { b: 1 },
  },
  {
    name: "unknown escape",
    text: 'a: "\\q"\nb: 1\n',
    code: "not-yaml",
    at: [1, 5],
    says: ["backslash"],
    data: { b: 1 },
  },
  {
    name: "key twice",
    text: "wall:\n  height: 1\n  height: 2\n",
    code: "duplicate-key",
    at: [3, 3],
    says: ['"height"', "line 2"],
    data: { wall: { height: 1 } },
  },
  {
    name: "several documents",
    text: "a: 1\n---\nb: 2\n",
    code: "several-documents",
    at: [2, 1],
    says: ["---"],
    data: { a: 1 },
  },
  {
    name: "directive that would turn 1:40 into a hundred",
    text: "%YAML 1.1\n---\nfall: 1:40\n",
    code: "not-yaml",
    at: [1, 1],
    says: ["%YAML 1.1", "leave out"],
    data: { fall: "1:40" },
  },
  {
    name: "alias to nothing, with a near name",
    text: "a: &gate {w: 1}\nb: *gaet\n",
    code: "unknown-name",
    at: [2, 4],
    says: ["*gaet", "*gate"],
    data: { a: { w: 1 } },
  },
  {
    name: "alias inside itself",
    text: "a: &x {b: *x, c: 1}\n",
    code: "circular",
    at: [1, 11],
    says: ["*x"],
    data: { a: { c: 1 } },
  },
  {
    name: "unknown tag",
    text: "a: !metres 3\nb: 1\n",
    code: "not-yaml",
    at: [1, 4],
    says: ["!metres"],
    data: { b: 1 },
  },
  {
    name: "merge key",
    text: "a: &a {b: 1}\nc: {<<: *a, d: 2}\n",
    code: "unknown-key",
    at: [2, 5],
    says: ["<<", "write the properties out"],
    data: { a: { b: 1 }, c: { d: 2 } },
  },
  { name: "not a number", text: "a: .nan\nb: 1\n", code: "not-a-number", at: [1, 4], says: [".nan"], data: { b: 1 } },
  { name: "infinity", text: "a: -.inf\nb: 1\n", code: "not-a-number", at: [1, 4], says: ["-.inf"], data: { b: 1 } },
  { name: "beyond all numbers", text: "a: [1e400]\n", code: "not-a-number", at: [1, 5], says: ["1e400"], data: {} },
  {
    name: "name that JavaScript keeps for itself",
    text: "trees: {__proto__: {at: 1}, ash: 2}\n",
    code: "bad-name",
    at: [1, 9],
    says: ["__proto__"],
    data: { trees: { ash: 2 } },
  },
  {
    name: "list as key",
    text: "? [1, 2]\n: 3\nb: 1\n",
    code: "not-yaml",
    at: [1, 3],
    says: ["plain word as key"],
    data: { b: 1 },
  },
  {
    name: "control character",
    text: "a: x\nb: \u0007y\n",
    code: "not-yaml",
    at: [2, 4],
    says: ["U+0007"],
    data: { a: "x", b: "y" },
  },
  {
    name: "non-breaking space",
    text: "a:\u00a01\n",
    code: "not-yaml",
    at: [1, 3],
    says: ["U+00A0"],
    data: { a: 1 },
  },
  {
    name: "text in another encoding",
    text: "a: 1\nb: 4.15 \ufffd 0.05\n",
    code: "not-yaml",
    at: [2, 9],
    says: ["UTF-8"],
    data: { a: 1, b: "4.15 \ufffd 0.05" },
  },
  {
    name: "JSON without a comma",
    text: '{"walls": {"march": {"height": 1.2 "thickness": 0.6}, "low": {"height": 0.4}}}',
    code: "not-yaml",
    at: [1, 32],
    says: ["put a comma between"],
    data: { walls: { low: { height: 0.4 } } },
  },
];

describe("broken texts", () => {
  test.each(broken)("$name", ({ text, code, at, says, data }) => {
    const read = readYaml("plan.yaml", text);
    expect(read.problems.map((problem) => [problem.code, problem.line, problem.column])).toEqual([[code, ...at]]);
    const [problem] = read.problems;
    const words = `${problem?.expected} | ${problem?.got} | ${problem?.hint}`;
    for (const piece of says) expect(words).toContain(piece);
    expect(problem?.file).toBe("plan.yaml");
    expect(read.document?.data).toEqual(data);
  });

  test.each([
    ["nothing at all", "", "not-yaml"],
    ["only a comment", "# to do\n", "not-yaml"],
    ["UTF-16 read as UTF-8", "\u0000a\u0000:\u0000 \u00001", "not-yaml"],
    ["ten million characters and one", "a".repeat(10_000_001), "file-too-large"],
  ])("%s gives one problem and no document", (_, text, code) => {
    const read = readYaml("plan.yaml", text);
    expect(read.document).toBeNull();
    expect(read.problems.map((problem) => problem.code)).toEqual([code]);
  });

  test("every problem of a text is told, in the order of the lines", () => {
    const read = readYaml("plan.yaml", "a: 1,5\nb: {c:1}\nd: *gone\nd: 2\ne: .inf\n");
    expect(read.problems.map((problem) => [problem.line, problem.code])).toEqual([
      [1, "decimal-comma"],
      [2, "not-yaml"],
      [3, "unknown-name"],
      [4, "duplicate-key"],
      [5, "not-a-number"],
    ]);
  });

  test("no more than twenty are told, and a count of the rest", () => {
    const read = readYaml(
      "plan.yaml",
      lines(50, (i) => `k${i}: 1,5`),
    );
    expect(read.problems).toHaveLength(21);
    expect(read.problems.at(-1)?.got).toBe("30 more problems from this line on");
    expect(read.problems.at(-1)?.line).toBe(21);
  });
});

describe("sound texts", () => {
  // YAML 1.2.2, section 10.3.2 (core schema, tag resolution): MEMORY.
  test.each([
    ["0o17", 15],
    ["0x1F", 31],
    ["017", 17],
    ["+12e03", 12_000],
    ["-0.5", -0.5],
    ["~", null],
    ["", null],
    ["true", true],
    ["False", false],
    ["yes", "yes"],
    ["1:40", "1:40"],
    ["12:30:45", "12:30:45"],
    ["2024-01-05", "2024-01-05"],
    ["1_000", "1_000"],
    ["1 in 40", "1 in 40"],
    ["5'2\"", "5'2\""],
    ["'1,5'", "1,5"],
    ["4.15 ± 0.05", "4.15 ± 0.05"],
    ["march wall, 3 m long", "march wall, 3 m long"],
  ])("%s is read as core YAML has it", (written, value) => {
    const read = readYaml("plan.yaml", `a: ${written}\n`);
    expect(read.problems).toEqual([]);
    expect(read.document?.data).toEqual({ a: value });
  });

  test("byte order mark and the line ends of another system make no difference", () => {
    const read = readYaml("plan.yaml", "\ufeffa: 1\r\nb:\r\n  c: [1, 2]\r\n");
    expect(read.problems).toEqual([]);
    expect(read.document?.data).toEqual({ a: 1, b: { c: [1, 2] } });
    expect(read.document?.locate(["b", "c"], "value")).toEqual({ line: 3, column: 6 });
  });

  test("tight pairs, and mixed lists that are no decimal commas, stay lists", () => {
    const text = "a: [18,9]\nb: [[1,2], [3,4]]\nc: [90 mm,110 mm, 70 mm]\nd: [18,-9, 3]\ne: [1.5,2.5, 3.5]\n";
    expect(readYaml("plan.yaml", text).problems).toEqual([]);
  });

  test("JSON reads as JSON.parse reads it, tabs and all", () => {
    const value = { a: [1, -2.5e3, "x: y", 'ü \u0001 "\\/', true, null], "b c": { "1": [], d: {} }, e: "1,5" };
    for (const indent of ["", "  ", "\t"]) {
      const text = JSON.stringify(value, null, indent);
      const read = readYaml("plan.json", text);
      expect(read.problems).toEqual([]);
      expect(read.document?.data).toEqual(JSON.parse(text));
    }
  });
});

describe("where things are", () => {
  const text = [
    "walls:", // 1
    "  march wall:", // 2
    "    height: &h 1.26", // 3
    "    line: [{run: 0}, {run: 20, right: 1}]", // 4
    "    note:", // 5
    "  low wall:", // 6
    "    height: *h", // 7
    "shared: &s", // 8
    "  depth: 2", // 9
    "again: *s", // 10
    "",
  ].join("\n");
  const document = readYaml("plan.yaml", text).document;

  test.each([
    ["key", ["walls", "march wall"], 2, 3],
    ["value", ["walls", "march wall", "height"], 3, 16],
    ["key", ["walls", "march wall", "height"], 3, 5],
    ["value", ["walls", "march wall", "line", 1, "right"], 4, 39],
    ["value", ["walls", "march wall", "line", 1], 4, 22],
    ["key", ["walls", "march wall", "line", 1], 4, 22],
    ["value", ["walls", "march wall", "note"], 5, 5],
    ["value", ["walls", "march wall", "girth"], 2, 3],
    ["value", ["walls", "march wall", "height", "deeper"], 3, 5],
    ["key", ["walls", "march wall", "line", 7], 4, 5],
    ["value", ["walls", "low wall", "height"], 7, 13],
    ["value", ["again"], 10, 8],
    ["value", ["again", "depth"], 9, 10],
    ["value", [], 1, 1],
    ["value", ["nowhere", 3], 1, 1],
  ] as const)("the %s of %j is on line %i, column %i", (what, path, line, column) => {
    expect(document?.locate(path, what)).toEqual({ line, column });
  });

  test("an alias stands for the very thing, and its numbers are shared", () => {
    const data = document?.data as Record<string, unknown>;
    expect(data["again"]).toBe(data["shared"]);
  });

  test("what was left out can be asked for, also through an alias", () => {
    const read = readYaml("plan.yaml", "a: &a {height: 1,5, depth: 2}\nb: *a\nc: 1\n");
    expect(read.document?.isSpoiled?.(["a", "height"])).toBe(true);
    expect(read.document?.isSpoiled?.(["b", "height", "more"])).toBe(true);
    expect(read.document?.isSpoiled?.(["b", "depth"])).toBe(false);
    expect(read.document?.isSpoiled?.(["c"])).toBe(false);
    expect(read.document?.isSpoiled?.(["d"])).toBe(false);
  });
});

function lines(count: number, line: (i: number) => string): string {
  return Array.from({ length: count }, (_, i) => `${line(i)}\n`).join("");
}
