// The report as a page of a field book: the sketch left, the notes right. One file, no script, nothing fetched.

import type { Report } from "../model/finding.ts";
import type { Picture } from "../model/picture.ts";
import { beginWords } from "./begin.ts";
import { clean, sentence } from "./clean.ts";
import { countSentences, departureNotices } from "./count-sentences.ts";
import { footParagraphs } from "./foot-lines.ts";
import { groupHeading, groupOrder, numbered, type Group, type Numbered } from "./grouping.ts";
import { headPieces } from "./head-lines.ts";
import { entryMarkup, type PageStyle } from "./html-entry.ts";
import { style, styleHash } from "./html-style.ts";
import { amountLegend, markLegend, markLine } from "./mark-line.ts";
import { element, joined, plain, type Markup } from "./markup.ts";
import { dealCautions, type CautionsAbout } from "./mind.ts";
import { needSentences } from "./need-lines.ts";
import { nothingLookedAt, nothingWords, problemHead, problemSentence } from "./problem-lines.ts";
import type { PlaceNames } from "./standing-words.ts";
import { sheetsOf } from "./svg.ts";

export interface HtmlOptions {
  /** Names of places by their word in the plan. */
  readonly places?: PlaceNames;
}

/** Nothing may be loaded, run or sent; only the one style of this page holds. */
const policy = `default-src 'none'; style-src 'sha256-${styleHash}'; base-uri 'none'; form-action 'none'`;

/** The report with its drawings as one HTML page that needs nothing else. The same input gives the same bytes. */
export function htmlPage(pictures: readonly Picture[], report: Report, options: HtmlOptions = {}): string {
  const told = numbered(report);
  const page: PageStyle = {
    report,
    cautions: dealCautions(report, told),
    titles: new Map(report.rules.map(({ rule, title }) => [rule, title])),
    places: options.places ?? {},
  };
  const title = report.plans.map((plan) => clean(plan.title) || clean(plan.file)).join("; ");
  const head = element(
    "head",
    {},
    element("meta", { charset: "utf-8" }),
    element("meta", { "http-equiv": "Content-Security-Policy", content: policy }),
    element("meta", { name: "viewport", content: "width=device-width, initial-scale=1" }),
    element("title", {}, plain(`${title}: what was found`)),
    element("style", {}, { markup: style }),
  );
  const body = element(
    "body",
    {},
    skip,
    headerMarkup(report, told, page),
    mainMarkup(pictures, told, page),
    footerMarkup(report, told),
  );
  return `<!doctype html>\n${element("html", { lang: "en" }, head, body).markup}\n`;
}

const skip = element("a", { class: "skip", href: "#notes" }, plain("To the notes"));

function paragraph(text: string): Markup {
  return element("p", {}, plain(text));
}

function list(items: readonly string[]): Markup {
  return element("ul", {}, ...items.map((item) => element("li", {}, plain(item))));
}

function aboutMarkup(left: readonly CautionsAbout[]): Markup {
  const rows = left.flatMap(({ about, cautions }) => [
    element("dt", {}, plain(about)),
    element("dd", {}, plain(cautions.map(sentence).join(" "))),
  ]);
  return element("dl", {}, ...rows);
}

function headerMarkup(report: Report, told: readonly Numbered[], page: PageStyle): Markup {
  const { plans, common } = headPieces(report, page.places);
  const titles = plans.map(([title = "", ...rest]) =>
    joined([element("h1", {}, plain(title)), ...(rest.length === 0 ? [] : [paragraph(rest.join(", "))])]),
  );
  const problems = report.problems.length === 0 ? [] : [problemsMarkup(report)];
  const counts = element("p", { class: "head" }, plain(countSentences(report, told)));
  return element(
    "header",
    {},
    ...titles,
    paragraph(common.join(", ")),
    ...problems,
    counts,
    ...[beginWords(told)].filter((words) => words !== "").map(paragraph),
    ...departureNotices(told).map(paragraph),
  );
}

function problemsMarkup(report: Report): Markup {
  const { problems } = report;
  return element(
    "section",
    {},
    element("h2", {}, plain("Could not be read")),
    paragraph(nothingLookedAt(report) ? nothingWords : problemHead(problems.length)),
    list([...new Set(problems.map(problemSentence))]),
  );
}

function mainMarkup(pictures: readonly Picture[], told: readonly Numbered[], page: PageStyle): Markup {
  const drawn = sheetsOf(pictures, page.report, "sketch");
  const sketches = drawn.map((sketch, index) =>
    element("figure", { class: sketchClass(sketch), id: `figure-${index + 1}` }, largerMarkup(index + 1), sketch),
  );
  const notesPage = { ...page, stones: stonesOf(drawn) };
  const left = sketches.length === 0 ? [] : [element("div", { class: "sketches" }, ...sketches)];
  const notes = groupOrder.map((group) => groupMarkup(group, told, notesPage)).filter(({ markup }) => markup !== "");
  const mind =
    page.cautions.left.length === 0
      ? []
      : [section("Mind all the same, whatever is met", aboutMarkup(page.cautions.left))];
  const legend = markLegend(told.flatMap(({ finding }) => markLine(finding) ?? []));
  const key = legend === "" ? [] : [element("p", { "aria-hidden": "true" }, plain(legend.replace(/ {3}/g, "; ")))];
  const amounts = amountLegend(told.flatMap(({ finding }) => finding.remedies));
  const all = [...key, ...(amounts === "" ? [] : [paragraph(amounts)]), ...notes, ...mind];
  const none = all.length === 0 ? [paragraph("There is nothing to tell here.")] : [];
  return element("main", {}, ...left, element("div", { id: "notes", tabindex: -1 }, ...all, ...none));
}

/** The way to a sketch as large as a sheet of paper, and back: its words are too small to read beside the notes. */
function largerMarkup(number: number): Markup {
  return element(
    "p",
    { class: "larger" },
    element("a", { class: "bigger", href: `#figure-${number}` }, plain("this sketch larger")),
    element("a", { class: "smaller", href: "#notes" }, plain("back to the notes")),
  );
}

/** The paper that a sketch is printed on. */
function sketchClass({ markup }: Markup): string {
  return markup.includes('width="420mm"') ? "sketch large" : "sketch";
}

/** The stone of each finding on the first sketch that shows it. */
function stonesOf(drawn: readonly Markup[]): ReadonlyMap<number, string> {
  const stones = new Map<number, string>();
  for (const { markup } of drawn)
    for (const [, id = "", number] of markup.matchAll(/ id="(sketch-\d+-stone-(\d+))"/g))
      if (!stones.has(Number(number))) stones.set(Number(number), id);
  return stones;
}

function section(heading: string, ...children: readonly Markup[]): Markup {
  return element("section", {}, element("h2", {}, plain(heading)), ...children);
}

function groupMarkup(group: Group, told: readonly Numbered[], page: PageStyle): Markup {
  const entries = told.filter((one) => one.group === group).map((one) => entryMarkup(one, page));
  const needs = group === "missing" ? needSentences(page.report, told) : [];
  if (entries.length === 0 && needs.length === 0) return joined([]);
  return section(groupHeading[group], ...entries, ...(needs.length === 0 ? [] : [list(needs)]));
}

function footerMarkup(report: Report, told: readonly Numbered[]): Markup {
  return element("footer", {}, ...footParagraphs(report, told).map(paragraph));
}
