// Where a figure comes from, in plain words: what it is, who says so, and whether the page was seen.

import type { Seen, Standing } from "../model/card.ts";
import type { Finding, Wanted } from "../model/finding.ts";
import { amount, scaleOf } from "./amounts.ts";
import { capital, clean, sentence } from "./clean.ts";

const standings: Readonly<Record<Standing, string>> = {
  law: "law",
  standard: "standard",
  guidance: "guidance",
  practice: "usual in the trade",
  "your own wish": "your own figure in the plan",
};
const seenWords: Readonly<Record<Seen, string>> = {
  read: "page read",
  "read second-hand": "read second-hand",
  memory: "recalled, page not seen",
  computed: "worked out",
  none: "no publisher",
};
const lowerWords = new Set(["and", "of", "the", "upon", "on"]);

/** Names of places by their word in a plan, where the caller has them (`united states` -> `the United States`). */
export type PlaceNames = Readonly<Record<string, string>>;

/** A place in words: the given name, or the word of the plan with capitals. */
export function placeWords(place: string, names: PlaceNames = {}): string {
  if (place === "anywhere") return "any place";
  if (Object.hasOwn(names, place)) return clean(names[place] ?? place);
  const capitals = clean(place)
    .split(/[ _-]/)
    .map((word) => (lowerWords.has(word) ? word : word.slice(0, 1).toUpperCase() + word.slice(1)));
  return capitals.join(" ");
}

/** `at least 3.10 m`, `1 in 12 or flatter`, `between 2.5 % and 6 %`; empty where no number is wanted. */
export function requirementWords(finding: Finding): string {
  const scale = scaleOf(finding);
  const { wanted } = finding;
  if (!wanted || !scale) return "";
  if (typeof wanted.value !== "number") {
    const [low, high] = wanted.value;
    return `between ${amount(low, scale)} and ${amount(high, scale)}`;
  }
  const text = amount(wanted.value, scale);
  if (/^1 in [\d.]+$/.test(text)) return `${text} or ${wanted.sense === "at_most" ? "flatter" : "steeper"}`;
  return `${wanted.sense === "at_most" ? "at most" : "at least"} ${text}`;
}

/** Whether the sentence says what is wanted: in so many words, or because only the side matters. */
export function wantedIsTold({ sentence, wanted }: Finding): boolean {
  return / is (?:wanted|advised)\b/.test(sentence) || wanted?.value === 0;
}

/** What is wanted and who says so, in one sentence. */
export function limitWords(finding: Finding, names: PlaceNames = {}): string {
  const wanted = requirementWords(finding);
  const says = whoSays(finding, names);
  return wanted === "" ? says : capital(`${wanted} is wanted. ${says}`);
}

/** Who says so: where the figure holds, its source, how binding it is, how it is known. Empty where nothing is wanted. */
export function whoSays({ wanted }: Finding, names: PlaceNames = {}): string {
  if (!wanted) return "";
  const where = wanted.where === "anywhere" ? "" : `${placeWords(wanted.where, names)}: `;
  const tail = wanted.fell_back ? " No figure is known for this place, so this one stands in." : "";
  return sentence(`${where}${sourceWords(wanted)}`) + tail;
}

function sourceWords(wanted: Wanted): string {
  const kind = standings[wanted.standing];
  if (!wanted.source) return wanted.standing === "practice" ? `${kind}, ${seenWords.none}` : kind;
  if (wanted.standing === "practice" && /\bpractice$/i.test(wanted.source.title) && wanted.source.clause === "")
    return `${kind}, ${seenWords.none}`;
  const [title, clause] = [clean(wanted.source.title), clean(wanted.source.clause)];
  const where = clause === "" || title.includes(clause) ? title : `${title}, ${clause}`;
  return `${where}; ${kind}, ${seenWords[wanted.source.seen]}`;
}
