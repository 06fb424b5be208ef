// What is told of data that does not fit its schema. Lines and columns counted by hand.

import { describe, expect, test } from "vitest";
import type { Problem, ProblemCode } from "../../src/model/problem.ts";
import { readYaml } from "../../src/reading/read-yaml.ts";
import { validate } from "../../src/reading/validate.ts";
import type { Validator } from "../../src/reading/validate.ts";
import { newCompiler } from "../house/compile-validators.ts";
import { forms, plan, wall } from "./small-schemas.ts";

const compiler = newCompiler(new Map(Object.entries({ forms, wall, plan })));
const check = compiler.getSchema(plan.$id) as Validator;

/** A plan with one sound wall, whose lines are as given: the properties begin on line 4, column 5. */
function planWith(...properties: readonly string[]): string {
  return ["title: t", "walls:", "  march:", ...properties.map((line) => `    ${line}`), ""].join("\n");
}

const line = "line: [[0, 0], [3, 4]]";

function problemsOf(text: string): readonly Problem[] {
  const read = readYaml("plan.yaml", text);
  expect(read.document).not.toBeNull();
  return read.document === null ? [] : [...read.problems, ...validate(check, read.document)];
}

interface Case {
  readonly name: string;
  readonly text: string;
  readonly code: ProblemCode;
  readonly at: readonly [number, number];
  readonly says: readonly string[];
}

const cases: readonly Case[] = [
  {
    name: "a line from peg to peg is a list of pegs",
    text: planWith("height: 1", "line: A to B"),
    code: "wrong-type",
    at: [5, 11],
    says: ["put it in square brackets: [A, B]"],
  },
  {
    name: "a slip of a key is one problem, not two",
    text: planWith("heigth: 1", line),
    code: "unknown-key",
    at: [4, 5],
    says: ['"height", which is missing', '"heigth"', "write height"],
  },
  {
    name: "a slip of a key that a choice wants",
    text: planWith("height: 1", "lines: [[0, 0], [3, 4]]"),
    code: "unknown-key",
    at: [5, 5],
    says: ['"line", which is missing', "write line"],
  },
  {
    name: "another country's word for a key",
    text: planWith("tallness: 1", line),
    code: "unknown-key",
    at: [4, 5],
    says: ["write height"],
  },
  {
    name: "a key like one that is given",
    text: planWith("height: 1", "heights: 2", line),
    code: "unknown-key",
    at: [5, 5],
    says: ["height is given already"],
  },
  {
    name: "a key and its value run together",
    text: planWith("height: 1", `${line.slice(0, -1)}, {run 8}]`),
    code: "unknown-key",
    at: [5, 29],
    says: ['"run", which is missing', 'write "run: 8"'],
  },
  {
    name: "a number as key",
    text: "title: t\n6:\n",
    code: "unknown-key",
    at: [2, 1],
    says: ["a key cannot be a number", "decimal comma"],
  },
  {
    name: "a missing key, with what it is",
    text: planWith(line),
    code: "missing-key",
    at: [3, 3],
    says: ['the key "height"', '"march" without it', '"height: 1.26"', "how tall it stands"],
  },
  {
    name: "a missing key of the whole file",
    text: "walls:\n  march: {height: 1, line: [[0, 0], [3, 4]]}\n",
    code: "missing-key",
    at: [1, 1],
    says: ['the key "title"', '"title: Brindle Bank"'],
  },
  {
    name: "no form of a choice",
    text: planWith("height: 1"),
    code: "missing-key",
    at: [3, 3],
    says: ['"line" or "offsets" with "along"'],
  },
  {
    name: "a form of a choice begun",
    text: planWith("height: 1", "offsets: [1, 2]"),
    code: "missing-key",
    at: [3, 3],
    says: ['the key "along"'],
  },
  {
    name: "two forms of a choice",
    text: planWith("height: 1", line, "offsets: [1]", "along: a"),
    code: "contradiction",
    at: [3, 3],
    says: ['only one of "line" or "offsets" with "along"'],
  },
  {
    name: "two keys that bar each other",
    text: planWith("height: 1", line, "over: 1", "from: 2"),
    code: "contradiction",
    at: [3, 3],
    says: ['only one of "over" or "from"'],
  },
  {
    name: "a key that another asks for",
    text: planWith("height: 1", line, "run: 3"),
    code: "missing-key",
    at: [3, 3],
    says: ['"along" beside "run"', 'leave "run" out'],
  },
  {
    name: "a name that begins with a digit",
    text: "title: t\nwalls:\n  12: {height: 1, line: [[0, 0], [3, 4]]}\n",
    code: "bad-name",
    at: [3, 3],
    says: ["begins with a letter", "write P12"],
  },
  {
    name: "a name with a hyphen",
    text: "title: t\nwalls:\n  march-wall: {height: 1, line: [[0, 0], [3, 4]]}\n",
    code: "bad-name",
    at: [3, 3],
    says: ["march wall"],
  },
  {
    name: "a name in a value",
    text: planWith("height: 1", line, "near: 7 oaks"),
    code: "bad-name",
    at: [6, 11],
    says: ["write for instance oaks"],
  },
  {
    name: "a number as a name",
    text: planWith("height: 1", line, "near: 7"),
    code: "wrong-type",
    at: [6, 11],
    says: ["P7"],
  },
  {
    name: "a key that is none of a list",
    text: "title: t\ncounts: {sheeps: 3}\n",
    code: "unknown-key",
    at: [2, 10],
    says: ["sheep or goats", "did you mean sheep?"],
  },
  {
    name: "yes for true",
    text: planWith("height: 1", line, "existing: yes"),
    code: "wrong-type",
    at: [6, 15],
    says: ["true or false", '"yes"', "write true"],
  },
  {
    name: "off for false",
    text: planWith("height: 1", line, "existing: Off"),
    code: "wrong-type",
    at: [6, 15],
    says: ["write false"],
  },
  {
    name: "nothing behind the colon",
    text: planWith("height: # 1.2", line),
    code: "wrong-type",
    at: [4, 5],
    says: ["a length, such as 3.6 or 450 mm", "nothing", "#"],
  },
  {
    name: "a quoted decimal comma",
    text: planWith("height: 1", line, 'over: "1,26"'),
    code: "decimal-comma",
    at: [6, 11],
    says: ["write 1.26"],
  },
  {
    name: "a decimal comma in a slope",
    text: planWith("height: 1", line, "fall: [1 in 2,5]"),
    code: "wrong-type",
    at: [6, 11],
    says: ["a fall or slope, such as 1 in 40"],
  },
  {
    name: "four numbers where a pair belongs",
    text: planWith("height: 1", line, "at: [48,52,12,30]"),
    code: "decimal-comma",
    at: [6, 9],
    says: ["[48.52, 12.30]"],
  },
  {
    name: "three numbers where a pair belongs",
    text: planWith("height: 1", line, "at: [48, 52, 12]"),
    code: "decimal-comma",
    at: [6, 9],
    says: ["[48.52, 12] or [48, 52.12]"],
  },
  {
    name: "a word that is none of a list",
    text: planWith("height: 1", line, "build: drystone"),
    code: "unknown-word",
    at: [6, 12],
    says: ["one of dry stone or brick", "did you mean dry stone?"],
  },
  {
    name: "another country's word in a list",
    text: planWith("height: 1", line, "build: drystane"),
    code: "unknown-word",
    at: [6, 12],
    says: ["did you mean dry stone?"],
  },
  {
    name: "the wrong format",
    text: "title: t\nformat: 2\n",
    code: "unknown-word",
    at: [2, 9],
    says: ["1 | 2", "write 1"],
  },
  {
    name: "a day in another order",
    text: planWith("height: 1", line, "seen: 25.11.2026"),
    code: "bad-date",
    at: [6, 11],
    says: ["year-month-day", "2026-11-25"],
  },
  {
    name: "a number too small",
    text: planWith("height: 1", line, "people: 0"),
    code: "out-of-range",
    at: [6, 13],
    says: ["at least 1"],
  },
  {
    name: "a number too large",
    text: planWith("height: 1", line, "people: 51"),
    code: "out-of-range",
    at: [6, 13],
    says: ["at most 50"],
  },
  {
    name: "a word for a number",
    text: planWith("height: 1", line, "people: five"),
    code: "not-a-number",
    at: [6, 13],
    says: ["a whole number"],
  },
  {
    name: "an underscore in a number",
    text: planWith("height: 1", line, "over: 1_000"),
    code: "not-a-number",
    at: [6, 11],
    says: ["write 1000"],
  },
  {
    name: "an unknown length's unit left out",
    text: planWith("height: 1", line, "fall: 40"),
    code: "wrong-type",
    at: [6, 11],
    says: ["write the unit"],
  },
  {
    name: "a list too short",
    text: planWith("height: 1", "line: [[0, 0]]"),
    code: "wrong-type",
    at: [5, 11],
    says: ["at least 2 entries", "a list of 1"],
  },
  {
    name: "an entry twice",
    text: planWith("height: 1", "along: a", "offsets: [1, 2, 1]"),
    code: "name-taken",
    at: [6, 14],
    says: ["1 twice"],
  },
  {
    name: "one thing where a list belongs",
    text: planWith("height: 1", "line: P1"),
    code: "wrong-type",
    at: [5, 11],
    says: ["[P1]"],
  },
  {
    name: "no branch of a choice by sort",
    text: planWith("height: 1", "line: [[0, 0], true]"),
    code: "wrong-type",
    at: [5, 20],
    says: ["a list, such as [33, 14]", "a group of keys and values", "corner"],
  },
  {
    name: "the nearest branch of a choice: its deepest fault",
    text: planWith("height: 1", "line: [[0, 0], {run: [1]}]"),
    code: "wrong-type",
    at: [5, 26],
    says: ["a length"],
  },
  {
    name: "the nearest branch of a choice: a word",
    text: planWith("height: 1", "line: [[0, 0], corners]"),
    code: "unknown-word",
    at: [5, 20],
    says: ["did you mean corner?"],
  },
  {
    name: "an empty group",
    text: "title: t\nwalls: {}\n",
    code: "contradiction",
    at: [2, 1],
    says: ["at least 1 key"],
  },
  { name: "an empty text", text: "title: ''\n", code: "wrong-type", at: [1, 8], says: ["an empty text"] },
  {
    name: "a space left out behind the colon",
    text: "title: t\nwalls:\n  march:\n    height:1\n",
    code: "not-yaml",
    at: [4, 5],
    says: ['"height: 1"'],
  },
];

describe("one problem for one cause", () => {
  test.each(cases)("$name", ({ text, code, at, says }) => {
    const problems = problemsOf(text);
    expect(problems.map((problem) => [problem.code, problem.line, problem.column])).toEqual([[code, ...at]]);
    const [problem] = problems;
    const words = `${problem?.expected} | ${problem?.got} | ${problem?.hint}`;
    for (const piece of says) expect(words).toContain(piece);
  });

  test("what reading left out is not told again", () => {
    const problems = problemsOf(planWith("height: 1,26", line, "existing: .nan"));
    expect(problems.map((problem) => problem.code)).toEqual(["decimal-comma", "not-a-number"]);
  });

  test("sound data gives none", () => {
    expect(problemsOf(planWith("height: 1.26 m", line, "existing: true", "build: brick"))).toEqual([]);
  });

  test("faults in several features are told together, in the order of the lines", () => {
    const rows = Array.from({ length: 60 }, (_, i) => `  w${i}: {heigth: 1, line: [[0, 0], [1, 1]]}`);
    const problems = problemsOf(`title: t\nwalls:\n${rows.join("\n")}\n`);
    expect(problems).toHaveLength(51);
    expect(problems[7]?.line).toBe(10);
    expect(problems.at(-1)?.got).toBe("10 more problems from this line on");
  });

  test("a fault behind an alias is told where it is written, once", () => {
    const text = "title: t\nwalls:\n  a: &a {height: 1, line: [[0, 0], [1, 1]], build: bricks}\n  b: *a\n";
    const problems = problemsOf(text);
    expect(problems.map((problem) => [problem.line, problem.column])).toEqual([[3, 52]]);
  });
});
