// A YAML or JSON text to plain data that knows its lines. Every fault is told; nothing is thrown.

import { Composer } from "yaml";
import type { CST, Document, Node, YAMLError } from "yaml";
import type { Problem, ProblemCode } from "../model/problem.ts";
import { makeTakeBreaches } from "./breaches.ts";
import { checkCharacters } from "./check-characters.ts";
import { findUnclosed } from "./find-unclosed.ts";
import { deepestNesting, parseTokens } from "./parse-tokens.ts";
import type { ParsedTokens } from "./parse-tokens.ts";
import { quoted, shortList } from "./problem-list.ts";
import { readNode } from "./read-node.ts";
import type { Walk } from "./read-leaf.ts";
import { makeIsSpoiled, makeLocate, positionAt } from "./source-text.ts";
import type { SourceText } from "./source-text.ts";
import { harmOf, syntaxFault, unclosedFault } from "./yaml-words.ts";
import type { SyntaxFault } from "./closed-words.ts";

/** Most problems told of one file. */
const mostProblems = 20;

/** A file read: null where nothing of it can be used. */
export interface ReadText {
  readonly document: SourceText | null;
  readonly problems: readonly Problem[];
}

type Tell = (code: ProblemCode, fault: SyntaxFault) => void;

/**
 * Reads a text as YAML 1.2 (core schema, no merge keys, no tags of its own), of which JSON is a part. What cannot be
 * read as meant is a problem and is left out; the rest is read on.
 */
export function readYaml(file: string, text: string): ReadText {
  const checked = checkCharacters(file, text);
  if (checked.text === null) return { document: null, problems: checked.problems };
  const read = readChecked(file, checked.text);
  return { document: read.document, problems: shortList([...checked.problems, ...read.problems], mostProblems) };
}

function readChecked(file: string, text: string): ReadText {
  const parsed = parseTokens(text);
  const problems: Problem[] = [];
  const tell: Tell = (code, { offset, expected, got, hint }) => {
    problems.push({ code, file, ...positionAt(parsed.lines, offset), expected, got, hint });
  };
  if (parsed.tooDeepAt !== null) {
    tell("nested-too-deep", tooDeep(parsed.tooDeepAt));
    return { document: null, problems };
  }
  const documents = compose(text, parsed);
  const tabs = documents[0]?.errors.filter((error) => error.code === "TAB_AS_INDENT") ?? [];
  const [firstTab] = tabs;
  const spaced = firstTab === undefined ? text : withoutTabs(text);
  if (firstTab !== undefined && spaced !== text) {
    tell("not-yaml", tabFault(firstTab, tabs.length));
    const again = readChecked(file, spaced);
    return { document: again.document, problems: [...problems, ...again.problems] };
  }
  const data = readDocument(text, { documents, parsed, tell });
  return { document: data === null ? null : { file, ...data }, problems };
}

function tabFault(first: YAMLError, count: number): SyntaxFault {
  const others = count === 1 ? "" : `, here and on ${count - 1} more lines`;
  return {
    offset: first.pos[0],
    expected: "spaces at the start of a line",
    got: `a tab${others}`,
    hint: "replace every tab at the start of a line by two spaces; that is how the file was read",
  };
}

/** The text with two spaces for each tab at the start of a line. Lines stay; columns of these lines do not. */
function withoutTabs(text: string): string {
  return text.replace(/^[ \t]*\t[ \t]*/gmu, (indent) => indent.replaceAll("\t", "  "));
}

function tooDeep(offset: number): SyntaxFault {
  return {
    offset,
    expected: `at most ${deepestNesting} levels of brackets and indents`,
    got: "more than that",
    hint: "look for a bracket that is opened again and again; nothing of this file was read",
  };
}

interface Composed {
  readonly documents: readonly Document.Parsed[];
  readonly parsed: ParsedTokens;
  readonly tell: Tell;
}

function readDocument(text: string, { documents, parsed, tell }: Composed): Omit<SourceText, "file"> | null {
  tellDirectives(parsed.tokens, tell);
  const [document, second] = documents;
  if (document === undefined || (document.contents === null && document.errors.length === 0)) {
    tell("not-yaml", { offset: 0, expected: "a plan or a card", got: "an empty file", hint: "write something in it" });
    return null;
  }
  if (second !== undefined) tellSecond(second, tell);
  const breaches = tellSyntax(text, { document, parsed, tell });
  return readContents(text, { document, parsed, tell, breaches });
}

function compose(text: string, parsed: ParsedTokens): readonly Document.Parsed[] {
  const composer = new Composer({
    version: "1.2",
    schema: "core",
    merge: false,
    stringKeys: true,
    uniqueKeys: false,
    prettyErrors: false,
    logLevel: "silent",
    lineCounter: parsed.lines,
  });
  return [...composer.compose(parsed.tokens, true, text.length)] as Document.Parsed[];
}

/** A first line such as `%YAML 1.1` would turn `1:40` into a hundred. */
function tellDirectives(tokens: readonly CST.Token[], tell: Tell): void {
  for (const token of tokens) {
    if (token.type !== "directive") continue;
    tell("not-yaml", {
      offset: token.offset,
      expected: "the plan to begin at once",
      got: quoted(token.source),
      hint: "leave out every line that begins with %; the file is read as YAML 1.2",
    });
  }
}

function tellSecond(second: Document.Parsed, tell: Tell): void {
  tell("several-documents", {
    offset: second.range[0],
    expected: "one document in a file",
    got: "a second one behind a line of three dashes",
    hint: "leave the line --- out, or put the rest in a file of its own; only the first part was read",
  });
}

interface Reading {
  readonly document: Document.Parsed;
  readonly parsed: ParsedTokens;
  readonly tell: Tell;
}

/** Tells the faults of the syntax, one for one cause, and gives back where they are. */
function tellSyntax(text: string, { document, parsed, tell }: Reading): readonly number[] {
  const unclosed = findUnclosed(parsed.tokens);
  for (const one of unclosed) tell("not-yaml", unclosedFault(one));
  const faults = [...document.errors, ...document.warnings].sort((a, b) => a.pos[0] - b.pos[0]);
  const lineOf = (offset: number) => positionAt(parsed.lines, offset).line;
  const harmed = unclosed.map((one) => one.from);
  let lastLine = 0;
  let isAdrift = false;
  let swallowedTo = 0;
  let next = 0;
  for (const fault of faults) {
    const line = lineOf(fault.pos[0]);
    // What an unclosed bracket or quote swallowed, and the line on which that is noticed, are no causes of their own.
    for (let one = unclosed[next]; one !== undefined && one.from <= fault.pos[0]; one = unclosed[++next]) {
      swallowedTo = Math.max(swallowedTo, lineOf(one.to) + 1);
    }
    harmed.push(...(line > swallowedTo ? harmOf(fault, text) : [fault.pos[0]]));
    if (line !== lastLine && !isAdrift && line > swallowedTo) tell("not-yaml", syntaxFault(fault, text));
    lastLine = line;
    // Once the parser has lost the thread of the whole text, everything behind is a consequence.
    isAdrift ||= fault.message.includes("in YAML stream");
  }
  return harmed;
}

function readContents(
  text: string,
  { document, parsed, tell, breaches }: Reading & { readonly breaches: readonly number[] },
): Omit<SourceText, "file"> | null {
  const root = document.contents as Node | null;
  // What stays behind for looking things up holds on to the lines, not to the many more tokens.
  const { lines } = parsed;
  const walk: Walk = {
    text,
    tell,
    takeBreaches: makeTakeBreaches(breaches),
    lineOf: (offset) => positionAt(lines, offset).line,
    pairs: new WeakMap(),
    targets: new WeakMap(),
    leftOut: new WeakMap(),
    damaged: new WeakSet(),
    anchors: new Map(),
    aliasUses: 0,
    borrowed: 0,
    gaveUp: false,
  };
  const { data } = readNode(walk, root, 0);
  if (walk.gaveUp || data === undefined) return null;
  return { data, locate: makeLocate(root, lines, walk), isSpoiled: makeIsSpoiled(data, walk) };
}
