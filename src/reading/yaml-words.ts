// Faults of the YAML syntax, in the words of somebody who never heard of YAML.

import type { ErrorCode, YAMLError } from "yaml";
import { closedWords } from "./closed-words.ts";
import type { FaultWords, SyntaxFault } from "./closed-words.ts";
import { quoted } from "./problem-list.ts";
import type { Unclosed } from "./find-unclosed.ts";

const signNames: Readonly<Record<Unclosed["sign"], { readonly name: string; readonly close: string }>> = {
  "[": { name: "a list", close: "]" },
  "{": { name: "a group in braces", close: "}" },
  '"': { name: "text in double quotes", close: '"' },
  "'": { name: "text in single quotes", close: "'" },
};

/** An opened bracket or quote that is never closed, told where it was opened. */
export function unclosedFault(unclosed: Unclosed): SyntaxFault {
  const { name, close } = signNames[unclosed.sign];
  const isQuote = close === unclosed.sign;
  return {
    offset: unclosed.from,
    expected: `${name} that ends with ${close}`,
    got: `a ${unclosed.sign} that is never closed`,
    hint: isQuote
      ? `write the closing ${close}; a foot or inch mark at the start of a value needs the number before it`
      : `write the closing ${close} behind the last entry`,
  };
}

/** Words for one fault of the YAML package. `text` is the text that was read. */
export function syntaxFault(error: Pick<YAMLError, "code" | "message" | "pos">, text: string): SyntaxFault {
  const offset = Math.min(error.pos[0], Math.max(0, text.length - 1));
  const closed = closedWords[error.code];
  return { offset, ...(closed ?? wordsFromLine(error, offset, text)) };
}

function wordsFromLine(error: Pick<YAMLError, "code" | "message">, offset: number, text: string): FaultWords {
  const line = lineAround(text, offset);
  const sign = text[offset] ?? "";
  if (error.code === "UNEXPECTED_TOKEN") return wordsForStray(sign, line);
  if (error.code === "TAG_RESOLVE_FAILED") {
    return {
      expected: "a plain value",
      got: `a value marked ${quoted(firstWord(text, offset))}`,
      hint: "leave out the mark that begins with !, or put a text that begins with ! in quotes",
    };
  }
  if (error.code === "BAD_SCALAR_START") {
    return {
      expected: "text that begins with a letter or a digit",
      got: `text that begins with ${sign}`,
      hint: `put the whole text in quotes: '${sign}...'`,
    };
  }
  return wordsForShape(error, line);
}

/** Faults of the lines' shape: no colon, no space behind it, two colons, crooked indent, a comma left out. */
function wordsForShape(error: Pick<YAMLError, "code" | "message">, line: string): FaultWords {
  const tight = /^\s*(?:- )?([A-Za-z_][\w ]*):([^\s:/].*)$/u.exec(line);
  if (tight !== null) {
    return {
      expected: "a space behind the colon",
      got: quoted(line),
      hint: `write ${quoted(`${tight[1]}: ${tight[2]}`)}`,
    };
  }
  if (/ between /u.test(error.message)) {
    return { expected: "a comma between two entries", got: quoted(line), hint: "put a comma between the entries" };
  }
  if (error.code === "BAD_INDENT" || /^\s*- /u.test(line)) {
    return {
      expected: "all entries of one list or group to begin in the same column",
      got: quoted(line),
      hint: "line it up with the entry above it",
    };
  }
  if (/:\s.*:\s/u.test(line)) {
    return {
      expected: "one key and one value on a line",
      got: quoted(line),
      hint: "put the value in quotes if the second colon is part of it, or start a new line",
    };
  }
  if (!/:(\s|$)/u.test(line)) {
    return {
      expected: "a key, a colon, a space and a value",
      got: quoted(line),
      hint: "write a colon behind the key, or join the line to the text it belongs to with quotes",
    };
  }
  return {
    expected: "a key, a colon, a space and a value, indented like its neighbours",
    got: quoted(line),
    hint: "line it up with the entries above and below it",
  };
}

function wordsForStray(sign: string, line: string): FaultWords {
  if (sign === "]" || sign === "}") {
    return {
      expected: "every closing bracket to have an opening one",
      got: `a ${sign} with nothing to close`,
      hint: `take the ${sign} away, or write the opening bracket`,
    };
  }
  if (sign === ",") {
    return { expected: "something between two commas", got: "nothing", hint: "take one comma away" };
  }
  return {
    expected: "the end of the line, a comma, or the next entry",
    got: quoted(line),
    hint: "put a value that holds signs such as , : # [ { or quotes in quotes as a whole",
  };
}

const crookedCodes: ReadonlySet<ErrorCode> = new Set([
  "BLOCK_AS_IMPLICIT_KEY",
  "MULTILINE_IMPLICIT_KEY",
  "MISSING_CHAR",
  "BAD_INDENT",
]);

/**
 * Where a fault does harm. A crooked line takes its neighbours with it, so it harms the group its key is in as well as
 * the place where it is noticed.
 */
export function harmOf(error: Pick<YAMLError, "code" | "pos">, text: string): readonly number[] {
  const [offset] = error.pos;
  if (!crookedCodes.has(error.code)) return [offset];
  const start = lineStart(text, offset);
  const indent = /^ */u.exec(text.slice(start, start + 400))?.[0].length ?? 0;
  return [offset, start + indent];
}

function lineStart(text: string, offset: number): number {
  return text.lastIndexOf("\n", Math.max(0, offset - 1)) + 1;
}

function lineAround(text: string, offset: number): string {
  const start = lineStart(text, offset);
  const end = text.indexOf("\n", Math.max(start, offset));
  return text.slice(start, Math.min(end < 0 ? text.length : end, start + 400)).trimEnd();
}

function firstWord(text: string, offset: number): string {
  return /^\S{1,40}/u.exec(text.slice(offset, offset + 40))?.[0] ?? "";
}
