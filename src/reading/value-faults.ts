// Words for a value that is not what its schema wants.

import type { ProblemCode } from "../model/problem.ts";
import type { FaultWords } from "./closed-words.ts";
import { decimalCommaWords, isDecimalComma, tightColonWords, withPoints } from "./comma-traps.ts";
import { badNameWords, isNamePattern } from "./name-words.ts";
import { nearestWord } from "./nearest-word.ts";
import { quoted } from "./problem-list.ts";
import type { SchemaFault } from "./schema-faults.ts";
import { exampleText, flowText, gotWords, listedWords, typesOf, wantedWords } from "./schema-words.ts";
import type { SchemaPart } from "./schema-words.ts";

/** Words and code for one value. */
export interface ValueWords extends FaultWords {
  readonly code: ProblemCode;
}

const yesWords: ReadonlySet<string> = new Set(["yes", "y", "on", "ja", "sim", "si", "oui"]);
const noWords: ReadonlySet<string> = new Set(["no", "n", "off", "nein", "nao", "non"]);

/** Words for a fault of a value, whatever the keyword. */
export function valueWords(fault: SchemaFault): ValueWords {
  const { error, schema } = fault;
  const trap = trapWords(error.data, schema);
  if (trap !== null) return trap;
  switch (error.keyword) {
    case "enum":
    case "const":
      return wordListed(error.keyword === "enum" ? (schema.enum ?? []) : [error.params["allowedValue"]], fault);
    case "pattern":
      return patternWords(String(error.data), schema);
    case "minItems":
    case "maxItems":
    case "uniqueItems":
    case "contains":
      return listWords(fault);
    case "minimum":
    case "maximum":
    case "exclusiveMinimum":
    case "exclusiveMaximum":
      return rangeWords(fault);
    case "minLength":
      return { code: "wrong-type", expected: wantedWords(schema), got: gotWords(error.data), hint: emptyHint };
    default:
      return fault.path.length === 0 ? wholeWords(error.data) : typeWords(error.data, schema);
  }
}

/** A file that is a list, a number or a sentence. */
function wholeWords(data: unknown): ValueWords {
  const got = typeof data === "string" ? "a text without keys" : gotWords(data);
  const hint = "write a key, a colon, a space and its value on each line, as title: The lower paddock";
  return { code: "wrong-type", expected: "keys with their values", got, hint };
}

const emptyHint = "write the value behind the colon, or leave the key out; a # behind a space begins a remark";

/** The traps of the notation, which explain a value better than its type does. */
function trapWords(data: unknown, schema: SchemaPart): ValueWords | null {
  if (typeof data === "string") {
    const isQuantity = schema["x-unit"] !== undefined || typesOf(schema).includes("number");
    if (isQuantity && (isDecimalComma(data) || /\d,\d/u.test(data))) {
      const { expected, got } = decimalCommaWords(data);
      return { code: "decimal-comma", expected, got, hint: `write ${withPoints(data)}` };
    }
    const tight = typesOf(schema).includes("string") ? null : tightColonWords(data);
    if (tight !== null) return { code: "not-yaml", ...tight };
  }
  const commas = Array.isArray(data) && schema.maxItems === 2 ? splitPair(data) : null;
  if (commas === null) return null;
  return {
    code: "decimal-comma",
    expected: "a pair of two numbers with decimal points",
    got: flowText(data),
    hint: `if these are decimal commas, write ${commas}`,
  };
}

/** `[48.52, 12.30]` for `[48, 52, 12, 30]`; null where the list does not look like that. */
function splitPair(list: readonly unknown[]): string | null {
  if (list.length !== 3 && list.length !== 4) return null;
  if (!list.every((item) => Number.isInteger(item))) return null;
  const [a, b, c, d] = list.map(String);
  return d === undefined ? `[${a}.${b}, ${c}] or [${a}, ${b}.${c}]` : `[${a}.${b}, ${c}.${d}]`;
}

function typeWords(data: unknown, schema: SchemaPart): ValueWords {
  const expected = wantedWords(schema);
  const got = gotWords(data);
  return { code: codeForType(data, schema), expected, got, hint: typeHint(data, schema) };
}

function codeForType(data: unknown, schema: SchemaPart): ProblemCode {
  const types = typesOf(schema);
  const wantsNumber = types.every((type) => type === "number" || type === "integer");
  return types.length > 0 && wantsNumber && typeof data === "string" ? "not-a-number" : "wrong-type";
}

function typeHint(data: unknown, schema: SchemaPart): string {
  const types = typesOf(schema);
  const example = exampleText(schema);
  if (data === null) return emptyHint;
  if (types.includes("boolean") && typeof data === "string") return yesOrNo(data);
  if (types.includes("string") && typeof data === "number") return textForNumber(data, schema);
  if (types.includes("array") && !types.includes("object") && !Array.isArray(data)) {
    if (typeof data === "object") return "put it in square brackets";
    return `put it in square brackets: [${flowText(data).replaceAll(" to ", ", ")}]`;
  }
  // A pair where a thing is wanted is most often its place.
  if (Array.isArray(data) && data.length === 2 && types.includes("object") && schema.properties?.["at"] !== undefined)
    return `write {at: ${flowText(data)}}`;
  if (typeof data === "string" && /^\d[\d_' ]*(?:\.\d+)?$/u.test(data)) return `write ${data.replace(/[_' ]/gu, "")}`;
  return example === null ? "compare it with the examples of this key" : `write for instance ${example}`;
}

function yesOrNo(word: string): string {
  const plain = word.trim().toLowerCase();
  if (yesWords.has(plain) || plain === "true") return "write true";
  if (noWords.has(plain) || plain === "false") return "write false";
  return "write true or false";
}

function textForNumber(data: number, schema: SchemaPart): string {
  const example = exampleText(schema);
  if (schema["x-unit"] !== undefined) return `write the unit with it, such as ${example ?? `${data} mm`}`;
  if (isNamePattern(schema.pattern)) return `a name begins with a letter: write P${data}`;
  const written = example === null ? "" : `, such as ${example}`;
  return /\b(?:point|peg|name)\b/iu.test(schema.description ?? "")
    ? `a name begins with a letter: write P${data}; a place is a pair or a group${written}`
    : `put it in quotes if the digits are meant as text: '${data}'`;
}

function wordListed(allowed: readonly unknown[], { error, schema }: SchemaFault): ValueWords {
  const words = allowed.map(flowText);
  const near = nearestWord(flowText(error.data), words, schema["x-synonyms"] ?? {});
  const choose = words.length === 1 ? `write ${words.join("")}` : "choose one of these words";
  const hint = error.data === null ? emptyHint : choose;
  return {
    code: "unknown-word",
    expected: listedWords(allowed),
    got: gotWords(error.data),
    hint: near === null ? hint : `did you mean ${near}?`,
  };
}

function patternWords(text: string, schema: SchemaPart): ValueWords {
  if (isNamePattern(schema.pattern)) return { code: "bad-name", ...badNameWords(text) };
  if (schema.pattern === "\\?$")
    return { code: "wrong-type", expected: "a question", got: gotWords(text), hint: "end it with a question mark" };
  const example = exampleText(schema);
  const isDate = schema.pattern?.includes("{4}-") === true;
  const meant = spelledOtherwise(text, schema.pattern);
  if (meant !== null)
    return { code: "wrong-type", expected: quoted(meant), got: gotWords(text), hint: `write ${meant}` };
  return {
    code: isDate ? "bad-date" : "wrong-type",
    expected: isDate ? "a day, written year-month-day" : wantedWords(schema),
    got: gotWords(text),
    hint: example === null ? "compare it with the examples of this key" : `write for instance ${example}`,
  };
}

/** The same words as the pattern wants them joined, without capitals; null where that does not fit either. */
function spelledOtherwise(text: string, pattern: string | undefined): string | null {
  if (pattern === undefined || text.length > longestSpelled) return null;
  const fits = new RegExp(pattern, "u");
  const words = text.trim().toLowerCase();
  return ["-", "_", " "].map((join) => words.replace(/[\s_-]+/gu, join)).find((one) => fits.test(one)) ?? null;
}

/** Longer texts are no names spelled otherwise. */
const longestSpelled = 60;

function listWords({ error, schema }: SchemaFault): ValueWords {
  const limit = Number(error.params["limit"]);
  const got = gotWords(error.data);
  const example = exampleText(schema);
  const hint = example === null ? "count the entries" : `write for instance ${example}`;
  if (error.keyword === "uniqueItems") {
    const items = error.data as readonly unknown[];
    const twice = items[Number(error.params["j"])];
    return {
      code: "name-taken",
      expected: "each entry once",
      got: `${gotWords(twice)} twice`,
      hint: "keep one of them",
    };
  }
  if (error.keyword === "maxItems" && limit > fewEntries)
    return { code: "wrong-type", expected: `a list of at most ${limit} entries`, got, hint: "leave some out" };
  const bound = error.keyword === "maxItems" ? "at most" : "at least";
  const entries = limit === 1 ? "entry" : "entries";
  return {
    code: "wrong-type",
    expected: `a list of ${bound} ${Number.isNaN(limit) ? 1 : limit} ${entries}`,
    got,
    hint,
  };
}

/** Up to so many entries an example tells best how many are wanted. */
const fewEntries = 10;

function rangeWords({ error, schema }: SchemaFault): ValueWords {
  const { comparison, limit } = error.params;
  const bounds: Readonly<Record<string, string>> = {
    ">=": "at least",
    "<=": "at most",
    ">": "more than",
    "<": "less than",
  };
  const example = exampleText(schema);
  return {
    code: "out-of-range",
    expected: `a number of ${bounds[String(comparison)] ?? "at least"} ${String(limit)}`,
    got: gotWords(error.data),
    hint: example === null ? "look at the sign and the decimal point" : `write for instance ${example}`,
  };
}
