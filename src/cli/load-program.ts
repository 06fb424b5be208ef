// Loads the bundled program, with what the build compiled beforehand where this node can take it over.

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";
import { Script } from "node:vm";
import { compileSparingly } from "./compile-settings.ts";

/** A bundle as node wraps one: its own file and folder, so that `require` beside it works. */
export const wrapped = (source: string): string =>
  `(function (exports, require, module, __filename, __dirname) { ${source}\n})`;

/** What is needed to run one bundle, and to keep what was compiled while it ran. */
export interface Loaded<T> {
  readonly exports: T;
  readonly script: Script;
}

/**
 * Runs a CommonJS bundle.
 *
 * `file` URL of the bundle, plain ASCII; beside it may lie `file` with `.code` added, what V8 made of it at the build. V8 takes that over only if its
 * own version and flags and the length of the text are the same, else it compiles anew; the bundle's name carries a hash of its text, so that code of another text
 * never lies beside it.
 */
export function loadProgram<T>(file: URL): Loaded<T> {
  compileSparingly();
  const path = fileURLToPath(file);
  const script = new Script(wrapped(readFileSync(path, "latin1")), {
    filename: path,
    cachedData: compiledBeforehand(path),
  });
  const module = { exports: {} };
  const run = script.runInThisContext() as (...args: unknown[]) => void;
  run(module.exports, createRequire(file), module, path, fileURLToPath(new URL(".", file)));
  return { exports: module.exports as T, script };
}

function compiledBeforehand(path: string): Buffer | undefined {
  try {
    return readFileSync(`${path}.code`);
  } catch {
    return undefined;
  }
}
