// Lines of text of a given width. The words of a plan may be longer than a line: then they are cut, never let out.

import { columns, letterColumns } from "./clean.ts";

/** How a paragraph stands on the page: what is put before its first line and before the others. */
export interface Indent {
  readonly first: string;
  readonly rest: string;
}

/** Breaks a text of single-spaced words into lines no wider than `width`. No line ends with a space. */
export function wrap(text: string, width: number, indent: Indent = { first: "", rest: "" }): readonly string[] {
  const lines: string[] = [];
  let line = indent.first;
  let empty = true;
  const next = () => {
    lines.push(line.trimEnd());
    line = indent.rest;
    empty = true;
  };
  for (const whole of wordsOf(text)) {
    for (const word of cut(whole, Math.max(8, width - columns(indent.rest)))) {
      if (!empty && columns(line) + 1 + columns(word) > width) next();
      line += (empty ? "" : " ") + word.replaceAll(glue, " ");
      empty = false;
    }
  }
  lines.push(line.trimEnd());
  return lines;
}

/** A number and its unit, a numbered thing, `1 in 80`: never parted at the end of a line. */
const together = /(\d) (?=(?:mm|m|m2|m3|km|t|kg|kV|%|deg|days?|l\/s)(?:[\s,;:.)]|$))|(± |\bline |\b1 in )(?=\d)/g;
const glue = "\u00a0";

/** The words of a text; what belongs together counts as one word unless it is too long for a line. */
function wordsOf(text: string): readonly string[] {
  return text
    .replace(together, (whole) => whole.replaceAll(" ", glue))
    .split(" ")
    .filter((word) => word !== "");
}

/** Pieces of a word, none wider than `width`. */
function cut(word: string, width: number): readonly string[] {
  if (columns(word) <= width) return [word];
  const pieces: string[] = [];
  let piece = "";
  let used = 0;
  for (const letter of word) {
    const size = letterColumns(letter);
    if (used + size > width) {
      pieces.push(piece);
      piece = "";
      used = 0;
    }
    piece += letter;
    used += size;
  }
  return [...pieces, piece];
}

/** Puts a tag at the right edge of the last line, or on lines of its own where it does not fit there. */
export function tagRight(lines: readonly string[], tag: string, width: number): readonly string[] {
  if (tag === "") return lines;
  const last = lines.at(-1) ?? "";
  const room = width - columns(last) - columns(tag);
  if (lines.length > 0 && room >= 3) return [...lines.slice(0, -1), last + " ".repeat(room) + tag];
  const own = wrap(tag, width).map((line) => " ".repeat(Math.max(0, width - columns(line))) + line);
  return [...lines, ...own];
}

/** Pieces side by side with a wide gap, going on the next line where they do not fit. */
export function spread(pieces: readonly string[], width: number): readonly string[] {
  const gap = "     ";
  const lines: string[] = [];
  let line = "";
  for (const piece of pieces) {
    if (line !== "" && columns(line) + gap.length + columns(piece) > width) {
      lines.push(line);
      line = "";
    }
    line += (line === "" ? "" : gap) + piece;
  }
  if (line !== "") lines.push(line);
  return lines.flatMap((one) => (columns(one) > width ? wrap(one, width) : [one]));
}
