// The report as text: for somebody cold and tired in the rain. Sentence first, one mark line, four margin words.

import type { Report } from "../model/finding.ts";
import { beginWords } from "./begin.ts";
import { clean, columns, sentence } from "./clean.ts";
import { countSentences, departureNotices } from "./count-sentences.ts";
import { entryLines, legendLines, type EntryStyle } from "./entry-lines.ts";
import { footLines } from "./foot-lines.ts";
import { groupHeading, groupOrder, numbered, type Group, type Numbered } from "./grouping.ts";
import { headLines } from "./head-lines.ts";
import { dealCautions, type Cautions, type CautionsAbout } from "./mind.ts";
import { needLines } from "./need-lines.ts";
import { nothingLookedAt, problemLines, unreadLines } from "./problem-lines.ts";
import type { TextOptions } from "./text-options.ts";
import { wrap } from "./wrap.ts";

export type { TextOptions } from "./text-options.ts";

const narrowest = 80;
const widest = 118;
const usual = 100;

/** The report as lines of 80 to 118 columns, without colour, ending with a line break. The same report gives the same bytes. */
export function textReport(report: Report, options: TextOptions = {}): string {
  const width = Math.round(Math.min(widest, Math.max(narrowest, options.width ?? usual)));
  if (nothingLookedAt(report)) return unread(report, width, options.places);
  const told = numbered(report);
  const cautions = dealCautions(report, told);
  const style: EntryStyle = {
    report,
    width,
    options,
    cautions,
    titles: new Map(report.rules.map((rule) => [rule.rule, rule.title])),
  };
  const blocks = [
    headLines(report, width, options.places),
    problemLines(report.problems, width),
    [
      ...wrap(countSentences(report, told), width),
      ...begin(told, width),
      ...departureNotices(told).flatMap((notice) => wrap(notice, width)),
      ...legendLines(told, style),
    ],
    ...groupOrder.map((group) => groupLines(group, told, style)),
    mindLines(cautions, style),
    footLines(report, { told, width, options }),
  ].filter((block) => block.length > 0);
  const lines = blocks.flatMap((block, index) => (index === 0 ? block : ["", ...block]));
  return `${lines.map((line) => line.trimEnd()).join("\n")}\n`;
}

/** Where no plan could be opened, or none looked at, there is nothing to tell but that. */
function unread(report: Report, width: number, names: TextOptions["places"]): string {
  const head = report.plans.length === 0 ? [] : [...headLines(report, width, names), ""];
  return `${[...head, ...unreadLines(report.problems, width)].map((line) => line.trimEnd()).join("\n")}\n`;
}

function begin(told: readonly Numbered[], width: number): readonly string[] {
  const words = beginWords(told);
  return words === "" ? [] : wrap(words, width);
}

function groupLines(group: Group, told: readonly Numbered[], style: EntryStyle): readonly string[] {
  const members = told.filter((one) => one.group === group);
  const needs = group === "missing" ? needLines(style.report, told, style.width) : [];
  if (members.length === 0 && needs.length === 0) return [];
  const short = group === "hurt" ? new Map<Numbered, readonly Numbered[]>() : manyAlike(members, style);
  const inShort = new Set([...short.values()].flat());
  const lines = members.flatMap((one) => {
    const more = short.get(one)?.length ?? 0;
    const lead = more === 0 ? [] : [`${margin}${more} more by this rule, a line each; --all tells them whole.`];
    return inShort.has(one) ? entryLines(one, asLine(style)) : [...entryLines(one, style), ...lead];
  });
  return [groupHeading[group], ...lines, ...needs];
}

const margin = "      ";
/** Of findings by one rule so many are told whole; the rest get a line each, if they are more than a few. */
const toldWhole = 5;
const fewMore = 3;

const asLine = (style: EntryStyle): EntryStyle => ({ ...style, options: { ...style.options, brief: true } });

/** The later of many findings by one rule, by the last that is told whole. What carries a caution printed nowhere else is always told whole. */
function manyAlike(
  members: readonly Numbered[],
  { options, cautions }: EntryStyle,
): ReadonlyMap<Numbered, readonly Numbered[]> {
  if (options.all || options.brief) return new Map();
  const byRule = new Map<string, Numbered[]>();
  for (const one of members) {
    const same = byRule.get(one.finding.rule);
    if (same) same.push(one);
    else byRule.set(one.finding.rule, [one]);
  }
  return new Map(
    [...byRule.values()].flatMap((same) => {
      const rest = same.slice(toldWhole).filter((one) => !cautions.with.has(one.number));
      return rest.length > fewMore ? [[same[toldWhole - 1] as Numbered, rest] as const] : [];
    }),
  );
}

/** Most lines of cautions that no told finding carries; nobody reads more in the rain. */
const mostMind = 12;

/** Cautions that no told finding carries, and all of them where only first lines are printed. */
function mindLines(cautions: Cautions, style: EntryStyle): readonly string[] {
  const { brief, all } = style.options;
  const dealt = brief ? [...cautions.with.values()].flat().map(clean) : [];
  const fitting = all ? cautions.left : firstOf(cautions.left, style.width);
  const lines = [
    ...dealt.flatMap((caution) => wrap(caution, style.width, { first: "  -  ", rest: "     " })),
    ...fitting.flatMap((one) => aboutLines(one, style.width)),
  ];
  if (lines.length === 0) return [];
  const count = (left: readonly CautionsAbout[]) => left.reduce((sum, one) => sum + one.cautions.length, 0);
  const more = count(cautions.left) - count(fitting);
  const where = `${more} more: --all prints them here, and a page saved with --save report.html holds them all.`;
  return [
    brief ? "MIND" : "MIND ALL THE SAME, whatever is met",
    ...lines,
    ...(more > 0 ? wrap(where, style.width, { first: "  ", rest: "  " }) : []),
  ];
}

/** As many cautions as fit on so many lines, each whole: the first about each sort of thing, then the second of each. */
function firstOf(left: readonly CautionsAbout[], width: number): readonly CautionsAbout[] {
  const rounds = Math.max(0, ...left.map(({ cautions }) => cautions.length));
  const turns = Array.from({ length: rounds }, (_, round) =>
    left.flatMap(({ cautions }, index) => (round < cautions.length ? [index] : [])),
  ).flat();
  let counts = left.map(() => 0);
  const shown = (of: readonly number[]) =>
    left.flatMap(({ about, cautions }, i) => (of[i] ? [{ about, cautions: cautions.slice(0, of[i]) }] : []));
  for (const turn of turns) {
    const more = counts.map((count, i) => (i === turn ? count + 1 : count));
    if (shown(more).flatMap((one) => aboutLines(one, width)).length > mostMind) break;
    counts = more;
  }
  return shown(counts);
}

const aboutColumns = 13;

/** `  Drains      Gloves, wash ...`: what they are about, then all of its cautions. */
function aboutLines({ about, cautions }: CautionsAbout, width: number): readonly string[] {
  const rest = "  ".padEnd(2 + aboutColumns);
  const long = columns(about) >= aboutColumns;
  const first = long ? rest : `  ${about}${" ".repeat(aboutColumns - columns(about))}`;
  const words = wrap(cautions.map(sentence).join(" "), width, { first, rest });
  return long ? [...wrap(about, width, { first: "  ", rest: "  " }), ...words] : words;
}
