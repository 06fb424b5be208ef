// Looks at the characters of a text before anything is made of them.

import type { Position } from "../model/path.ts";
import type { Problem } from "../model/problem.ts";

/** Largest text that is read, in characters. A plan of twenty thousand features is half of it. */
const mostCharacters = 10_000_000;

/* eslint-disable-next-line no-control-regex -- control characters are what is looked for */
const controlCharacters = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u0084\u0086-\u009f\ufffe\uffff]/gu;
const hardSpaces = /(^[ \t]*|:)\u00a0/gmu;
const byteOrderMark = "\ufeff";

/** The text as it may be read on, or null where nothing can be made of it. */
export interface CheckedText {
  readonly text: string | null;
  readonly problems: readonly Problem[];
}

/**
 * Refuses texts that are too large or are not text, and clears a byte order mark and stray control characters away.
 * Offsets stay as they are, apart from the byte order mark.
 */
export function checkCharacters(file: string, whole: string): CheckedText {
  if (whole.length > mostCharacters) return { text: null, problems: [tooLarge(file, whole.length)] };
  const text = whole.startsWith(byteOrderMark) ? whole.slice(1) : whole;
  const problems: Problem[] = [];
  if (text.slice(0, 4).includes("\0")) return { text: null, problems: [notUtf8(file, { line: 1, column: 1 })] };
  const replaced = text.indexOf("\ufffd");
  if (replaced >= 0) problems.push(notUtf8(file, positionIn(text, replaced)));
  const control = text.search(controlCharacters);
  if (control >= 0) problems.push(controlCharacter(file, text, control));
  const space = hardSpaces.exec(text);
  hardSpaces.lastIndex = 0;
  if (space !== null) problems.push(hardSpace(file, positionIn(text, space.index + space[0].length - 1)));
  const cleared = control >= 0 ? text.replace(controlCharacters, " ") : text;
  return { text: space === null ? cleared : cleared.replace(hardSpaces, "$1 "), problems };
}

/** Line and column of an offset, counted from 1, by reading up to it. */
function positionIn(text: string, offset: number): Position {
  const before = text.slice(0, offset);
  const lineStart = before.lastIndexOf("\n") + 1;
  return { line: before.split("\n").length, column: offset - lineStart + 1 };
}

function tooLarge(file: string, length: number): Problem {
  return {
    code: "file-too-large",
    file,
    line: 1,
    column: 1,
    expected: `a file of at most ${mostCharacters / 1e6} million characters`,
    got: `${(length / 1e6).toFixed(1)} million characters`,
    hint: "split the plan into several files, or leave out what is not needed",
  };
}

function notUtf8(file: string, at: Position): Problem {
  return {
    code: "not-yaml",
    file,
    ...at,
    expected: "plain text saved as UTF-8",
    got: "characters in another encoding",
    hint: "open the file in your editor and save it as UTF-8",
  };
}

function controlCharacter(file: string, text: string, offset: number): Problem {
  const code = (text.codePointAt(offset) ?? 0).toString(16).toUpperCase().padStart(4, "0");
  return {
    code: "not-yaml",
    file,
    ...positionIn(text, offset),
    expected: "letters, digits, signs, spaces and line ends",
    got: `a control character that cannot be seen (U+${code})`,
    hint: "delete it; it was read as a space",
  };
}

function hardSpace(file: string, at: Position): Problem {
  return {
    code: "not-yaml",
    file,
    ...at,
    expected: "an ordinary space",
    got: "a non-breaking space (U+00A0), which looks the same",
    hint: "type the space anew; text copied from web pages often holds such spaces",
  };
}
