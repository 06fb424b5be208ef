// `reason`: a rule whole, in words, asked for by its name or by the number of a finding in a report.

import { type Card, inspect, nearestRule, reasonText, type Rulebook, toldUnder, wants } from "../index.ts";
import { optionsOf, type PlanFlags, problemLines, texts, wrongDay } from "./check-command.ts";
import { readCards, readInclude, readPlanFile } from "./files.ts";
import { bookWith } from "./rules-command.ts";
import type { Streams } from "./streams.ts";

export type ReasonFlags = PlanFlags;

type Asked = ReasonFlags & { readonly streams: Streams };

/** Prints a card in words; 2 where there is no such rule or finding. */
export function reasonCommand(which: string, plans: readonly string[], flags: Asked): number {
  const { streams } = flags;
  const { book, problems } = bookWith(flags.rules);
  streams.err(problemLines(problems));
  const found = /^\d+$/.test(which) ? ofNumber(Number(which), plans, flags) : { rule: which, sentence: "" };
  if ("refusal" in found) {
    streams.err(`${found.refusal}\n`);
    return 2;
  }
  const card = book.cards.find((known) => known.id === found.rule);
  if (!card) {
    streams.err(`${noSuchRule(found.rule, book)}\n`);
    return 2;
  }
  streams.out(textOf(card, book, found.sentence));
  return problems.length > 0 ? 2 : 0;
}

function textOf(card: Card, book: Rulebook, sentence: string): string {
  return (sentence === "" ? "" : `${sentence}\n\n`) + reasonText(card, book);
}

/** As many rules are named that hold the word. */
const mostNamed = 12;

function noSuchRule(rule: string, book: Rulebook): string {
  const like = book.cards.map(({ id }) => id).filter((id) => id.includes(rule.toLowerCase()));
  const near = nearestRule(rule, book);
  if (like.length > 0 && like.length <= mostNamed) return `There is no rule ${rule}. There is: ${like.join(", ")}.`;
  return `There is no rule ${rule}.${near ? ` Was ${near} meant?` : ""} The list: sightrail rules`;
}

/** The rule of the finding that a report of these plans prints under a number. */
function ofNumber(
  number: number,
  plans: readonly string[],
  flags: Asked,
): { readonly rule: string; readonly sentence: string } | { readonly refusal: string } {
  const { streams } = flags;
  const day = wrongDay(flags.asOf);
  if (day !== null) return { refusal: day };
  if (plans.length === 0) return { refusal: `Name the plan too: sightrail reason ${number} yard.yaml` };
  const files = plans.map((plan) => ({ plan, read: readPlanFile(plan, streams) }));
  const whole = files.flatMap(({ plan, read }) =>
    "text" in read ? [{ ...read.text, includes: texts(wants(read.text).map((name) => readInclude(plan, name))) }] : [],
  );
  streams.err(problemLines(files.flatMap(({ read }) => ("problem" in read ? [read.problem] : []))));
  const { report } = inspect(whole, {
    ...optionsOf(flags, texts(flags.rules ? readCards(flags.rules) : []), streams),
    remedies: "plain",
  });
  return toldUnder(number, report) ?? { refusal: `The report of ${plans.join(", ")} has no number ${number}.` };
}
