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
    const about = statSync(path);
    if (about.isCharacterDevice() || about.isBlockDevice()) return notReadable(name, "a device");
    const { size } = about;
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
    return notReadable(name, reasonOf(error), planNear(path, name));
  }
}

/** Names under which the plan may lie that was meant: in the folder of that name, or with an ending. */
const meant = ["/plan.yaml", "/plan.yml", ".yaml", ".yml"] as const;

/** The name of the file that was probably meant; null where there is none. */
function planNear(path: string, name: string): string | null {
  const [bare, said] = [path, name].map((text) => text.replace(/[\\/]+$/, "")) as [string, string];
  const ending = meant.find((one) => statSync(bare + one, { throwIfNoEntry: false })?.isFile());
  return ending === undefined ? null : said + ending;
}

function notReadable(name: string, got: string, near: string | null = null): ReadFile {
  const hint = near === null ? hints[got] : `give ${near}`;
  return {
    problem: problem("file-not-found", name, "a file that can be read", got, hint ?? "check the name and the folder"),
  };
}

/** What to do where the name alone does not tell. */
const hints: Readonly<Record<string, string>> = {
  "a folder": "give the plan in it by its name, as folder/plan.yaml",
  "a device": "give a file, or - for standard input",
  "a file that may not be read or written": "ask whoever owns the file for leave to read it",
};

/** Whether two names are of one file that exists, links followed. */
export function isSameFile(one: string, other: string): boolean {
  try {
    const [a, b] = [statSync(one), statSync(other)];
    return a.dev === b.dev && a.ino === b.ino;
  } catch {
    return false;
  }
}

function reasonOf(error: unknown): string {
  const code = (error as { code?: string }).code;
  if (code === "ENOENT") return "no such file";
  if (code === "EISDIR") return "a folder";
  if (code === "EACCES") return "a file that may not be read or written";
  if (code === "ENOTDIR") return "a file, where a folder is wanted";
  if (code === "ENOSPC") return "no room left on the disk";
  if (code === "ELOOP") return "a link that leads back to itself";
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

/** Cards of a folder, sorted by name, links to files followed; cases and hidden files are left out. */
export function readCards(folder: string): readonly ReadFile[] {
  try {
    const files = readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => isCard(entry.name) && !entry.isDirectory())
      .map((entry) => join(entry.parentPath, entry.name));
    return files.length > 0
      ? files.sort().map((file) => readTextFile(file, file))
      : [noCards(folder, "a folder without any")];
  } catch (error) {
    return [noCards(folder, reasonOf(error))];
  }
}

const isCard = (name: string): boolean => /^[^.].*\.ya?ml$/.test(name) && !/\.cases\.ya?ml$/.test(name);

function noCards(folder: string, got: string): ReadFile {
  const hint = "give the folder that holds area/slug.yaml";
  return { problem: problem("file-not-found", folder, "a folder of cards", got, hint) };
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
