// Text to syntax tokens, with a bound on how deep they nest.

import { Lexer, LineCounter, Parser } from "yaml";
import type { CST } from "yaml";

/**
 * Deepest nesting that is read. A plan needs about ten levels. The bound is kept while the tokens come in, by the height
 * of the parser's own stack, because composing a document is recursive: twenty thousand open brackets (40 kB) would
 * otherwise exhaust the stack, and a second such text in one process can end the process.
 */
export const deepestNesting = 64;

export interface ParsedTokens {
  readonly tokens: readonly CST.Token[];
  readonly lines: LineCounter;
  /** Where the nesting went too deep; null where it did not. */
  readonly tooDeepAt: number | null;
}

/** Splits a text into syntax tokens; stops at the first place that nests deeper than `deepestNesting`. */
export function parseTokens(text: string): ParsedTokens {
  const lines = new LineCounter();
  lines.addNewLine(0);
  const parser = new Parser(lines.addNewLine);
  const tokens: CST.Token[] = [];
  for (const lexeme of new Lexer().lex(text)) {
    for (const token of parser.next(lexeme)) tokens.push(token);
    if (isTooDeep(parser.stack)) return { tokens, lines, tooDeepAt: parser.offset };
  }
  for (const token of parser.end()) tokens.push(token);
  return { tokens, lines, tooDeepAt: null };
}

/** The lowest of the stack is the document; the highest may be a scalar, which is no level. */
function isTooDeep(stack: readonly CST.Token[]): boolean {
  if (stack.length <= deepestNesting + 1) return false;
  const top = stack.at(-1);
  return stack.length > deepestNesting + 2 || (top !== undefined && "items" in top);
}
