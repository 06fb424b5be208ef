// What could not be read, before anything else: where, what was expected, what stands there, what would do.

import type { Problem } from "../model/problem.ts";
import { clean, sentence } from "./clean.ts";
import { wrap } from "./wrap.ts";

/** The first block of a report whose plan could not be read as meant; nothing where it could. */
export function problemLines(problems: readonly Problem[], width: number): readonly string[] {
  if (problems.length === 0) return [];
  return ["COULD NOT BE READ", ...wrap(problemHead(problems.length), width), ...problemList(problems, width)];
}

/** What could not be read where no plan could be opened at all. */
export function unreadLines(problems: readonly Problem[], width: number): readonly string[] {
  return ["COULD NOT BE READ", ...problemList(problems, width), "", ...wrap("No plan was looked at.", width)];
}

const problemList = (problems: readonly Problem[], width: number): readonly string[] =>
  problems.flatMap((problem) => oneProblem(problem, width));

/** What it means for the report that so many things could not be read. */
export function problemHead(count: number): string {
  return count === 1
    ? "1 thing could not be read as it was meant. What hangs on it was left out; the rest was checked."
    : `${count} things could not be read as they were meant. What hangs on them was left out; the rest was checked.`;
}

/** A problem in one line: where, what was expected, what stands there, what would do. */
export function problemSentence(problem: Problem): string {
  return [placeOf(problem), expectedWords(problem), sentence(problem.hint)].join(" ").trim();
}

function placeOf(problem: Problem): string {
  const line = problem.line > 0 && problem.code !== "file-not-found" ? ` line ${problem.line}` : "";
  return `${clean(problem.file)}${line}:`;
}

function expectedWords(problem: Problem): string {
  return `expected ${clean(problem.expected)}, got ${clean(problem.got) || "nothing"}.`;
}

function oneProblem(problem: Problem, width: number): readonly string[] {
  const lines = wrap(`${placeOf(problem)} ${expectedWords(problem)}`, width, { first: "  -  ", rest: "     " });
  const hint = sentence(problem.hint);
  return hint === "" ? lines : [...lines, ...wrap(hint, width, { first: "      Do     ", rest: " ".repeat(13) })];
}
