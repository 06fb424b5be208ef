// What could not be read, before anything else: where, what was expected, what stands there, what would do.

import type { Problem } from "../model/problem.ts";
import { clean, columns, sentence } from "./clean.ts";
import { wrap } from "./wrap.ts";

/** The first block of a report whose plan could not be read as meant; nothing where it could. */
export function problemLines(problems: readonly Problem[], width: number): readonly string[] {
  if (problems.length === 0) return [];
  const head =
    problems.length === 1
      ? "1 thing could not be read as it was meant. What hangs on it was left out; the rest was checked."
      : `${problems.length} things could not be read as they were meant. What hangs on them was left out; the rest was checked.`;
  return ["COULD NOT BE READ", ...wrap(head, width), ...problems.flatMap((problem) => oneProblem(problem, width))];
}

function oneProblem(problem: Problem, width: number): readonly string[] {
  const line = problem.line > 0 ? ` line ${problem.line}` : "";
  const first = `  -  ${clean(problem.file)}${line}: `;
  const words = [`expected ${clean(problem.expected)},`, `got ${clean(problem.got) || "nothing"}.`].join(" ");
  const lines =
    columns(first) > width / 2
      ? wrap(first.trimStart() + words, width, { first: "", rest: "     " })
      : wrap(words, width, { first, rest: "     " });
  const hint = sentence(problem.hint);
  return hint === "" ? lines : [...lines, ...wrap(hint, width, { first: "      Do     ", rest: " ".repeat(13) })];
}
