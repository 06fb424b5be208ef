// The only file that reads and writes files.

import { readdirSync, readFileSync, readSync, realpathSync, statSync, writeFileSync } from "node:fs";
import { basename, dirname, join, resolve, sep } from "node:path";
import type { Problem, Text } from "../index.ts";
import type { Streams } from "./streams.ts";

/** Larger files are not opened at all. */
const largest = 10 * 1024 * 1024;
/** Most folders that are looked into for cards, each once: a folder of cards has a few. */
const mostFolders = 1000;

export type ReadFile = { readonly text: Text } | { readonly problem: Problem };

/** Reads a plan; `-` is standard input. */
export function readPlanFile(file: string, streams: Streams): ReadFile {
  if (file !== "-") return readTextFile(file, file);
  const text = streams.readInput();
  return text.length > largest ? tooLarge("standard input", text.length) : { text: { file: "standard input", text } };
}

/** All of standard input, or its beginning where there is more of it than a plan may hold. */
export function readStandardInput(): string {
  const parts: Buffer[] = [];
  const part = Buffer.alloc(64 * 1024);
  for (let size = 0; size <= largest;) {
    const read = readSome(part);
    if (read === 0) break;
    parts.push(Buffer.from(part.subarray(0, read)));
    size += read;
  }
  return Buffer.concat(parts).toString("utf8");
}

/** Bytes read into `part`; 0 at the end. */
function readSome(part: Buffer): number {
  for (;;) {
    try {
      return readSync(0, part);
    } catch (error) {
      const code = (error as { code?: string }).code;
      // Nothing is there yet, of a terminal or a pipe that does not block: look again in 20 ms.
      if (code === "EAGAIN") Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 20);
      else return 0;
    }
  }
}

/** Reads a text file under the name that problems will call it by. */
export function readTextFile(path: string, name: string): ReadFile {
  try {
    const about = statSync(path);
    if (about.isCharacterDevice() || about.isBlockDevice()) return notReadable(name, "a device");
    if (about.isFIFO() || about.isSocket()) return notReadable(name, "a pipe");
    if (about.size > largest) return tooLarge(name, about.size);
    return { text: { file: name, text: readFileSync(path, "utf8") } };
  } catch (error) {
    return notReadable(name, reasonOf(error), planNear(path, name));
  }
}

function tooLarge(name: string, size: number): ReadFile {
  const got = `${size > 2 * largest ? Math.round(size / 1024 / 1024) : "more than 10"} MB`;
  const hint = "a plan or a card is a few pages of text: is it the file that was meant?";
  return { problem: problem("file-too-large", name, "a file of at most 10 MB", got, hint) };
}

/** Names under which the plan may lie that was meant: in the folder of that name, or with an ending. */
const meant = ["/plan.yaml", "/plan.yml", ".yaml", ".yml"] as const;

/** The name of the file that was probably meant; null where there is none. */
function planNear(path: string, name: string): string | null {
  const [bare, said] = [path, name].map((text) => text.replace(/[\\/]+$/, "")) as [string, string];
  const ending = meant.find((one) => isFile(bare + one));
  return ending === undefined ? null : said + ending;
}

function isFile(path: string): boolean {
  try {
    return statSync(path).isFile();
  } catch {
    return false;
  }
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
  "a pipe": "give a file, or - for standard input",
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
  if (code === "ENAMETOOLONG") return "a name that is too long";
  if (code === "EROFS") return "a disk that cannot be written to";
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

/**
 * Cards of a folder, sorted by name, with its bibliography and places where it has them; links to files are followed, links to folders not. Cases
 * and hidden files are left out. What cannot be read is told beside what can.
 */
export function readCards(folder: string): readonly ReadFile[] {
  const files: string[] = [];
  const unread: ReadFile[] = [];
  const folders = [folder];
  for (let at = 0; at < folders.length && at < mostFolders; at++) {
    const here = folders[at] ?? folder;
    try {
      for (const entry of readdirSync(here, { withFileTypes: true })) {
        if (entry.isDirectory() && !entry.name.startsWith(".")) folders.push(join(here, entry.name));
        else if (!entry.isDirectory() && isCard(entry.name)) files.push(join(here, entry.name));
      }
    } catch (error) {
      unread.push(noCards(here, isCard(basename(here)) ? "a card" : reasonOf(error)));
    }
  }
  if (folders.length > mostFolders) unread.push(noCards(folder, `more than ${mostFolders} folders`));
  if (files.length === 0 && unread.length === 0) return [noCards(folder, "a folder without any")];
  return [...unread, ...files.sort().map((file) => readTextFile(file, file))];
}

const isCard = (name: string): boolean => /^[^.].*\.ya?ml$/.test(name) && !/\.cases\.ya?ml$/.test(name);

function noCards(folder: string, got: string): ReadFile {
  const hint = "give the folder that holds your cards, one card a file, as set-back.yaml";
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
