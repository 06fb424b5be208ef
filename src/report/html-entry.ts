// One finding on the page: its stone and sentence, its number, and the margin words. Folded open; any may be folded away.

import type { Report } from "../model/finding.ts";
import { alsoRemedies, alsoSays, sameOfWords } from "./alike.ts";
import { clean, sentence } from "./clean.ts";
import { placeWordsInFile } from "./entry-lines.ts";
import { decidesWords, doWords, saysWords, whyWords } from "./finding-words.ts";
import { foundWords } from "./found-words.ts";
import type { Numbered } from "./grouping.ts";
import { markLine } from "./mark-line.ts";
import { element, joined, plain, type Markup } from "./markup.ts";
import type { Cautions } from "./mind.ts";
import type { PlaceNames } from "./standing-words.ts";
import { shapeOf } from "./svg-stones.ts";

/** What all entries of one page share. */
export interface PageStyle {
  readonly report: Report;
  readonly cautions: Cautions;
  readonly titles: ReadonlyMap<string, string>;
  readonly places: PlaceNames;
  /** Where on the sketches each finding has its stone. */
  readonly stones?: ReadonlyMap<number, string>;
}

/** The words that a shape stands for, for who hears the page. */
const shapeSaid = { square: "not met", ring: "cannot be said", "open ring": "not known", dash: "departure" } as const;

/** The finding as a part of the page that can be pointed at: `#finding-3`. */
export function entryMarkup(one: Numbered, page: PageStyle): Markup {
  const shape = shapeOf(one.finding);
  const stone = element(
    "span",
    { class: `stone ${shape.replace(" ", "-")}`, title: shapeSaid[shape] },
    plain(String(one.number)),
  );
  const summary = element("summary", {}, stone, element("h3", {}, plain(sentence(one.finding.sentence))));
  const place = placeWordsInFile(one.finding, page.report);
  return element(
    "details",
    { class: "entry", id: `finding-${one.number}`, open: "open" },
    summary,
    ...markParts(one),
    ...wordsList(one, page),
    ...placeMarkup(place, page.stones?.get(one.number)),
  );
}

/** Where it stands in the plan, and where on the sketch. */
function placeMarkup(place: string, stoneId: string | undefined): readonly Markup[] {
  const sketch = stoneId === undefined ? [] : [element("a", { href: `#${stoneId}` }, plain("on the sketch"))];
  const parts = [...(place === "" ? [] : [plain(place)]), ...sketch];
  return parts.length === 0 ? [] : [element("p", { class: "place" }, joined(parts, ", "))];
}

/** The mark line for the eye; its number in words for everybody. */
function markParts({ finding }: Numbered): readonly Markup[] {
  const mark = markLine(finding);
  const said = foundWords(finding);
  const line =
    mark === null ? [] : [element("pre", { class: "mark", "aria-hidden": "true" }, { markup: lineMarkup(mark) })];
  return said === "" ? line : [...line, element("p", {}, plain(said))];
}

/** Spaces are kept, so this text is escaped without being cleaned of them; it holds our own marks and one unit. */
function lineMarkup({
  low,
  marks,
  high,
}: {
  readonly low: string;
  readonly marks: string;
  readonly high: string;
}): string {
  return `${low} ${marks} ${high}`.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
}

function wordsList(one: Numbered, page: PageStyle): readonly Markup[] {
  const { finding, number } = one;
  const mind = [...(page.cautions.with.get(number) ?? []).map(sentence), decidesWords(finding)];
  const words: readonly (readonly [string, readonly string[]])[] = [
    ["Why", [sameOfWords(one), whyWords(finding, page.report)]],
    ["Says", [saysWords(finding, page.places), ...alsoSays(one, page.places)]],
    ["Do", [...doWords(finding, page.titles), ...alsoRemedies(one)]],
    ["Mind", mind],
  ];
  const rows = words
    .map(([word, texts]) => [word, texts.map(clean).filter((text) => text !== "")] as const)
    .filter(([, texts]) => texts.length > 0)
    .flatMap(([word, texts]) => [
      element("dt", {}, plain(word)),
      element("dd", {}, ...texts.map((text) => element("p", {}, plain(text)))),
    ]);
  return rows.length === 0 ? [] : [element("dl", {}, ...rows)];
}
