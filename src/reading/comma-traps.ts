// Decimal commas and missing spaces inside brackets: YAML takes them for something else without a word.

import { isPair, isScalar } from "yaml";
import type { Node, Pair, YAMLMap, YAMLSeq } from "yaml";
import { quoted } from "./problem-list.ts";
import type { FaultWords, SyntaxFault } from "./closed-words.ts";

/** A fault with its code, and what must not be taken as read because of it. */
export interface Trap extends SyntaxFault {
  readonly code: "decimal-comma" | "not-yaml";
  /** Pairs that are no entries of their own. */
  readonly strays: readonly Pair[];
  /** Keys whose value is not what was meant. */
  readonly spoiled: readonly string[];
}

/** `text` with a point for every comma between two digits. */
export function withPoints(text: string): string {
  return text.replace(/(\d),(?=\d)/gu, "$1.");
}

const wholeNumber = /^[-+]?\d+$/u;
const afterComma = /^\d+(?:\s*\S.*)?$/u;
const decimalComma =
  /^[-+±]?\s?\d+,\d+(?:\s?[A-Za-z%°/²³][A-Za-z0-9%°/²³]{0,11})?(?:\s?(?:±|\+-)\s?\d+(?:[.,]\d+)?)?$/u;
const tightColon = /^([A-Za-z_][\w ]*):([^\s:/].*)$/u;

/** Whether a plain text is a number with a decimal comma, with or without a unit. */
export function isDecimalComma(text: string): boolean {
  return decimalComma.test(text);
}

/** The words for a number with a decimal comma. */
export function decimalCommaWords(text: string): FaultWords {
  return {
    expected: "a number with a decimal point",
    got: quoted(text),
    hint: `write ${withPoints(text)}; a comma separates two entries here`,
  };
}

interface Span {
  readonly from: number;
  readonly to: number;
}

function spanOf(node: unknown): Span | null {
  const range = (node as Node | null)?.range;
  return range === undefined || range === null ? null : { from: range[0], to: range[1] };
}

function plainText(node: unknown): string | null {
  return isScalar(node) && node.type === "PLAIN" ? (node.source ?? null) : null;
}

/** A pair such as the `6` in `{width: 2,6}`: a key, no colon, no value. */
function hasNoValue(pair: Pair): boolean {
  const span = spanOf(pair.value);
  return pair.value === null || (isScalar(pair.value) && pair.value.value === null && span?.from === span?.to);
}

/** `{width: 2,6}` and `{a:1}`: what the braces hold is not what was meant. */
export function trapsInBraces(map: YAMLMap, text: string): readonly Trap[] {
  const traps: Trap[] = [];
  for (let i = 0; i < map.items.length; i++) {
    const pair = map.items[i];
    if (pair === undefined) continue;
    const tight = hasNoValue(pair) ? tightColon.exec(plainText(pair.key) ?? "") : null;
    if (tight !== null) traps.push(missingSpace(pair, tight));
    const strays = commaStrays(map.items, i, text);
    if (strays.length === 0) continue;
    traps.push(brokenNumber(pair, strays, text));
    i += strays.length;
  }
  return traps;
}

function missingSpace(pair: Pair, tight: RegExpExecArray): Trap {
  const [whole, key, value] = tight;
  return {
    code: "not-yaml",
    offset: spanOf(pair.key)?.from ?? 0,
    expected: "a space behind the colon",
    got: quoted(whole),
    hint: `write ${quoted(`${key}: ${value}`)}`,
    strays: [pair],
    spoiled: [key ?? ""],
  };
}

/** The pairs right behind pair `at` that are only the rest of its number. */
function commaStrays(pairs: readonly Pair[], at: number, text: string): readonly Pair[] {
  const strays: Pair[] = [];
  let before = spanOf(pairs[at]?.value);
  for (let i = at + 1; i < pairs.length; i++) {
    const pair = pairs[i];
    const span = spanOf(pair?.key);
    if (pair === undefined || before === null || span === null || !hasNoValue(pair)) break;
    const isTight = span.from === before.to + 1 && text[before.to] === "," && /\d/u.test(text[before.to - 1] ?? "");
    if (!isTight || !afterComma.test(plainText(pair.key) ?? "")) break;
    strays.push(pair);
    before = span;
  }
  return strays;
}

function brokenNumber(pair: Pair, strays: readonly Pair[], text: string): Trap {
  const start = spanOf(pair.value)?.from ?? 0;
  const end = spanOf(strays.at(-1)?.key)?.to ?? start;
  return {
    code: "decimal-comma",
    offset: start,
    ...decimalCommaWords(text.slice(start, end)),
    strays,
    spoiled: [String(isScalar(pair.key) ? pair.key.value : "")],
  };
}

/**
 * `[48,52, 12,30]`: some commas with a space behind and some without, and without the space only between whole
 * numbers, at most two at a time. So the tight commas look like decimal commas.
 */
export function trapInBrackets(list: YAMLSeq, text: string): Omit<Trap, "strays" | "spoiled"> | null {
  const groups: string[][] = [];
  let before: Span | null = null;
  for (const item of list.items) {
    const word = isPair(item) ? null : plainText(item);
    const span = spanOf(item);
    if (word === null || span === null) return null;
    const isTight: boolean = before !== null && span.from === before.to + 1;
    if (isTight) groups.at(-1)?.push(word);
    else groups.push([word]);
    before = span;
  }
  const pairs = groups.filter((group) => group.length > 1);
  const looksDecimal = pairs.every(
    ([whole = "", part = "", ...more]) => more.length === 0 && wholeNumber.test(whole) && afterComma.test(part),
  );
  if (pairs.length === 0 || groups.length < 2 || !looksDecimal) return null;
  const span = spanOf(list);
  const written = text.slice(span?.from ?? 0, span?.to ?? 0);
  return {
    code: "decimal-comma",
    offset: span?.from ?? 0,
    expected: `${groups.length} numbers with decimal points`,
    got: quoted(written),
    hint: `write ${withPoints(written)}; if whole numbers were meant, put a space behind every comma`,
  };
}

/** `[a:1]`: text where a key and a value were meant. */
export function tightColonWords(text: string): FaultWords | null {
  const tight = tightColon.exec(text);
  if (tight === null) return null;
  return {
    expected: "a space behind the colon",
    got: quoted(text),
    hint: `write ${quoted(`${tight[1]}: ${tight[2]}`)}`,
  };
}
