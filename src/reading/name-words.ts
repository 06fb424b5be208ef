// Names that cannot be names, and what they could be instead.

import type { FaultWords } from "./closed-words.ts";
import { exampleText, gotWords } from "./schema-words.ts";
import type { SchemaPart } from "./schema-words.ts";

/** Whether a pattern is that of a name: it begins with a letter. */
export function isNamePattern(pattern: string | undefined): boolean {
  return pattern !== undefined && /^\^(?:\\p\{L\}|\[A-Za-z\])(?!\.)/u.test(pattern);
}

const nameWords = "a name of letters, digits, spaces and underscores that begins with a letter";

/** Words for a name that cannot be one, with a name that can. */
export function badNameWords(text: string): FaultWords {
  return { expected: nameWords, got: gotWords(text), hint: nameHint(text) };
}

function nameHint(text: string): string {
  if (/^\d[\d,]*$/u.test(text)) return `write P${text.replaceAll(",", "_")}`;
  const numbers = /^(-?\d+(?:\.\d+)?)[ ,;]+(-?\d+(?:\.\d+)?)$/u.exec(text);
  if (numbers !== null) return `if a pair is meant, write [${numbers[1]}, ${numbers[2]}]`;
  const mended = text
    .replace(/[^\p{L}\p{M}\p{N}_]+/gu, " ")
    .trim()
    .replace(/^[^\p{L}]+/u, "");
  return mended === "" || mended === text ? "choose another name" : `write for instance ${mended}`;
}

/** Words for a key that does not fit the pattern its schema has for keys. */
export function otherKeyWords(key: string, schema: SchemaPart): FaultWords {
  const example = exampleText(schema);
  return {
    expected:
      example === null ? "a key of small letters, with hyphens or dots between the words" : `a key such as ${example}`,
    got: gotWords(key),
    hint: "compare it with the examples of this key",
  };
}
