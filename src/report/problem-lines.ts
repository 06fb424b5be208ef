// What could not be read, before anything else: where, what was expected, what stands there, what would do.

import type { Report } from "../model/finding.ts";
import type { Problem } from "../model/problem.ts";
import { clean, sentence } from "./clean.ts";
import { wrap } from "./wrap.ts";

/** The first block of a report whose plan could not be read as meant; nothing where it could. */
export function problemLines(problems: readonly Problem[], width: number): readonly string[] {
  if (problems.length === 0) return [];
  return ["COULD NOT BE READ", ...wrap(problemHead(problems.length), width), ...problemList(problems, width)];
}

/** Whether no plan could be opened, or none was looked at. */
export function nothingLookedAt({ rules, findings, needs, problems }: Report): boolean {
  return problems.length > 0 && rules.length + findings.length + needs.length === 0;
}

/** What is said of that. */
export const nothingWords = "Nothing was checked. That says nothing about the plan.";

/** What could not be read where no plan could be opened at all. */
export function unreadLines(problems: readonly Problem[], width: number): readonly string[] {
  return ["COULD NOT BE READ", ...problemList(problems, width), "", ...wrap(nothingWords, width)];
}

/** Each problem once: what is told of one line in the same words again and again is counted. */
function problemList(problems: readonly Problem[], width: number): readonly string[] {
  const times = new Map<string, number>();
  for (const problem of problems) times.set(problemSentence(problem), (times.get(problemSentence(problem)) ?? 0) + 1);
  const firsts = new Map(problems.toReversed().map((problem) => [problemSentence(problem), problem]));
  return problems.flatMap((problem) => {
    const words = problemSentence(problem);
    return firsts.get(words) === problem ? oneProblem(problem, width, times.get(words) ?? 1) : [];
  });
}

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
  const line = problem.line > 0 && !wholeFile.has(problem.code) ? ` line ${problem.line}` : "";
  return `${clean(problem.file)}${line}:`;
}

/** Problems of a file that was not opened have no line. */
const wholeFile: ReadonlySet<Problem["code"]> = new Set(["file-not-found", "file-too-large", "outside-folder"]);

function expectedWords(problem: Problem): string {
  return `expected ${clean(problem.expected)}, got ${clean(problem.got) || "nothing"}.`;
}

function oneProblem(problem: Problem, width: number, times: number): readonly string[] {
  const often = times === 1 ? "" : ` ${times} times.`;
  const lines = wrap(`${placeOf(problem)} ${expectedWords(problem)}${often}`, width, { first: "  -  ", rest: "     " });
  const hint = sentence(problem.hint);
  return hint === "" ? lines : [...lines, ...wrap(hint, width, { first: "      Do     ", rest: " ".repeat(13) })];
}
