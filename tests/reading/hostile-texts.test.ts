// Texts made to hurt: each ends within two seconds, with a problem and without an exception; twice in one process,
// since a second one once ended processes.

import { describe, expect, test } from "vitest";
import { readYaml } from "../../src/reading/read-yaml.ts";

const mostMilliseconds = 2_000;

function rows(count: number, row: (i: number) => string): string {
  return Array.from({ length: count }, (_, i) => row(i)).join("");
}

const tower = rows(
  9,
  (i) =>
    `a${i}: &a${i} [${
      i === 0
        ? "1"
        : Array(9)
            .fill(`*a${i - 1}`)
            .join(", ")
    }]\n`,
);
const stairs = rows(2_000, (i) => `${" ".repeat(i)}a:\n`);

const hostile: readonly (readonly [string, string, string])[] = [
  ["20,000 open brackets", "[".repeat(20_000), "nested-too-deep"],
  ["20,000 open braces", "{".repeat(20_000), "nested-too-deep"],
  ["20,000 brackets, all closed", "[".repeat(20_000) + "]".repeat(20_000), "nested-too-deep"],
  ["20,000 keys in braces", "{a: ".repeat(20_000), "nested-too-deep"],
  ["20,000 dashes", "- ".repeat(20_000), "nested-too-deep"],
  ["20,000 question marks", "? ".repeat(20_000), "nested-too-deep"],
  ["2,000 indents", stairs, "nested-too-deep"],
  ["a million open brackets", "[".repeat(1_000_000), "nested-too-deep"],
  ["10,000 unclosed brackets", rows(10_000, (i) => `a${i}: [1\n`), "not-yaml"],
  ["20,000 quotes", '"'.repeat(20_001), "not-yaml"],
  ["20,000 documents", "---\n".repeat(20_000), "several-documents"],
  ["20,000 directives", "%a\n".repeat(20_000), "not-yaml"],
  ["20,000 tags", "! ".repeat(20_000), "not-yaml"],
  ["20,000 tabs", "a:\n" + "\tb\n".repeat(20_000), "not-yaml"],
  ["aliases of aliases of aliases", tower, "too-many-aliases"],
  ["1,001 aliases", `a: &a 1\n${rows(1_001, (i) => `b${i}: *a\n`)}`, "too-many-aliases"],
  [
    "a ladder of aliases",
    `a0: &a0 {b: 1}\n${rows(99, (i) => `a${i + 1}: &a${i + 1} {b: *a${i}}\n`)}`,
    "too-many-aliases",
  ],
  ["20,000 keys, one twice", `${rows(20_000, (i) => `k${i}: 1\n`)}k7: 2\n`, "duplicate-key"],
  ["20,000 times the same key", "k: 1\n".repeat(20_000), "duplicate-key"],
];

describe.each([1, 2])("round %i", () => {
  test.each(hostile)("%s", (_, text, code) => {
    const start = performance.now();
    const read = readYaml("plan.yaml", text);
    expect(performance.now() - start).toBeLessThan(mostMilliseconds);
    expect(read.problems.map((problem) => problem.code)).toContain(code);
    expect(read.problems.length).toBeLessThanOrEqual(21);
  });
});

describe("what stays allowed", () => {
  test("64 levels, but not 65", () => {
    const deep = (levels: number) => "[".repeat(levels) + "]".repeat(levels);
    expect(readYaml("plan.yaml", deep(64)).problems).toEqual([]);
    expect(readYaml("plan.yaml", deep(65)).problems.map((problem) => problem.code)).toEqual(["nested-too-deep"]);
  });

  test("a thousand aliases to a group, and 20,000 keys", () => {
    const text = `a: &a {b: 1, c: [2, 3]}\n${rows(1_000, (i) => `b${i}: *a\n`)}${rows(20_000, (i) => `k${i}: 1\n`)}`;
    const start = performance.now();
    const read = readYaml("plan.yaml", text);
    expect(performance.now() - start).toBeLessThan(mostMilliseconds);
    expect(read.problems).toEqual([]);
    expect(read.document?.locate(["b999", "c", 1], "value")).toEqual({ line: 1, column: 21 });
  });

  test("brackets inside text and quotes do not count as levels", () => {
    const text = `note: ${"a [ b ".repeat(100)}\nquote: '${"[".repeat(100)}'\nblock: |\n  ${"[".repeat(100)}\n`;
    expect(readYaml("plan.yaml", text).problems).toEqual([]);
  });
});
