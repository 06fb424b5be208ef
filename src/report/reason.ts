// A card in words: what it asks, how it is measured, each limit with its standing and how its source was seen.

import type { Bound, Card, Limit, Requirement, Rulebook, Seen, Source } from "../model/card.ts";
import type { Measure } from "../model/reading.ts";
import { roleAndProperty } from "../model/plan.ts";
import { propertyWords } from "../model/property-words.ts";
import type { Dimension } from "../model/quantity.ts";
import { shown, words } from "../model/units.ts";
import { capital } from "./clean.ts";
import { placeWords } from "./standing-words.ts";
import { wrap } from "./wrap.ts";

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
  const context: Context = { card, book, measures };
  const measure = measures.get(card.measure);
  const lines = [card.title, "", card.asks, stakesWords[card.stakes]];
  if (card.faultsOnly) lines.push("This is a screen: it can show a fault, never that a thing holds.");
  lines.push("", `What is found: ${nameOf(card, measure)}.`, "", "What is wanted:");
  for (const limit of card.limits) lines.push(...limitLines(limit, context));
  if (card.cautions.length > 0) lines.push("", "Mind:", ...card.cautions.map((caution) => `  ${caution}`));
  if (card.defersTo) lines.push("", `Who decides: ${card.defersTo}.`);
  lines.push("", `Rule ${card.id}, in ${card.file}`);
  return `${lines.flatMap(wrapped).join("\n")}\n`;
}

const widest = 100;

/** A line broken at 100 columns, what follows set in under it. */
function wrapped(line: string): readonly string[] {
  const indent = /^ */.exec(line)?.[0] ?? "";
  return line === "" ? [""] : wrap(line, widest, { first: indent, rest: `${indent}  ` });
}

/** A number that the plan states goes by its own name. */
function nameOf(card: Card, measure: Measure | undefined): string {
  const { property } = card.parameters;
  return measure?.phrase.includes("{property}") && property
    ? propertyWords(String(property))
    : (measure?.shortName ?? card.measure);
}

/** `the animals that the fence is to keep out`, `the uses of the way`. */
function eachWords(list: string): string {
  const [role, property] = roleAndProperty(list);
  const thing = `the ${role.replaceAll("_", " ")}`;
  return lists[property]?.replace("{thing}", thing) ?? ofWords(list);
}

const lists: Readonly<Record<string, string>> = {
  keep_out: "the animals that {thing} is to keep out",
  keep_in: "the animals that {thing} is to keep in",
  for: "the uses of {thing}",
  holds: "what {thing} holds",
};

/** What the words of a row are made with. */
interface Context {
  readonly card: Card;
  readonly book: Rulebook;
  readonly measures: ReadonlyMap<string, Measure>;
}

function limitLines(limit: Limit, context: Context): readonly string[] {
  const { book } = context;
  const quantity = quantityOf(limit, context);
  const each = limit.forEach ? `, for each of ${eachWords(limit.forEach)}` : "";
  const conditions = limit.when.map((condition) => conditionWords(condition, context));
  const when = conditions.length > 0 ? `, where ${conditions.join(" and ")}` : "";
  const graded = (["must", "should"] as const).flatMap((grade) => {
    const requirement = limit[grade];
    return requirement ? [{ grade, requirement }] : [];
  });
  const wants = graded.map(({ grade, requirement }) => `${grade} be ${requirementWords(requirement, quantity)}`);
  const figures = graded.flatMap(({ requirement }) => tableLines(requirement, limit, { quantity, book }));
  const source = limit.source ? book.sources.get(limit.source) : undefined;
  const where = limit.where === "anywhere" ? "Anywhere" : capital(placeWords(limit.where, book.placeNames));
  return [
    `  ${where}${each}${when}: ${quantity.name} ${wants.join(", ")}.`,
    ...figures.map((line) => `      ${line}`),
    `      ${limitSays(limit, source)}`,
  ];
}

/** What sort of word a limit is, and whose. */
function limitSays(limit: Limit, source: Source | undefined): string {
  const standing = standingWords[limit.standing];
  if (source && (limit.standing !== "practice" || source.seen !== "none"))
    return `${standing}; ${sourceWords(source, limit.clause)}`;
  return [standing, ...(limit.clause ? [limit.clause] : []), "no publisher"].join(", ");
}

/** A quantity as a rule speaks of it. */
interface Said {
  readonly name: string;
  readonly dimension: Dimension;
  readonly shownIn?: string | undefined;
}

function quantityOf(limit: Limit, { card, measures }: Context): Said {
  const measure = measures.get(limit.measure?.name ?? card.measure);
  const { property, shown } = limit.measure?.parameters ?? card.parameters;
  const named = typeof property === "string" && property !== "";
  return {
    name: named ? `the ${propertyWords(property)}` : (measure?.shortName ?? card.measure),
    dimension: measure?.dimension ?? card.dimension,
    shownIn: typeof shown === "string" && shown !== "" ? shown : measure?.shownIn,
  };
}

/** The figures of a table that a row refers to: `rise ordinary: fox 1.2 m, dog 1.2 m`. */
function tableLines(
  requirement: Requirement,
  limit: Limit,
  { quantity, book }: { readonly quantity: Said; readonly book: Rulebook },
): readonly string[] {
  const bounds = requirement.sense === "between" ? [requirement.low, requirement.high] : [requirement.bound];
  const named = limit.when.find((condition) => condition.of === "each");
  const only = named && "is" in named ? [named.is].flat() : null;
  return bounds.flatMap((bound) => {
    if (bound.from !== "table") return [];
    const rows = [...(book.tables.get(bound.table)?.rows ?? [])].flatMap(([key, cells]) => {
      const cell = cells[bound.column];
      return cell && !Number.isNaN(cell.value) && (!only || only.includes(key))
        ? [`${key} ${exact(cell.value, quantity)}`]
        : [];
    });
    return rows.length > 0 ? [`${plainWord(bound.column)}: ${rows.join(", ")}`] : [];
  });
}

/** A stated number as it was stated: not rounded to a doubt that it does not have. */
function exact(value: number, { dimension, shownIn }: Omit<Said, "name">): string {
  const { unit, factor } = shown(dimension, shownIn);
  if (unit === "1 in") return words(value, dimension, { shownIn });
  const metres = unit === "m";
  const fine = metres && Math.abs(value) < 1 && !isRound(value * centimetres);
  if (fine) return exact(value, { dimension, shownIn: "mm" });
  const decimals = [0, 1, 2, 3].find((count) => isRound(value * factor * 10 ** count)) ?? (metres ? 2 : 3);
  const text = words(value, dimension, { shownIn, decimals });
  return unit === "count" ? String(Number((value * factor).toPrecision(3))) : text;
}

const centimetres = 100;
const isRound = (value: number): boolean => Math.abs(value - Math.round(value)) < 1e-6;
const plainWord = (word: string): string => word.replaceAll("_", " ").replaceAll("-", " ");

function sourceWords(source: Source, clause: string | undefined): string {
  const parts = [
    source.title,
    source.edition,
    clause !== undefined && source.title.includes(clause) ? "" : clause,
    seenWords[source.seen] + (source.date ? ` ${source.date}` : ""),
    source.address,
  ];
  return parts.filter((part) => part !== undefined && part !== "").join(", ");
}

function conditionWords(condition: Limit["when"][number], context: Context): string {
  const of = condition.of === "each" ? "that" : ofWords(condition.of);
  if ("is" in condition) return isWords(condition.of, condition.is, context.card);
  const companion = context.card.companions[condition.of];
  const dimension = condition.dimension ?? context.measures.get(companion?.measure ?? "")?.dimension ?? "count";
  const edge = (word: string, value: number | undefined) =>
    value === undefined ? [] : [`${word} ${exact(value, { dimension, shownIn: smallUnit(dimension, value) })}`];
  const band = [
    ...edge("over", condition.over),
    ...edge("from", condition.from),
    ...edge("up to", condition.upTo),
    ...edge("under", condition.under),
  ];
  return `${of} is ${band.join(" and ")}`;
}

/** `"supported" is not`, `"dug before" does not hold`, `"soil class" of the dig is sand or gravel`. */
function isWords(dotted: string, is: string | boolean | readonly string[], card: Card): string {
  const [role = "", ...rest] = dotted.split(".");
  const whose = rest.length === 0 || role === card.about.role ? "" : ` of the ${plainWord(role)}`;
  const name = rest.length === 0 ? (role === "each" ? "that" : `the ${plainWord(role)}`) : `"${keyWords(rest)}"`;
  if (typeof is === "boolean") return `${name}${whose} ${is ? "holds" : "does not hold"}`;
  return `${name}${whose} is ${[is].flat().join(" or ")}`;
}

/** The key as it stands in a plan, without the underscores. */
const keyWords = (keys: readonly string[]): string => keys.map(plainWord).join(", ");

/** Bores and the like are said in millimetres. */
const smallUnit = (dimension: Dimension, value: number): string | undefined =>
  dimension === "length" && Math.abs(value) > 0 && Math.abs(value) < 0.5 ? "mm" : undefined;

function requirementWords(requirement: Requirement, quantity: Said): string {
  if (quantity.shownIn === "yes or no") return "so";
  if (requirement.sense === "between")
    return `between ${boundWords(requirement.low, quantity)} and ${boundWords(requirement.high, quantity)}`;
  return `${requirement.sense === "at_least" ? "at least" : "at most"} ${boundWords(requirement.bound, quantity)}`;
}

function boundWords(bound: Bound, quantity: Said): string {
  const number = (value: number) => exact(value, quantity);
  switch (bound.from) {
    case "number":
      return number(bound.value);
    case "table":
      return `what the table of ${plainWord(bound.table)} gives (${plainWord(bound.column)})`;
    case "times":
      return `${bound.times} times ${ofWords(bound.of)}${bound.downTo === undefined ? "" : `, not under ${number(bound.downTo)}`}${bound.upTo === undefined ? "" : `, not over ${number(bound.upTo)}`}`;
    case "over":
      return `${exact(bound.times, { dimension: "length", shownIn: "mm" })} over ${ofWords(bound.over)}`;
    case "plan":
      return `${ofWords(bound.property)}, as the plan asks for it`;
  }
}

/** `run.bore` -> `the bore of the run`; a companion's name as words. */
function ofWords(dotted: string): string {
  const [role = "", ...rest] = dotted.split(".");
  return rest.length === 0
    ? `the ${plainWord(role)}`
    : `the ${propertyWords(rest.join("."))} of the ${plainWord(role)}`;
}
