// One finding as lines: the sentence, the mark line, the margin words, the place in the file.

import type { Finding, Report } from "../model/finding.ts";
import { alsoRemedies, alsoSays, sameOfWords } from "./alike.ts";
import { clean, columns, sentence } from "./clean.ts";
import { decidesWords, doWords, saysWords, whyWords } from "./finding-words.ts";
import { foundWords, marginWords } from "./found-words.ts";
import type { Numbered } from "./grouping.ts";
import { amountLegend, markLegend, markLine } from "./mark-line.ts";
import type { Cautions } from "./mind.ts";
import type { TextOptions } from "./text-options.ts";
import { tagRight, wrap } from "./wrap.ts";

/** What all entries of one report share. */
export interface EntryStyle {
  readonly report: Report;
  readonly width: number;
  readonly options: TextOptions;
  readonly cautions: Cautions;
  /** Titles of rules by id. */
  readonly titles: ReadonlyMap<string, string>;
}

const margin = "      ";
const wordColumns = 7;
const labelColumns = 16;
const widePage = 110;

/** The lines of one told finding. */
export function entryLines(one: Numbered, style: EntryStyle): readonly string[] {
  const { finding } = one;
  const number = `${String(one.number).padStart(2)}. `;
  const head = wrap(sentence(finding.sentence), style.width, { first: number, rest: " ".repeat(number.length) });
  const tag = placeWordsInFile(finding, style.report);
  if (style.options.brief) return tagRight(head, tag, style.width);
  const places = style.options.places ?? {};
  const lines = [
    ...head,
    ...(style.options.plain ? [] : markLines(finding, style.width)),
    ...marginLines("Why", [whyWith(one, style)], style.width),
    ...marginLines("Says", [saysWords(finding, places), ...alsoSays(one, places)], style.width),
    ...marginLines("Do", [...doWords(finding, style.titles), ...alsoRemedies(one)], style.width),
    ...marginLines("Mind", [mindWords(one, style)], style.width),
  ];
  return tagRight(lines, tag, style.width);
}

/** Where there is no mark line, its number goes into words. */
function whyWith(one: Numbered, style: EntryStyle): string {
  const { finding } = one;
  const why = whyWords(finding, style.report);
  const marked = !style.options.plain && markOf(finding, style.width) !== null;
  return [marked ? "" : foundWords(finding), sameOfWords(one), why].filter((part) => part !== "").join(" ");
}

function mindWords(one: Numbered, style: EntryStyle): string {
  const dealt = (style.cautions.with.get(one.number) ?? []).map(sentence);
  return [...dealt, decidesWords(one.finding)].filter((part) => part !== "").join(" ");
}

function marginLines(word: string, paragraphs: readonly string[], width: number): readonly string[] {
  const rest = margin + " ".repeat(wordColumns);
  return paragraphs
    .filter((paragraph) => paragraph !== "")
    .flatMap((paragraph, index) =>
      wrap(paragraph, width, { first: index === 0 ? margin + word.padEnd(wordColumns) : rest, rest }),
    );
}

function markOf(finding: Finding, width: number) {
  return markLine(finding, width >= widePage ? "wide" : "ordinary");
}

function markLines(finding: Finding, width: number): readonly string[] {
  const mark = markOf(finding, width);
  if (!mark) return [];
  const label = clean(finding.reading) || "found";
  const long = columns(label) > labelColumns;
  const lead = long ? "" : label + " ".repeat(labelColumns - columns(label));
  const line = `${margin}${long ? " ".repeat(labelColumns) : lead}${mark.low.padStart(6)} ${mark.marks} ${mark.high}`;
  const above = long ? wrap(label, width, { first: margin, rest: margin }) : [];
  const words = marginWords(finding);
  if (words === "") return [...above, line];
  return [...above, ...tagMargin(line, words, width)];
}

/** The words of the margin behind the line, or on a line of their own where they do not fit. */
function tagMargin(line: string, words: string, width: number): readonly string[] {
  const behind = `${line}   ${words}`;
  return columns(behind) <= width ? [behind] : tagRight([line], words, width);
}

/** `line 57`; with the file where it is not the only plan's own. */
export function placeWordsInFile(finding: Finding, report: Report): string {
  const [at] = finding.at;
  if (!at) return "";
  const [plan] = report.plans;
  const own = report.plans.length === 1 && plan?.file === at.file;
  return own ? `line ${at.line}` : `${clean(at.file)} line ${at.line}`;
}

/** Remedies are worked out when they are looked at: no more findings than these are asked for the key alone. */
const legendLooks = 12;

/** The key to the mark line, once, where any is drawn. */
export function legendLines(told: readonly Numbered[], style: EntryStyle): readonly string[] {
  if (style.options.brief) return [];
  const marks = style.options.plain ? [] : told.flatMap((one) => markOf(one.finding, style.width) ?? []);
  const amounts = amountLegend(told.slice(0, legendLooks).flatMap(({ finding }) => finding.remedies));
  const place = told.some(({ finding }) => finding.at.length > 0)
    ? "At the right, line 12: where it stands in the plan file."
    : "";
  const keys = [amounts, place].filter((key) => key !== "").join(" ");
  return [markLegend(marks), ...wrap(keys, style.width)].filter((line) => line !== "");
}
