// A sound plan, spoilt a little at random (fixed seed): reading and checking never throw, never take long, and always
// give whole problems at places that are in the file.

import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readYaml } from "../../src/reading/read-yaml.ts";
import { validate } from "../../src/reading/validate.ts";
import type { Validator } from "../../src/reading/validate.ts";
import { newCompiler, readSchemas } from "../house/compile-validators.ts";

const folder = (path: string) => new URL(`../../${path}`, import.meta.url).pathname;
const sound = readFileSync(folder("tests/tables/sample-plan.yaml"), "utf8");
const check = newCompiler(readSchemas(folder("schemas"))).getSchema(
  "https://sightrail.invalid/schemas/plan.schema.json",
) as Validator;
const pieces = [
  ...Array.from("[]{}:,#&*!|>'\"%@`-?\t\n \\<~0159.é\u0000\u00a0"),
  "\n\n",
  ": ",
  "- ",
  "  ",
  "<<: ",
  "*a",
  "&a ",
  "---\n",
];
const mutations = 300;

/** Random numbers from 0 to 1 (mulberry32), the same for the same seed. */
function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

function spoilt(text: string, random: () => number): string {
  const at = Math.floor(random() * text.length);
  const span = Math.floor(random() * 12);
  const piece = pieces[Math.floor(random() * pieces.length)] ?? "";
  const lines = text.split("\n");
  const line = Math.floor(random() * lines.length);
  const ways = [
    () => text.slice(0, at) + piece + text.slice(at),
    () => text.slice(0, at) + text.slice(at + span),
    () => text.slice(0, at) + piece + text.slice(at + 1),
    () => text.slice(0, at),
    () => lines.toSpliced(line, 1).join("\n"),
    () => lines.toSpliced(line, 0, lines[Math.floor(random() * lines.length)] ?? "").join("\n"),
    () => lines.with(line, `  ${lines[line] ?? ""}`).join("\n"),
    () => lines.with(line, (lines[line] ?? "").trimStart()).join("\n"),
    () => text.slice(0, at) + text.slice(at, at + 40).replaceAll(".", ",") + text.slice(at + 40),
  ];
  return ways[Math.floor(random() * ways.length)]?.() ?? text;
}

test("the sound plan has no problem", () => {
  const read = readYaml("plan.yaml", sound);
  expect(read.problems).toEqual([]);
  expect(read.document === null ? null : validate(check, read.document)).toEqual([]);
});

test(`${mutations} spoilt plans`, () => {
  const random = randomFrom(20261125);
  let withProblems = 0;
  for (let i = 0; i < mutations; i++) {
    let text = sound;
    for (let times = 1 + Math.floor(random() * 3); times > 0; times--) text = spoilt(text, random);
    const start = performance.now();
    const read = readYaml("plan.yaml", text);
    const problems = [...read.problems, ...(read.document === null ? [] : validate(check, read.document))];
    expect(performance.now() - start, text).toBeLessThan(2_000);
    if (read.document === null) expect(problems.length, text).toBeGreaterThan(0);
    if (problems.length > 0) withProblems++;
    const lines = text.split("\n");
    for (const problem of problems) {
      const place = `${problem.line}:${problem.column} ${problem.code}`;
      expect(problem.line, place).toBeLessThanOrEqual(lines.length);
      expect(problem.column, place).toBeLessThanOrEqual((lines[problem.line - 1] ?? "").length * 2 + 2);
      for (const words of [problem.expected, problem.got, problem.hint]) {
        expect(words, place).not.toBe("");
        expect(words, place).not.toMatch(/undefined|\[object|NaN/u);
      }
    }
  }
  // Most slips show; those in names, numbers and remarks need not.
  expect(withProblems).toBeGreaterThan(mutations / 2);
});
