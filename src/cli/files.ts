// The only file that reads and writes files.

import { readdirSync, readFileSync, realpathSync, statSync, writeFileSync } from "node:fs";
import { dirname, join, resolve, sep } from "node:path";
import type { Problem, Text } from "../index.ts";
import type { Streams } from "./streams.ts";

/** Larger files are not opened at all. */
const largest = 10 * 1024 * 1024;

export type ReadFile = { readonly text: Text } | { readonly problem: Problem };

/** Reads a plan; `-` is standard input. */
export function readPlanFile(file: string, streams: Streams): ReadFile {
  if (file === "-") return { text: { file: "standard input", text: streams.readInput() } };
  return readTextFile(file, file);
}

/** Reads a text file under the name that problems will call it by. */
export function readTextFile(path: string, name: string): ReadFile {
  try {
    const size = statSync(path).size;
    if (size > largest)
      return {
        problem: problem(
          "file-too-large",
          name,
          "a file of at most 10 MB",
          `${Math.ceil(size / 1024 / 1024)} MB`,
          "split it, and name the parts under include",
        ),
      };
    return { text: { file: name, text: readFileSync(path, "utf8") } };
  } catch (error) {
    return {
      problem: problem(
        "file-not-found",
        name,
        "a file that can be read",
        reasonOf(error),
        "check the name and the folder",
      ),
    };
  }
}

function reasonOf(error: unknown): string {
  const code = (error as { code?: string }).code;
  if (code === "ENOENT") return "no such file";
  if (code === "EISDIR") return "a folder";
  if (code === "EACCES") return "a file that may not be read";
  return code ?? "a file that cannot be read";
}

function problem(code: Problem["code"], file: string, expected: string, got: string, hint: string): Problem {
  return { code, file, line: 1, column: 1, expected, got, hint };
}

/** An included file: only under the plan's own folder, links followed. */
export function readInclude(planFile: string, include: string): ReadFile {
  const folder = realFolder(dirname(resolve(planFile === "-" ? "." : planFile)));
  const path = resolve(folder, include);
  const real = realFolder(path);
  if (!real.startsWith(folder + sep))
    return {
      problem: problem(
        "outside-folder",
        include,
        "a file under the plan's own folder",
        include,
        "copy it beside the plan",
      ),
    };
  return readTextFile(path, include);
}

function realFolder(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
}

/** Cards of a folder, sorted by name; cases, tables and hidden files are left out. */
export function readCards(folder: string): readonly ReadFile[] {
  try {
    const names = readdirSync(folder, { recursive: true, withFileTypes: true });
    const files = names
      .filter((entry) => entry.isFile() && /\.ya?ml$/.test(entry.name) && !/\.cases\.ya?ml$/.test(entry.name))
      .map((entry) => join(entry.parentPath, entry.name));
    return files.sort().map((file) => readTextFile(file, file));
  } catch (error) {
    return [
      {
        problem: problem(
          "file-not-found",
          folder,
          "a folder of cards",
          reasonOf(error),
          "give the folder that holds area/slug.yaml",
        ),
      },
    ];
  }
}

/** Writes a file; the reason where it cannot. */
export function writeTextFile(path: string, text: string): string | null {
  try {
    writeFileSync(path, text);
    return null;
  } catch (error) {
    return reasonOf(error) === "no such file" ? "its folder does not exist" : reasonOf(error);
  }
}
