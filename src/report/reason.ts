// A card in words: what it asks, how it is measured, each limit with its standing and how its source was seen.

import type { Bound, Card, Limit, Requirement, Rulebook, Seen, Source } from "../model/card.ts";
import type { Measure } from "../model/reading.ts";
import { words } from "../model/units.ts";

const seenWords: Readonly<Record<Seen, string>> = {
  read: "page read",
  "read second-hand": "read second-hand",
  memory: "recalled, page not seen again",
  computed: "worked out",
  none: "no publisher",
};
const standingWords: Readonly<Record<Limit["standing"], string>> = {
  law: "law",
  standard: "a standard",
  guidance: "guidance",
  practice: "common practice",
  "your own wish": "your own wish",
};
const stakesWords: Readonly<Record<Card["stakes"], string>> = {
  safety: "Somebody can be hurt, or the law forbids it.",
  damage: "It will not work, or it costs dear.",
  nuisance: "A nuisance.",
};

/** The whole card as text. */
export function reasonText(card: Card, book: Rulebook, measures: ReadonlyMap<string, Measure>): string {
  const measure = measures.get(card.measure);
  const lines = [card.title, "", card.asks, stakesWords[card.stakes]];
  if (card.faultsOnly) lines.push("This is a screen: it can show a fault, never that a thing holds.");
  lines.push("", `What is found: ${measure?.shortName ?? card.measure}.`, "", "What is wanted:");
  for (const limit of card.limits) lines.push(...limitLines(limit, card, book, measures));
  if (card.cautions.length > 0) lines.push("", "Mind:", ...card.cautions.map((caution) => `  ${caution}`));
  if (card.defersTo) lines.push("", `Who decides: ${card.defersTo}.`);
  lines.push("", `Rule ${card.id}, in ${card.file}`);
  return `${lines.join("\n")}\n`;
}

function limitLines(
  limit: Limit,
  card: Card,
  book: Rulebook,
  measures: ReadonlyMap<string, Measure>,
): readonly string[] {
  const measure = measures.get(limit.measure?.name ?? card.measure);
  const where = limit.where === "anywhere" ? "Anywhere" : limit.where.replace(/^./, (first) => first.toUpperCase());
  const each = limit.forEach ? `, for each of ${limit.forEach.replace(".", "'s ")}` : "";
  const when = limit.when.length > 0 ? `, where ${limit.when.map(conditionWords).join(" and ")}` : "";
  const wants = (["must", "should"] as const).flatMap((grade) => {
    const requirement = limit[grade];
    return requirement && measure
      ? [`${grade === "must" ? "must be" : "should be"} ${requirementWords(requirement, measure)}`]
      : [];
  });
  const source = limit.source ? book.sources.get(limit.source) : undefined;
  return [
    `  ${where}${each}${when}: ${measure?.shortName ?? ""} ${wants.join(", ")}.`,
    `      ${standingWords[limit.standing]}; ${source ? sourceWords(source, limit.clause) : "no publisher"}`,
  ];
}

function sourceWords(source: Source, clause: string | undefined): string {
  const parts = [
    source.title,
    source.edition,
    clause,
    seenWords[source.seen] + (source.date ? ` ${source.date}` : ""),
    source.address,
  ];
  return parts.filter((part) => part !== undefined && part !== "").join(", ");
}

function conditionWords(condition: Limit["when"][number]): string {
  const of = condition.of.replace(/^(\w+)\.(.+)$/, "the $1's $2").replaceAll("_", " ");
  if ("is" in condition)
    return typeof condition.is === "boolean"
      ? `${of} is ${condition.is ? "so" : "not so"}`
      : `${of} is ${Array.isArray(condition.is) ? condition.is.join(" or ") : String(condition.is)}`;
  const band = [
    condition.over === undefined ? "" : `over ${condition.over}`,
    condition.from === undefined ? "" : `from ${condition.from}`,
    condition.upTo === undefined ? "" : `up to ${condition.upTo}`,
    condition.under === undefined ? "" : `under ${condition.under}`,
  ];
  return `${of} is ${band.filter(Boolean).join(" and ")}`;
}

function requirementWords(requirement: Requirement, measure: Measure): string {
  if (requirement.sense === "between")
    return `between ${boundWords(requirement.low, measure)} and ${boundWords(requirement.high, measure)}`;
  return `${requirement.sense === "at_least" ? "at least" : "at most"} ${boundWords(requirement.bound, measure)}`;
}

function boundWords(bound: Bound, measure: Measure): string {
  const number = (value: number) => words(value, measure.dimension, { shownIn: measure.shownIn });
  switch (bound.from) {
    case "number":
      return number(bound.value);
    case "table":
      return `what the table of ${bound.table} gives (${bound.column.replaceAll("_", " ")})`;
    case "times":
      return `${bound.times} times the ${ofWords(bound.of)}${bound.downTo === undefined ? "" : `, not under ${number(bound.downTo)}`}${bound.upTo === undefined ? "" : `, not over ${number(bound.upTo)}`}`;
    case "over":
      return `${bound.times} over the ${ofWords(bound.over)}`;
    case "plan":
      return `the ${ofWords(bound.property)} that the plan asks for`;
  }
}

function ofWords(dotted: string): string {
  return dotted.replace(/^(\w+)\.(.+)$/, "$2 of the $1").replaceAll("_", " ");
}
