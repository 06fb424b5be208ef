// The words of a fault, and those for faults of the YAML syntax that need no look at the text.

import type { ErrorCode } from "yaml";

/** What a fault says. */
export interface FaultWords {
  readonly expected: string;
  readonly got: string;
  readonly hint: string;
}

/** A fault at an offset of the text. */
export interface SyntaxFault extends FaultWords {
  readonly offset: number;
}

/** By the code of the YAML package. */
export const closedWords: Readonly<Partial<Record<ErrorCode, FaultWords>>> = {
  ALIAS_PROPS: {
    expected: "an alias (*name) by itself",
    got: "an alias with a mark of its own",
    hint: "leave out the & or ! before it",
  },
  BAD_ALIAS: {
    expected: "a name right behind & or *",
    got: "an & or * without a usable name",
    hint: "if & or * is part of a text, put the text in quotes",
  },
  BAD_COLLECTION_TYPE: {
    expected: "a value that suits its ! mark",
    got: "another sort of value",
    hint: "leave out the mark that begins with !",
  },
  BAD_DQ_ESCAPE: {
    expected: "a known escape behind the backslash",
    got: "an unknown one",
    hint: "use single quotes, in which a backslash is only a backslash",
  },
  BLOCK_IN_FLOW: {
    expected: "a comma or a closing bracket behind each entry in brackets",
    got: "a second key and colon before any comma",
    hint: "put a comma between the two entries, or close the bracket first",
  },
  KEY_OVER_1024_CHARS: {
    expected: "a short key before the colon",
    got: "more than 1024 characters",
    hint: "shorten it, or put a text with a colon in quotes",
  },
  MULTIPLE_ANCHORS: { expected: "one & mark", got: "several", hint: "leave all but one out" },
  MULTIPLE_TAGS: { expected: "a plain value", got: "several ! marks", hint: "leave them out" },
  BAD_PROP_ORDER: {
    expected: "an & or ! mark behind the - or ? it belongs to",
    got: "the mark before it",
    hint: "put the mark right before the value",
  },
  NON_STRING_KEY: {
    expected: "a plain word as key",
    got: "a list, a group or an alias as key",
    hint: "write the name of the property before the colon",
  },
  RESOURCE_EXHAUSTION: {
    expected: "a plan that nests a few levels deep",
    got: "far too many levels",
    hint: "take some brackets or levels away",
  },
  TAB_AS_INDENT: {
    expected: "spaces at the start of a line",
    got: "a tab",
    hint: "replace every tab at the start of a line by two spaces",
  },
};
